import type { SitePoint } from '../geometry/point.ts';
import type { Thing } from '../job/entry-schema.ts';
import { thingKey } from '../job/log.ts';
import { lengthRead } from '../measure/taped.ts';
import type { Suspicion } from '../measure/types.ts';
import { adviceFor } from './advice.ts';
import { inWords } from './next-words.ts';
import { pullPlan } from './pull-ends.ts';
import type { NextPull } from './types.ts';
import type { JobView } from './view.ts';

const ORIGIN: SitePoint = { x: 0, y: 0 };

/** A–B, while it is not pulled. */
export function baselinePull(view: JobView): NextPull | null {
  if (view.measured.baseline || !view.laid) return null;
  const b: SitePoint = { x: view.laid.baseline, y: 0 };
  const plan = pullPlan(view, { kind: 'stake', label: 'A' }, ORIGIN, { kind: 'stake', label: 'B' }, b);
  return inWords(view, plan, 'every place hangs on it.');
}

/**
 * The pull that tells a suspected misreading: the same one again where one pull stands out; where several could be
 * meant, a fresh line to the thing that they share.
 */
export function pullThatTells(view: JobView, suspicion: Suspicion): NextPull | null {
  const body = view.pullBodies.get(suspicion.entries[0] ?? '')?.body;
  if (!body) return null;
  if (suspicion.entries.length > 1 && !oneLine(view, suspicion)) {
    const designed = designedPlace(view, body.to.thing);
    const advice = designed && adviceFor(view, body.to.thing, designed, false);
    if (advice) return inWords(view, advice.pull, 'it should tell which of the pulls is misread.');
  }
  // What the other readings make of it.
  const expected = lengthRead(body, view.plan.instruments) - suspicion.misreading;
  const plan = { from: body.from, to: body.to, expected };
  return inWords(view, plan, 'it should bear out the reading or show it misread.');
}

/** Whether all suspects are tapes between the same two things: then only that line again tells them apart. */
function oneLine(view: JobView, { entries }: Suspicion): boolean {
  const lines = entries.map((id) => {
    const body = view.pullBodies.get(id)?.body;
    return body ? [thingKey(body.from.thing), thingKey(body.to.thing)].sort().join(' ') : id;
  });
  return new Set(lines).size === 1;
}

function designedPlace(view: JobView, thing: Thing): SitePoint | null {
  return 'hole' in thing ? (view.sited.get(thing.hole)?.site ?? null) : null;
}
