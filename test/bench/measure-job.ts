import type { Entry, Thing } from '../../src/job/entry-schema.ts';
import type { SitedHole } from '../../src/plan/hole.ts';
import { A, B, Book, end, face, hole, holeStake, normal, post, random } from '../measure/build.ts';

export interface BenchJob {
  readonly entries: readonly Entry[];
  readonly holes: readonly SitedHole[];
  readonly baseline: number;
}

const SPACING_M = 1.8;
const TAPE_SIGMA_M = 0.002;
const PLUMB_SIGMA = 0.001;

/**
 * A job on a grid, about six pulls a hole: two from A and B to each stake, two to each set post, and to the neighbours on
 * the right and behind; plumb on two faces. Truth is the plan, readings carry tape noise from a seeded generator.
 */
export function gridJob(count: number, seed: number): BenchJob {
  const noise = normal(random(seed));
  const columns = Math.ceil(Math.sqrt(count));
  const holes = Array.from({ length: count }, (_, i) =>
    hole(String(i + 1), (i % columns) * SPACING_M, 4 + Math.floor(i / columns) * SPACING_M),
  );
  const book = new Book();
  const baseline = columns * SPACING_M;
  const stakes = { A: { x: 0, y: 0 }, B: { x: baseline, y: 0 } };
  const read = (p: { x: number; y: number }, q: { x: number; y: number }) =>
    Math.hypot(p.x - q.x, p.y - q.y) + TAPE_SIGMA_M * noise();
  book.pull(A, B, read(stakes.A, stakes.B));
  for (const { label, site } of holes) {
    book.pull(A, holeStake(label), read(stakes.A, site));
    book.pull(B, holeStake(label), read(stakes.B, site));
  }
  for (const { label } of holes) book.stand(post(label), 'set');
  holes.forEach(({ label, site }, i) => {
    const front = { x: site.x, y: site.y + 0.07 };
    book.pull(A, end(post(label), face('front')), read(stakes.A, front));
    book.pull(B, end(post(label), face('front')), read(stakes.B, front));
    book.plumb(label, 'front', PLUMB_SIGMA * noise());
    book.plumb(label, 'left', PLUMB_SIGMA * noise());
    for (const other of [(i + 1) % columns === 0 ? undefined : holes[i + 1], holes[i + columns]]) {
      if (other) book.pull(post(label), post(other.label), read(site, other.site));
    }
  });
  return { entries: book.entries, holes, baseline };
}

/** A ring of ten posts round a pier: staked, checked across and to the neighbours, set, checked again. */
export function ringJob(seed: number): BenchJob {
  const noise = normal(random(seed));
  const centre = { x: 4, y: 5 };
  const holes = Array.from({ length: 10 }, (_, i) => {
    const bearing = Math.PI / 2 + (i * Math.PI) / 5;
    return hole(String(i + 1), centre.x + 3 * Math.cos(bearing), centre.y + 3 * Math.sin(bearing), {
      facing: bearing,
    });
  });
  holes.push(hole('P', centre.x, centre.y, { section: { kind: 'pier', diameter: 0.3 } }));
  const book = new Book();
  const a = { x: 0, y: 0 };
  const b = { x: 8, y: 0 };
  const pull = (from: Thing, p: { x: number; y: number }, to: Thing, q: { x: number; y: number }) =>
    book.pull(from, to, Math.hypot(p.x - q.x, p.y - q.y) + TAPE_SIGMA_M * noise());
  pull(A, a, B, b);
  for (const thing of [holeStake, post]) {
    holes.forEach(({ label, site }, i) => {
      pull(A, a, thing(label), site);
      pull(B, b, thing(label), site);
      if (label === 'P') return;
      const next = holes[(i + 1) % 10]!;
      pull(thing(label), site, thing(next.label), next.site);
      const across = holes[i + 5];
      if (across && across.label !== 'P') pull(thing(label), site, thing(across.label), across.site);
      pull(thing(label), site, thing('P'), centre);
    });
  }
  for (const { label } of holes) {
    book.plumb(label, 'front', PLUMB_SIGMA * noise());
    book.plumb(label, 'left', PLUMB_SIGMA * noise());
  }
  return { entries: book.entries, holes, baseline: 8 };
}

export const pullsIn = (job: BenchJob): number =>
  job.entries.filter(({ body }) => body.kind === 'pull').length;
