import { thingName } from '../../job/words.ts';
import type { AsBuilt } from '../../judge/as-built.ts';
import type { Assessment } from '../../judge/types.ts';
import { type JobView, postOf } from '../../judge/view.ts';
import { capital, listWords } from '../../judge/words.ts';
import { measuredSincePour } from '../pour/pour-order.ts';

/** What keeps these figures from being cut to, in whole sentences; none when nothing does. */
export function frameCautions(view: JobView, { holes }: Assessment, { frame }: AsBuilt): string[] {
  const measured = holes.filter(({ set }) => set.at !== null);
  const unchecked = measured.filter(({ set }) => !set.position.checked);
  const loose = measured.filter(({ poured }) => poured === null);
  const since = measured.filter((hole) => hole.poured !== null && !measuredSincePour(view, hole.hole));
  const labels = (some: readonly { readonly hole: string }[]) => some.map(({ hole }) => hole);
  return [
    said(
      view,
      frame.unmeasured,
      (names, are) => `${names} ${are} not measured: nothing is told of the sides that end there.`,
    ),
    said(
      view,
      labels(unchecked),
      (names, _, it) =>
        `${names}: no spare reading guards ${it}, so one misread tape would move a cut unseen. Pull to ${it} once more first.`,
    ),
    said(
      view,
      labels(loose),
      (names, are) =>
        `${names} ${are} not poured yet and can still move. Cut when the concrete is hard, and measure again before.`,
    ),
    said(
      view,
      labels(since),
      (names, are, it) => `${names} ${are} not measured since the pour: measure ${it} again before you cut.`,
    ),
  ].filter((words) => words !== '');
}

/** At which height the figures hold. */
export function heightWords(view: JobView, { heightOf, posts }: AsBuilt): string {
  const low = posts.filter(({ label }) => heightOf.get(label) === 'ground').map(({ label }) => label);
  if (low.length === 0) return 'All figures are at the tops, with the leans in them.';
  const why = 'until plumb is read on two faces, and the height of the ground is';
  if (low.length === posts.length)
    return `All figures are at the ground, as if every post stood plumb, ${why}.`;
  return said(
    view,
    low,
    (names, are) =>
      `The others are told at the tops; ${names.replace(/^P/, 'p')} ${are} told at the ground, as if plumb, ${why}.`,
  );
}

function said(
  { plan }: JobView,
  holes: readonly string[],
  words: (names: string, are: 'is' | 'are', it: 'it' | 'them') => string,
): string {
  if (holes.length === 0) return '';
  const piers = holes.filter((hole) => thingName(postOf(hole), plan).startsWith('pier'));
  const posts = holes.filter((hole) => !piers.includes(hole));
  const named = (kind: string, some: readonly string[]) =>
    some.length === 0 ? [] : [`${kind}${some.length > 1 ? 's' : ''} ${listWords(some)}`];
  const names = [...named('post', posts), ...named('pier', piers)].join(' and ');
  return words(capital(names), holes.length > 1 ? 'are' : 'is', holes.length > 1 ? 'them' : 'it');
}
