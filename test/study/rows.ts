import { GLOBAL_FAILS } from './alarms.ts';
import { BANDS, type Misreadings, SHAPES } from './misreadings.ts';
import type { Moves } from './moves.ts';
import { FACTOR_95 } from './places.ts';
import type { Share } from './share.ts';
import type { Study } from './study.ts';
import { ALPHA } from './theory.ts';
import type { Verdicts } from './verdicts.ts';

/** One line of the study's table. */
export interface Row {
  readonly question: string;
  readonly measured: Share;
  /** What is asked for, and whether it holds; null where nothing is. */
  readonly bar: { readonly text: string; readonly holds: boolean } | null;
  /** What theory promises, and by which source of the list under the table. */
  readonly expected: string;
}

const MOST_WRONG = 0.05;
const ELLIPSES_HOLD = 0.95;
const ELLIPSES_WITHIN = 0.005;
const NOTICED_FROM = 0.995;
const FIRST_FROM = 0.99;
/** A rate is as stated when chance alone takes it further off less than once in 370 studies. */
const STANDARD_ERRORS = 3;

export const percent = (share: number, digits = 2): string =>
  Number.isFinite(share) ? `${(100 * share).toFixed(digits)} %` : 'none';

const atMost = (share: Share, most: number) => ({
  text: `at most ${percent(most, 0)}`,
  holds: share.value <= most,
});
const atLeast = (share: Share, least: number) => ({
  text: `at least ${percent(least, 1)}`,
  holds: share.value >= least,
});
const atRate = (share: Share, rate: number, digits: number) => ({
  text: `${percent(rate, digits)}, by ${STANDARD_ERRORS} standard errors`,
  holds: Math.abs(share.value - rate) <= STANDARD_ERRORS * share.standardError,
});

/** The whole table, in the order of its questions. */
export function rowsOf(study: Study): Row[] {
  return [
    ...study.verdicts.flatMap(({ quantity, counts }) => verdictRows(quantity, counts)),
    ellipseRow(study),
    ...misreadingRows(study.oneInch.all),
    ...otherSlipRows(study),
    ...study.moves.flatMap(moveRows),
    ...alarmRows(study),
    stillRow(study),
  ];
}

function verdictRows(quantity: string, counts: Verdicts): Row[] {
  return [
    {
      question: `${quantity}: called in, really out`,
      measured: counts.inIsOut,
      bar: atMost(counts.inIsOut, MOST_WRONG),
      expected: `${percent(counts.inIsOutClaimed.value)} [1]`,
    },
    {
      question: `${quantity}: called out, really in`,
      measured: counts.outIsIn,
      bar: atMost(counts.outIsIn, MOST_WRONG),
      expected: `${percent(counts.outIsInClaimed.value)} [1]`,
    },
    { question: `${quantity}: called unsure`, measured: counts.unsure, bar: null, expected: '' },
  ];
}

function ellipseRow({ places: { inside } }: Study): Row {
  const holds = Math.abs(inside.value - ELLIPSES_HOLD) <= ELLIPSES_WITHIN;
  return {
    question: `true places inside ${FACTOR_95} times the ellipse`,
    measured: inside,
    bar: { text: `${percent(ELLIPSES_HOLD, 0)} ± ${100 * ELLIPSES_WITHIN}`, holds },
    expected: `${percent(1 - Math.exp(-(FACTOR_95 ** 2) / 2))} [2]`,
  };
}

function misreadingRows(all: Misreadings): Row[] {
  return [
    {
      question: 'one inch in a guarded pull: noticed',
      measured: all.noticed,
      bar: atLeast(all.noticed, NOTICED_FROM),
      expected: `${percent(all.noticedExpected.value)} or more [3]`,
    },
    {
      question: 'one inch in a guarded pull: named first',
      measured: all.first,
      bar: atLeast(all.first, FIRST_FROM),
      expected: `${firstBetween(all)} [4]`,
    },
    {
      question: 'one inch in a guarded pull: among those named',
      measured: all.named,
      bar: null,
      expected: '',
    },
  ];
}

function otherSlipRows({ otherSlips: { plumb, rod } }: Study): Row[] {
  return [
    {
      question: 'a quarter inch in a guarded plumb reading: among those named',
      measured: plumb,
      bar: null,
      expected: '',
    },
    { question: 'one inch in a rod reading: among those named', measured: rod, bar: null, expected: '' },
  ];
}

/** What is asked of a knock of so many metres, at least; null where nothing is. */
const MOVE_BARS: Record<number, { readonly noticed: number; readonly named: number | null }> = {
  0.025: { noticed: 0.99, named: 0.99 },
  0.015: { noticed: 0.92, named: null },
};

function moveRows({ by, noticed, asMove, named, noticedExpected }: Moves): Row[] {
  const bars = MOVE_BARS[by];
  const what = `stake knocked by ${Math.round(by * 1000)} mm`;
  return [
    {
      question: `${what}: noticed`,
      measured: noticed,
      bar: bars ? atLeast(noticed, bars.noticed) : null,
      expected: `${percent(noticedExpected.value)} [6]`,
    },
    { question: `${what}: noticed as a move`, measured: asMove, bar: null, expected: '' },
    {
      question: `${what}: right stake named first`,
      measured: named,
      bar: bars?.named ? atLeast(named, bars.named) : null,
      expected: '',
    },
  ];
}

function stillRow({ stoodStill: { alarms } }: Study): Row {
  return {
    question: 'no stake knocked: a move believed',
    measured: alarms,
    bar: null,
    expected: '0.1 % for each moment looked at [6]',
  };
}

function alarmRows({ alarms }: Study): Row[] {
  const most = alarms.jobsAtMost.value;
  return [
    {
      question: 'clean jobs: pulls beyond 3.29',
      measured: alarms.pulls,
      bar: atRate(alarms.pulls, ALPHA, 1),
      expected: `${percent(ALPHA, 3)} [3]`,
    },
    {
      question: 'clean jobs: those with any reading suspected',
      measured: alarms.jobs,
      bar: { text: 'at most as expected', holds: alarms.jobs.value <= most },
      expected: `at most ${percent(most)} [5]`,
    },
    {
      question: `clean jobs: global test of the pulls below ${percent(GLOBAL_FAILS, 0)}`,
      measured: alarms.globalTests,
      bar: atRate(alarms.globalTests, GLOBAL_FAILS, 0),
      expected: `${percent(GLOBAL_FAILS)} [2]`,
    },
  ];
}

export const firstBetween = ({ firstAtLeast, firstAtMost }: Misreadings): string =>
  `${percent(firstAtLeast.value)} to ${percent(firstAtMost.value)}`;

/** The shapes, with what became of the misreadings in each. */
export const shapesOf = ({ oneInch }: Study): { shape: string; counts: Misreadings }[] =>
  SHAPES.map((shape) => ({ shape, counts: oneInch.shapes.get(shape)! }));

/** The bands of redundancy in words, with what became of the misreadings in each. */
export const bandsOf = ({ oneInch }: Study): { band: string; counts: Misreadings }[] =>
  BANDS.map((from, i) => ({
    band: `${from} to ${BANDS[i + 1] ?? 1}`,
    counts: oneInch.bands.get(from)!,
  }));
