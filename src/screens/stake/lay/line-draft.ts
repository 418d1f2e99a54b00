import type { Length } from '../../../job/length.ts';
import type { GroundLine } from '../../../job/place-schema.ts';
import { type Hole, type LaidLine, layLine, type StandingStakes } from '../../../plan/index.ts';
import { ok, type Result, refuse } from '../../../units/index.ts';
import { draftOf, emptyPlace, type PlaceDraft, readPlace } from './place-draft.ts';

/** A line on the ground in the making. */
export interface LineDraft {
  readonly name: string;
  readonly kind: GroundLine['kind'] | null;
  readonly from: PlaceDraft;
  readonly to: PlaceDraft;
  readonly asksKeep: boolean;
  readonly keep: Length | null;
  /** `unsaid` until somebody says; `none` bars no side. */
  readonly noStakes: 'left' | 'right' | 'none' | 'unsaid';
}

export const POINTS = { from: 'First point', to: 'Second point' } as const;
export const NAME_LABEL = 'What it is called';
export const KIND_LABEL = 'What it is';
export const KEEP_LABEL = 'To keep from it';

export function startLine(line: GroundLine | null): LineDraft {
  if (!line)
    return {
      name: '',
      kind: null,
      from: emptyPlace('plan'),
      to: emptyPlace('plan'),
      asksKeep: false,
      keep: null,
      noStakes: 'unsaid',
    };
  const { name, kind, from, to, keep = null, noStakes = 'none' } = line;
  return { name, kind, from: draftOf(from), to: draftOf(to), asksKeep: keep !== null, keep, noStakes };
}

/** A usual name, or one of several. */
const USUAL = /^(Boundary|House|Line)( \d+)?$/;
const USUAL_NAMES = { boundary: 'Boundary', house: 'House', other: 'Line' } as const;

/** Another kind; the usual name with it, while nobody has typed another. */
export function withKind(draft: LineDraft, kind: GroundLine['kind'], taken: readonly string[]): LineDraft {
  const own = draft.name !== '' && !USUAL.test(draft.name);
  return { ...draft, kind, name: own ? draft.name : freeName(USUAL_NAMES[kind], taken) };
}

function freeName(name: string, taken: readonly string[]): string {
  const free = [name, ...taken.map((_, i) => `${name} ${i + 2}`)];
  return free.find((each) => !taken.includes(each)) ?? name;
}

/** The line, once its two points are there and all else that it needs is said. */
export function readLine(draft: LineDraft, taken: readonly string[]): Result<GroundLine> {
  const { name, kind, asksKeep, keep, noStakes } = draft;
  if (kind === null) return refuse(KIND_LABEL, `${KIND_LABEL}: nothing is chosen; choose one.`);
  if (name === '') return refuse(NAME_LABEL, `${NAME_LABEL}: it is empty; type a word or two.`);
  if (taken.includes(name))
    return refuse(NAME_LABEL, `${NAME_LABEL}: another line is called ${name}; give this one another name.`);
  const from = readPlace(POINTS.from, draft.from);
  if (!from.ok) return from;
  const to = readPlace(POINTS.to, draft.to);
  if (!to.ok) return to;
  if (asksKeep && !keep)
    return refuse(KEEP_LABEL, `${KEEP_LABEL}: it is empty; type a length, or choose no distance.`);
  if (kind === 'house' && noStakes !== 'left' && noStakes !== 'right')
    return refuse(
      'Where the house is',
      'Where the house is: nothing is chosen; choose its side of the wall.',
    );
  return ok({
    name,
    kind,
    from: from.value,
    to: to.value,
    ...(asksKeep && keep ? { keep } : {}),
    ...(noStakes === 'left' || noStakes === 'right' ? { noStakes } : {}),
  });
}

/** Where the line would lie, as soon as its two points are there; null before, and a refusal where they cannot be. */
export function laidDraft(
  draft: LineDraft,
  holes: readonly Hole[],
  stakes: StandingStakes | null,
): Result<LaidLine> | null {
  const [from, to] = [readPlace(POINTS.from, draft.from), readPlace(POINTS.to, draft.to)];
  if (!from.ok || !to.ok) return null;
  const { kind, name, noStakes } = draft;
  const side = noStakes === 'left' || noStakes === 'right' ? { noStakes } : {};
  // Drawn without a house behind it until somebody says where that is.
  const shown = kind === 'house' && noStakes === 'unsaid' ? 'other' : (kind ?? 'other');
  return layLine(
    { name: name || 'The line', kind: shown, from: from.value, to: to.value, ...side },
    holes,
    stakes,
  );
}

/** Its two sides, in words of the plan: `behind it`, `to the right of it`, as you face the plan's front. */
export function sidesOf({ from, to }: LaidLine): Record<'left' | 'right', string> {
  // What lies on the left of a person who walks from `from` to `to`.
  const left = { x: from.y - to.y, y: to.x - from.x };
  const words =
    Math.abs(left.y) >= Math.abs(left.x)
      ? (['in front of it', 'behind it'] as const)
      : (['to the right of it', 'to the left of it'] as const);
  const toward = Math.abs(left.y) >= Math.abs(left.x) ? left.y : left.x;
  const [plus, minus] = words;
  return toward > 0 ? { left: plus, right: minus } : { left: minus, right: plus };
}
