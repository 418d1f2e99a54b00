import type { EntryOf } from '../../src/job/entry-schema.ts';
import { ofKind } from '../../src/job/log.ts';
import { situate } from '../../src/judge/situation.ts';
import { METRES_PER_INCH } from '../../src/units/index.ts';
import type { Draws } from './draws.ts';
import { misread, type StudyJob } from './job.ts';
import { Share } from './share.ts';

/** What the offset at the level, and the rod, are misread by: metres. */
const PLUMB_SLIP_M = METRES_PER_INCH / 4;
const ROD_SLIP_M = METRES_PER_INCH;
/** Fewer faces than this and nothing guards a plumb reading. */
const GUARDED_FACES = 4;

/** A plumb reading and a rod reading misread, each in a job of its own. */
export class OtherSlips {
  readonly plumb = new Share();
  readonly rod = new Share();

  /** Even jobs have a plumb reading misread where another guards it, odd jobs a rod reading. */
  addJob(job: StudyJob, number: number, draws: Draws): void {
    const way = draws.pick([1, -1]);
    if (number % 2 === 0) count(this.plumb, job, draws.pick(guardedPlumbs(job)).id, way * PLUMB_SLIP_M);
    else count(this.rod, job, draws.pick(ofKind(job.log, 'rod')).id, way * ROD_SLIP_M);
  }
}

function guardedPlumbs({ log }: StudyJob): EntryOf<'plumb'>[] {
  const plumbs = ofKind(log, 'plumb');
  const faces = (hole: string) => plumbs.filter(({ body }) => body.hole === hole).length;
  return plumbs.filter(({ body }) => faces(body.hole) >= GUARDED_FACES);
}

/** Named as a suspect: two readings of one thing can say that one is wrong, and never which. */
function count(share: Share, job: StudyJob, entry: string, by: number): void {
  const suspicions = situate(misread(job.log, entry, by)).measured?.suspicions ?? [];
  share.addJob(suspicions.some(({ entries }) => entries.includes(entry)) ? 1 : 0, 1);
}
