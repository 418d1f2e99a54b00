import type { Entry, EntryOf, PlumbRead } from '../job/entry-schema.ts';
import { ofKind } from '../job/log.ts';
import type { Instruments } from '../job/plan-schema.ts';
import { plumbSigma } from './sigma.ts';

type Plumb = EntryOf<'plumb'>['body'];

/** What a level shows of itself when it is turned end for end, metres per metre. */
export interface LevelError {
  /** Positive: with its marked end up it lets the top look further out than it is. */
  readonly slope: number;
  /** One sigma of `slope`. */
  readonly sigma: number;
  /** How often it was turned. */
  readonly turns: number;
}

/** What one plumb reading says of a lean past its face, metres over the length that it was read over. */
export interface PlumbValue {
  readonly reading: number;
  readonly sigma: number;
  /** What of sigma every reading of a face made the same way shares, the level's own error as far as it is not known; metres. */
  readonly common: number;
}

/**
 * Turned end for end a level errs the other way by as much: half of what two readings of one face differ by is its own error,
 * and their mean is free of it (common practice; of two equal sigmas the mean has σ/√2). A reading from one way only
 * carries the level's doubt, unless it says that the marked end was up as in readings that tell that error; then it carries
 * the doubt of that error, and so does every other that it was taken off.
 *
 * The log does not say which level was held. Two of one length are taken for one, and so is one that was adjusted meanwhile: what
 * they show turned then differs, and where that is more than luck it is said not to agree.
 */
export class PlumbReader {
  readonly #errors: ReadonlyMap<string, LevelError>;
  readonly #instruments: Instruments;

  /** @param entries that stand */
  constructor(entries: readonly Entry[], instruments: Instruments) {
    this.#instruments = instruments;
    this.#errors = errorsOf(
      ofKind(entries, 'plumb').map(({ body }) => body),
      instruments,
    );
  }

  /** Of the level of so many metres: a job has one level of a length. Null while it was never turned. */
  errorOf(over: number): LevelError | null {
    return this.#errors.get(levelKey(over)) ?? null;
  }

  value(body: Plumb): PlumbValue {
    const over = body.over.m;
    const sigma = readSigma(body.read, over, this.#instruments);
    if (body.turned) {
      const second = readSigma(body.turned.read, over, this.#instruments);
      const mean = (signed(body) + signed(body.turned)) / 2;
      return { reading: mean, sigma: Math.hypot(sigma, second) / 2, common: 0 };
    }
    const error = body.markUp ? this.errorOf(over) : null;
    if (!error) return { reading: signed(body), sigma, common: sigma };
    const common = error.sigma * over;
    return { reading: signed(body) - error.slope * over, sigma: Math.hypot(sigma, common), common };
  }
}

/** What one turned reading says of its level, metres per metre; null for a reading from one way. */
export const ownErrorIn = ({ turned, over, ...first }: Plumb): number | null =>
  turned ? (signed(first) - signed(turned)) / (2 * over.m) : null;

/** One sigma of `ownErrorIn`. */
export const ownErrorSigma = ({ read, turned }: Plumb, instruments: Instruments): number =>
  Math.hypot(readSigma(read, 1, instruments), readSigma(turned?.read, 1, instruments)) / 2;

function errorsOf(bodies: readonly Plumb[], instruments: Instruments): Map<string, LevelError> {
  const found = new Map<string, { slopes: number[]; variance: number }>();
  for (const body of bodies) {
    const slope = ownErrorIn(body);
    if (slope === null || !Number.isFinite(slope)) continue;
    const at = found.get(levelKey(body.over.m)) ?? { slopes: [], variance: 0 };
    at.slopes.push(slope);
    at.variance += ownErrorSigma(body, instruments) ** 2;
    found.set(levelKey(body.over.m), at);
  }
  return new Map(
    [...found].map(([key, { slopes, variance }]) => {
      const turns = slopes.length;
      const slope = slopes.reduce((sum, each) => sum + each, 0) / turns;
      return [key, { slope, sigma: Math.sqrt(variance) / turns, turns }];
    }),
  );
}

/** By its length to a centimetre: nobody measures his own level to a millimetre twice alike. */
const levelKey = (over: number): string => String(Math.round(over * 100));

/** Out past the face positive, metres. */
function signed({ offset, leans }: Pick<Plumb, 'offset' | 'leans'>): number {
  const sign = leans === 'out' ? 1 : leans === 'in' ? -1 : 0;
  return sign * Math.abs(offset.m);
}

/** A level that shows degrees shows tenths (common practice). */
const DEGREES_STEP = 0.1;
/** A bubble is told to a quarter of the way between two marks (common practice). */
const MARKS_STEP = 0.25;

/** One sigma of a reading from one way over a length, metres: the level's, and of what it shows the steps it is shown in, step/√12. */
export function readSigma(read: PlumbRead | undefined, over: number, instruments: Instruments): number {
  const step =
    read === undefined
      ? 0
      : read.by === 'degrees'
        ? (DEGREES_STEP * Math.PI) / 180
        : MARKS_STEP * read.perMark;
  return over * Math.hypot(plumbSigma(instruments), step / Math.sqrt(12));
}
