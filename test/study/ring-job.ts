import type { Vec } from '../../src/geometry/point.ts';
import type { Entry, PullEnd } from '../../src/job/entry-schema.ts';
import type { SitedHole } from '../../src/plan/hole.ts';
import {
  A,
  B,
  Book,
  end,
  face,
  hole,
  holeStake,
  INSTRUMENTS,
  metres,
  normal,
  post,
  random,
} from '../measure/build.ts';

/** A ring with a known truth. */
export interface StudyJob {
  readonly entries: readonly Entry[];
  readonly holes: readonly SitedHole[];
  readonly baseline: number;
  /** By name: `stake 3`, `post 3`, `A`, `B`. */
  readonly truth: ReadonlyMap<string, Vec>;
  /** The same job with one reading off by so many metres. */
  misread(entry: string, by: number): StudyJob;
}

const POSTS = 10;
const RADIUS_M = 3;
const STAKED_WITHIN_M = 0.012;
const SET_WITHIN_M = 0.007;
const LEAN_SIGMA = 0.004;
const HEIGHT_M = 1;

export function ringJob(seed: number): StudyJob {
  const gauss = normal(random(seed));
  const centre = { x: 4, y: 5 };
  const holes = Array.from({ length: POSTS }, (_, i) => {
    const bearing = Math.PI / 2 + (i * 2 * Math.PI) / POSTS;
    const site = { x: centre.x + RADIUS_M * Math.cos(bearing), y: centre.y + RADIUS_M * Math.sin(bearing) };
    return hole(String(i + 1), site.x, site.y, { facing: bearing });
  });
  holes.push(hole('P', centre.x, centre.y, { section: { kind: 'pier', diameter: 0.3 } }));
  const truth = new Map<string, Vec>([
    ['A', { x: 0, y: 0 }],
    ['B', { x: 8 + 0.01 * gauss(), y: 0 }],
  ]);
  const off = (site: Vec, sigma: number) => ({ x: site.x + sigma * gauss(), y: site.y + sigma * gauss() });
  const leans = new Map<string, Vec>();
  for (const { label, site } of holes) {
    truth.set(`stake ${label}`, off(site, STAKED_WITHIN_M));
    truth.set(`post ${label}`, off(site, SET_WITHIN_M));
    leans.set(label, off({ x: 0, y: 0 }, LEAN_SIGMA));
  }
  const book = new Book();
  const pull = (from: PullEnd, to: PullEnd) => {
    const p = touched(from, truth, leans, holes);
    const q = touched(to, truth, leans, holes);
    const plan = Math.hypot(p.x - q.x, p.y - q.y);
    const sigma = Math.hypot(INSTRUMENTS.tapeError.m, INSTRUMENTS.tapeErrorPerMetre * plan);
    book.pull(from, to, plan + sigma * gauss());
  };
  pull(end(A), end(B));
  for (const { label } of holes) {
    pull(end(A), end(holeStake(label)));
    pull(end(B), end(holeStake(label)));
  }
  around(holes, (p, q) => pull(end(holeStake(p)), end(holeStake(q))));
  for (const { label, facing } of holes) {
    const round = label === 'P';
    pull(end(A), end(post(label), round ? { at: 'centre' } : face('front')));
    pull(end(B), end(post(label), round ? { at: 'centre' } : face('front'), HEIGHT_M));
    const lean = leans.get(label)!;
    for (const [side, turn] of [
      ['front', 0],
      ['left', Math.PI / 2],
    ] as const) {
      const along = lean.x * Math.cos(facing + turn) + lean.y * Math.sin(facing + turn);
      book.plumb(label, side, along + INSTRUMENTS.plumbError * gauss());
    }
  }
  around(holes, (p, q) => pull(end(post(p)), end(post(q))));
  return jobOf(book.entries, holes, truth);
}

/** To the next one, across, and to the middle. */
function around(holes: readonly SitedHole[], pull: (p: string, q: string) => void): void {
  const labels = holes.map(({ label }) => label).filter((label) => label !== 'P');
  labels.forEach((label, i) => {
    pull(label, labels[(i + 1) % labels.length]!);
    const across = labels[i + labels.length / 2];
    if (across !== undefined) pull(label, across);
    pull(label, 'P');
  });
}

function touched(
  { thing, touch, height }: PullEnd,
  truth: ReadonlyMap<string, Vec>,
  leans: ReadonlyMap<string, Vec>,
  holes: readonly SitedHole[],
): Vec {
  if (!('hole' in thing)) return truth.get(thing.label)!;
  if (thing.kind === 'hole-stake') return truth.get(`stake ${thing.hole}`)!;
  const { facing, section } = holes.find(({ label }) => label === thing.hole)!;
  const at = truth.get(`post ${thing.hole}`)!;
  const lean = leans.get(thing.hole)!;
  const h = height?.m ?? 0;
  const half = touch.at === 'face' && section.kind === 'post' ? section.depth / 2 : 0;
  return { x: at.x + h * lean.x + half * Math.cos(facing), y: at.y + h * lean.y + half * Math.sin(facing) };
}

function jobOf(
  entries: readonly Entry[],
  holes: readonly SitedHole[],
  truth: ReadonlyMap<string, Vec>,
): StudyJob {
  return {
    entries,
    holes,
    baseline: 8,
    truth,
    misread: (id, by) =>
      jobOf(
        entries.map((entry) =>
          entry.id === id && entry.body.kind === 'pull'
            ? { ...entry, body: { ...entry.body, reading: metres(entry.body.reading.m + by) } }
            : entry,
        ),
        holes,
        truth,
      ),
  };
}
