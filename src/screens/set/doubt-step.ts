import type { EntryOf, Thing } from '../../job/entry-schema.ts';
import { thingKey } from '../../job/log.ts';
import { pullThatTells } from '../../judge/next-pull.ts';
import { REPEATS_AGREE } from '../../judge/plumb-repeats.ts';
import type { PullPlan } from '../../judge/pull-ends.ts';
import { type JobView, pullsBetween } from '../../judge/view.ts';
import { lengthRead, predict } from '../../measure/index.ts';
import type { Suspicion } from '../../measure/types.ts';
import type { SetBook } from './set-book.ts';
import type { DoubtStep, SetStep } from './step.ts';

/** Nothing is worth doing about a post while a reading of it is not to be believed. */
export function doubtStep({ view, best }: SetBook, post: Thing): SetStep | null {
  for (const suspicion of view.measured.suspicions) {
    const [entry] = suspicion.entries.flatMap((id) => pullTo(view, id, post) ?? []);
    if (!entry) continue;
    return tellStep(best, suspicion, post) ?? doubtOf(view, best, suspicion, entry, post);
  }
  return null;
}

/** Where several pulls could be meant: the fresh one that would tell them apart, if it goes to this post. */
function tellStep(best: JobView, suspicion: Suspicion, post: Thing): SetStep | null {
  if (suspicion.entries.length < 2) return null;
  const pull = pullThatTells(best, suspicion);
  if (!pull || !touches(pull, post)) return null;
  return pullsBetween(best, pull.from.thing, pull.to.thing).length > 0
    ? null
    : { do: 'tell', pull: toward(pull, post) };
}

function doubtOf(
  view: JobView,
  best: JobView,
  suspicion: Suspicion,
  entry: EntryOf<'pull'>,
  post: Thing,
): DoubtStep {
  const { from, to } = entry.body;
  const found = predict(from, to, { how: 'level' }, best.measured, [...best.sited.values()]);
  const expected = found?.reading ?? lengthRead(entry.body, view.plan.instruments) - suspicion.misreading;
  return { do: 'doubt', pull: toward({ from, to, expected }, post), entry, again: againOf(view, entry) };
}

/** Two readings of one line, held against what each ought to read: so it does not matter how the tape was held. */
function againOf(view: JobView, { body: { from, to } }: EntryOf<'pull'>): DoubtStep['again'] {
  const pulls = pullsBetween(view, from.thing, to.thing);
  if (pulls.length < 2) return 'not-yet';
  const residuals = pulls.map(({ residual }) => residual);
  const allowed = REPEATS_AGREE * Math.SQRT2 * Math.max(...pulls.map(({ sigma }) => sigma));
  return Math.max(...residuals) - Math.min(...residuals) > allowed ? 'apart' : 'alike';
}

function pullTo(view: JobView, id: string, post: Thing): EntryOf<'pull'> | null {
  const entry = view.pullBodies.get(id);
  return entry && touches(entry.body, post) ? entry : null;
}

const touches = ({ from, to }: Pick<PullPlan, 'from' | 'to'>, thing: Thing): boolean =>
  [from, to].some((end) => thingKey(end.thing) === thingKey(thing));

/** The same pull, told from whatever it starts at to the post at hand. */
function toward({ from, to, expected }: PullPlan, post: Thing): PullPlan {
  return thingKey(to.thing) === thingKey(post) ? { from, to, expected } : { from: to, to: from, expected };
}
