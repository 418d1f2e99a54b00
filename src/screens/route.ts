/**
 * Where the user is, kept in the address's fragment: it works from any sub-path of any static host, survives a
 * reload, and gives the back button its meaning.
 */
export const PHASES = ['plan', 'stake', 'dig', 'set', 'pour', 'record'] as const;
export type Phase = (typeof PHASES)[number];

export type Route =
  | { readonly at: 'home' }
  /** `hole` is the hole that the screen is about; without one the screen proposes the next thing. */
  | { readonly at: 'job'; readonly job: string; readonly phase: Phase; readonly hole: string | null };

const isPhase = (text: string | undefined): text is Phase => PHASES.some((phase) => phase === text);

/** An address that fits nothing leads home. */
export function readRoute(fragment: string): Route {
  const [kind, job, phase, hole] = fragment.replace(/^#\/?/, '').split('/');
  if (kind !== 'job' || !job) return { at: 'home' };
  return { at: 'job', job, phase: isPhase(phase) ? phase : 'plan', hole: hole ? decode(hole) : null };
}

export function hrefOf(route: Route): string {
  if (route.at === 'home') return '#/';
  const hole = route.hole === null ? '' : `/${encodeURIComponent(route.hole)}`;
  return `#/job/${route.job}/${route.phase}${hole}`;
}

/** A fragment typed by hand may hold a broken escape; then it names no hole. */
function decode(text: string): string | null {
  try {
    return decodeURIComponent(text);
  } catch (error) {
    if (error instanceof URIError) return null;
    throw error;
  }
}
