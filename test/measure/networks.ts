import type { Vec } from '../../src/geometry/point.ts';
import type { Body, Entry, PullEnd, Side, Thing } from '../../src/job/entry-schema.ts';
import { SIDES } from '../../src/job/entry-schema.ts';
import type { Instruments, TapeSpec } from '../../src/job/plan-schema.ts';
import type { SitedHole } from '../../src/plan/hole.ts';
import { A, B, Book, end, face, hole, holeStake, metres, normal, post, random, stake } from './build.ts';

/** A made-up job whose truth is known. */
export interface Made {
  readonly entries: readonly Entry[];
  readonly holes: readonly SitedHole[];
  readonly baseline: number;
  readonly instruments: Instruments;
  /** True places, by thing's name: `A`, `C`, `stake 3`, `post 3`. */
  readonly truth: ReadonlyMap<string, Vec>;
}

export interface Making {
  /** One sigma of the noise put into the readings, in units of the sigma that the job claims; 1 unless given. */
  readonly noise?: number;
  /** How far things stand from their plan, metres. */
  readonly misplaced?: number;
}

const HEIGHT_M = 1.2;

/**
 * A random well-tied job: three to nine hole stakes and leaning posts, a third stake, pulls from every stake and between
 * neighbours, level and along slopes, to centres, faces, corners and a round pier, some of them above the ground, with
 * tapes good and bad, cold and hot, some with corrections of their own; stations and offsets off strings between stakes,
 * and between things that are themselves measured.
 */
export function madeJob(seed: number, { noise = 1, misplaced = 0.03 }: Making = {}): Made {
  const uniform = random(seed);
  const gauss = normal(uniform);
  const between = (low: number, high: number) => low + (high - low) * uniform();
  const count = Math.floor(between(3, 10));
  const baseline = between(5, 12);
  const instruments: Instruments = {
    tapeLength: metres(30),
    tapeError: metres(between(0.0005, 0.004)),
    tapeErrorPerMetre: between(0, 0.001),
    plumbError: between(0.0005, 0.004),
    rodError: metres(between(0.001, 0.003)),
    tapes: ['T1', 'T2'].map((label) => tapeSpec(label, between)),
  };
  const holes = Array.from({ length: count }, (_, i) => {
    const round = i === 0;
    return hole(String(i + 1), between(-1, baseline + 1), between(2.5, 9), {
      facing: between(-3, 3),
      section: round
        ? { kind: 'pier', diameter: between(0.2, 0.4) }
        : { kind: 'post', width: between(0.08, 0.2), depth: between(0.08, 0.2) },
    });
  });
  const truth = new Map<string, Vec>([
    ['A', { x: 0, y: 0 }],
    ['B', { x: baseline + misplaced * gauss(), y: 0 }],
    ['C', { x: between(0, baseline), y: between(-6, -2) }],
  ]);
  const leans = new Map<string, Vec>();
  for (const { label, site } of holes) {
    for (const kind of ['stake', 'post']) {
      truth.set(`${kind} ${label}`, { x: site.x + misplaced * gauss(), y: site.y + misplaced * gauss() });
    }
    leans.set(label, { x: 0.01 * gauss(), y: 0.01 * gauss() });
  }
  const book = new Book();
  const surveyor = new Surveyor(book, holes, truth, leans, instruments, () => noise * gauss(), between);
  for (const [p, q] of [
    [A, B],
    [A, C],
    [B, C],
  ] as const) {
    surveyor.pull(end(p), end(q));
  }
  holes.forEach(({ label }, i) => {
    for (const from of [A, B, C]) surveyor.pull(end(from), end(holeStake(label)), between(0, 1));
    for (const from of [A, B, C]) surveyor.pull(end(from), end(post(label), face(sideOf(uniform))));
    surveyor.pull(end(A), end(post(label), { at: 'centre' }, HEIGHT_M));
    surveyor.pull(end(B), i === 0 ? end(post(label), { at: 'near-side' }) : cornerEnd(post(label), uniform));
    for (const side of ['front', 'left', 'back'] as const) surveyor.plumb(label, side);
    const next = holes[(i + 1) % count]!;
    if (next.label !== label) {
      surveyor.pull(end(holeStake(label)), end(holeStake(next.label)));
      surveyor.pull(end(post(label)), end(post(next.label), face('back')), between(0, 0.5));
    }
  });
  holes.forEach(({ label }, i) => {
    surveyor.offString(A, B, end(holeStake(label)), 'both');
    surveyor.offString(
      C,
      A,
      end(post(label), i === 0 ? { at: 'near-side' } : face(sideOf(uniform))),
      'offset',
    );
    const next = holes[(i + 1) % count]!;
    if (next.label !== label) {
      surveyor.offString(B, holeStake(label), cornerEnd(post(next.label), uniform), 'station');
      surveyor.offString(post(next.label), C, end(post(label), { at: 'centre' }, HEIGHT_M), 'both');
    }
  });
  return { entries: book.entries, holes, baseline, instruments, truth };
}

type Between = (low: number, high: number) => number;

const tapeSpec = (label: string, between: Between): TapeSpec => ({
  label,
  nominal: metres(30),
  actual: metres(30 + between(-0.02, 0.02)),
  zero: metres(between(-0.01, 0.01)),
  temperature: 20,
  tension: 50,
  expansion: 11.6e-6,
  stiffness: between(3e5, 6e5),
  weight: between(0.1, 0.3),
});

const C = stake('C');
const sideOf = (uniform: () => number): Side => SIDES[Math.floor(uniform() * SIDES.length)]!;
const cornerEnd = (thing: Thing, uniform: () => number) =>
  end(thing, { at: 'corner', side: sideOf(uniform) });

/** Reads tapes and levels in a world that is known, by its own geometry: not one line of `src/measure` is used. */
class Surveyor {
  readonly #book: Book;
  readonly #holes: ReadonlyMap<string, SitedHole>;
  readonly #truth: ReadonlyMap<string, Vec>;
  readonly #leans: ReadonlyMap<string, Vec>;
  readonly #instruments: Instruments;
  readonly #noise: () => number;
  readonly #between: Between;

  constructor(
    book: Book,
    holes: readonly SitedHole[],
    truth: ReadonlyMap<string, Vec>,
    leans: ReadonlyMap<string, Vec>,
    instruments: Instruments,
    noise: () => number,
    between: Between,
  ) {
    this.#book = book;
    this.#holes = new Map(holes.map((one) => [one.label, one]));
    this.#truth = truth;
    this.#leans = leans;
    this.#instruments = instruments;
    this.#noise = noise;
    this.#between = between;
  }

  pull(from: PullEnd, to: PullEnd, rise = 0): void {
    const p = this.#touched(from);
    const q = this.#touched(to);
    const plan = Math.hypot(q.x - p.x, q.y - p.y) - this.#short(from) - this.#short(to);
    const exact = Math.hypot(plan, rise);
    const { tapeError, tapeErrorPerMetre } = this.#instruments;
    const there = exact + Math.hypot(tapeError.m, tapeErrorPerMetre * exact) * this.#noise();
    const hold = rise === 0 ? ({ how: 'level' } as const) : ({ how: 'slope', rise: metres(rise) } as const);
    this.#book.write({ kind: 'pull', from, to, hold, ...this.#onSomeTape(there) });
  }

  /** What one of the tapes, or one without corrections, reads for a length that is there. */
  #onSomeTape(there: number): Pick<Extract<Body, { kind: 'pull' }>, 'reading' | 'tape' | 'pulling'> {
    const tape = [undefined, ...(this.#instruments.tapes ?? [])][Math.floor(this.#between(0, 3))];
    if (!tape) return { reading: metres(there) };
    const temperature = this.#between(-10, 40);
    const tension = this.#between(30, 90);
    const spans = this.#between(0, 1) < 0.5 ? [] : [there / 2, there / 3];
    const sag = spans.reduce((sum, span) => sum + (tape.weight! ** 2 * span ** 3) / (24 * tension ** 2), 0);
    const longer =
      tape.actual.m / tape.nominal.m +
      tape.expansion! * (temperature - tape.temperature!) +
      (tension - tape.tension!) / tape.stiffness!;
    return {
      reading: metres((there - tape.zero.m + sag) / longer),
      tape: tape.label,
      pulling: { temperature, tension, spans: spans.map(metres) },
    };
  }

  offString(from: Thing, to: Thing, of: PullEnd, what: 'station' | 'offset' | 'both'): void {
    const [f, t, p] = [this.#touched(end(from)), this.#touched(end(to)), this.#touched(of)];
    const bearing = Math.atan2(t.y - f.y, t.x - f.x);
    const bent = Math.atan2(p.y - f.y, p.x - f.x) - bearing;
    const far = Math.hypot(p.x - f.x, p.y - f.y);
    const off = Math.abs(far * Math.sin(bent)) - this.#short(of);
    const along = far * Math.cos(bent);
    const tape = (length: number) =>
      Math.hypot(this.#instruments.tapeError.m, this.#instruments.tapeErrorPerMetre * length);
    // A right angle is good to a hundredth; the station suffers by it, and the offset by the string's own bend.
    const station = along + Math.hypot(tape(along), 0.01 * (what === 'both' ? off : 0)) * this.#noise();
    const offset = off + Math.hypot(tape(off), 0.001) * this.#noise();
    this.#book.write({
      kind: 'offset',
      from,
      to,
      of,
      ...(what === 'offset' ? {} : { station: metres(station) }),
      ...(what === 'station' ? {} : { offset: metres(Math.abs(offset)) }),
      side: Math.sin(bent) * (offset < 0 ? -1 : 1) > 0 ? 'left' : 'right',
    });
  }

  plumb(label: string, side: Side): void {
    const { facing } = this.#holes.get(label)!;
    const bearing = facing + (SIDES.indexOf(side) * Math.PI) / 2;
    const lean = this.#leans.get(label)!;
    const along = lean.x * Math.cos(bearing) + lean.y * Math.sin(bearing);
    this.#book.plumb(label, side, along + this.#instruments.plumbError * this.#noise(), 1.2);
  }

  #short({ thing, touch }: PullEnd): number {
    if (touch.at !== 'near-side' || !('hole' in thing)) return 0;
    const { section } = this.#holes.get(thing.hole)!;
    return section.kind === 'pier' ? section.diameter / 2 : 0;
  }

  #touched({ thing, touch, height }: PullEnd): Vec {
    const name = 'hole' in thing ? `${thing.kind === 'post' ? 'post' : 'stake'} ${thing.hole}` : thing.label;
    const at = this.#truth.get(name)!;
    if (thing.kind !== 'post') return at;
    const { facing, section } = this.#holes.get(thing.hole)!;
    const lean = this.#leans.get(thing.hole)!;
    const h = height?.m ?? 0;
    let { x, y } = { x: at.x + lean.x * h, y: at.y + lean.y * h };
    const sides = touch.at === 'face' ? [0] : touch.at === 'corner' ? [0, 1] : [];
    for (const turn of sides) {
      const index = ('side' in touch ? SIDES.indexOf(touch.side) : 0) + turn;
      const size =
        section.kind === 'pier' ? section.diameter : index % 2 === 0 ? section.depth : section.width;
      x += (size / 2) * Math.cos(facing + (index * Math.PI) / 2);
      y += (size / 2) * Math.sin(facing + (index * Math.PI) / 2);
    }
    return { x, y };
  }
}

export const nameOf = (thing: Thing): string =>
  'hole' in thing ? `${thing.kind === 'post' ? 'post' : 'stake'} ${thing.hole}` : thing.label;
