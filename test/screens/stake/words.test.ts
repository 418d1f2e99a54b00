import { describe, expect, test } from 'vitest';
import { holesOf, layPlan } from '../../../src/plan/index.ts';
import { expectedEllipse } from '../../../src/screens/stake/expected-ellipse.ts';
import {
  aloneWords,
  crossingWords,
  sideWords,
  slopeWords,
  stationWords,
} from '../../../src/screens/stake/hole-words.ts';
import {
  flattestWords,
  lieWords,
  placeWords,
  signed,
  typedPlace,
  unsigned,
  worstWords,
} from '../../../src/screens/stake/place-words.ts';
import { stringsWords } from '../../../src/screens/stake/strings/string-words.ts';
import { crossingAt, holePulls } from '../../../src/stakeout/index.ts';
import { inches, samplePlan } from '../../job/sample.ts';

const foot = 0.3048;
const units = 'ft-in-16';
const DEGREE = Math.PI / 180;
const [hole] = holesOf(samplePlan);

/** A hole at a station and an offset, as `holePulls` tells it with B 20 ft from A. */
function at(station: number, offset: number) {
  const { place: _, ...rest } = hole!;
  const site = { x: station * foot, y: offset * foot };
  return holePulls([{ ...rest, site }], 20 * foot, samplePlan.instruments)[0]!;
}

describe('where a hole lies', () => {
  test.each([
    [at(4, 12), '4′ 0″ along from A, then 12′ 0″ square off to the left.', 'left'],
    [at(4, -12), '4′ 0″ along from A, then 12′ 0″ square off to the right.', 'right'],
    [at(-3, 2), '3′ 0″ back from A, away from B, then 2′ 0″ square off to the left.', 'left'],
    [at(5, 0), '5′ 0″ along from A, on the line.', 'itself'],
    [at(0, 6), '6′ 0″ square off A–B from A’s own nail, to the left.', 'left'],
    [at(-0.001, -6), '6′ 0″ square off A–B from A’s own nail, to the right.', 'right'],
  ])('%#', (pulls, station, side) => {
    expect(stationWords(pulls, units)).toBe(station);
    expect(sideWords(pulls)).toContain(side);
  });

  test('how good it is, by the angle at which the tapes cross', () => {
    const good = { angle: 84 * DEGREE, drms: 0.0032, worstAxis: 0.003, grade: 'good' } as const;
    expect(crossingWords(good, units)).toBe('The tapes cross at 84°: good to 1/8″.');
    expect(crossingWords({ ...good, angle: 18 * DEGREE, grade: 'poor' }, units)).toMatch(
      /only 18°.*check pulls/,
    );
    expect(crossingWords({ ...good, drms: Number.POSITIVE_INFINITY }, units)).toContain('in one line');
  });

  test('what a slope of 1 in 10 makes of 20 ft: 1 3/16 in (derived, not published)', () => {
    expect(slopeWords(20 * foot, units)).toContain('1 3/16″ more');
  });
});

describe('for one person', () => {
  test('two arcs, and a second hand where the tape has to be held up', () => {
    expect(aloneWords('slope', false)).toBe(
      'Alone: scratch an arc at the reading from A, then meet it with the tape from B.',
    );
    expect(aloneWords('level', false)).toMatch(
      /Held level, a tape wants a second hand at its low end\. Hold it along the slope instead\.$/,
    );
    expect(aloneWords('slope', true)).toMatch(
      /Held level, a tape wants a second hand at its low end\. To hold it along the slope, read the heights first\.$/,
    );
  });
});

describe('how strings cross', () => {
  const crossing = (degrees: number) => ({
    hole: '1',
    strings: ['S1', 'S2'] as const,
    angle: degrees * DEGREE,
  });
  test.each([
    [[90, 90], 'every hole, square.'],
    [[67.5, 67.5], 'every hole, all at 67°.'],
    [[90, 72], 'every hole, the flattest at 72°.'],
  ])('%s', (angles, words) => {
    const [first] = stringsWords({ strings: [], crossings: angles.map(crossing), uncrossed: [] }, units);
    expect(first).toContain(words);
  });
});

describe('where A and B go', () => {
  const place = (right: string, front: string) => ({ right: inches(right), front: inches(front) });

  test.each([
    [0, 0, 'at the plan’s centre'],
    [0, -15.5 * foot, '15′ 6″ straight behind the plan’s centre'],
    [0.0002, 15.5 * foot, '15′ 6″ straight in front of the plan’s centre'],
    [-12 * foot, 0.0002, '12′ 0″ straight to the left of the plan’s centre'],
  ])('says no length that rounds to nothing: %#', (right, front, words) => {
    expect(placeWords({ right, front }, units)).toBe(words);
  });

  test('is told from the centre without a sign', () => {
    expect(placeWords({ right: -12 * foot, front: -15.5 * foot }, units)).toBe(
      '12′ 0″ to the left of the plan’s centre and 15′ 6″ behind it',
    );
  });

  test.each([
    [
      place('-7 0', '-15 0'),
      place('7 0', '-15 0'),
      'lies 7′ 0″ along and 15′ 0″ to the left. Its front looks away from A–B.',
    ],
    [
      place('7 0', '15 0'),
      place('-7 0', '15 0'),
      'lies 7′ 0″ along and 15′ 0″ to the left. Its front looks toward A–B.',
    ],
    [
      place('-15 0', '-7 0'),
      place('-15 0', '7 0'),
      'lies 7′ 0″ along and 15′ 0″ to the right. Its front looks the way from A to B.',
    ],
    // A–B turned by 21.8° (tan 0.4) anticlockwise under the plan: seen from the line, the front is turned clockwise by as much.
    [
      place('-5 0', '-15 0'),
      place('5 0', '-11 0'),
      'Its front looks away from A–B, turned 22° clockwise seen from above.',
    ],
    [
      place('-5 0', '-11 0'),
      place('5 0', '-15 0'),
      'Its front looks away from A–B, turned 22° anticlockwise seen from above.',
    ],
    [place('10 0', '0 0'), place('20 0', '0 0'), 'lies 10′ 0″ back from A and on the line.'],
  ])('and how the plan then lies, %#', (a, b, words) => {
    const laid = layPlan({ a, b }, []);
    expect(laid.ok && lieWords(laid.value.motion, units)).toContain(words);
  });

  test('a typed length keeps its text with the sign and without', () => {
    const left = signed(inches('12 6 1/2'), true);
    expect(left).toEqual(inches('-12 6 1/2'));
    expect(unsigned(left)).toEqual({ size: inches('12 6 1/2'), negative: true });
    expect(signed(inches('0'), true)).toEqual(inches('0'));
  });

  test('typed places are rounded to the step of the units', () => {
    expect(typedPlace({ x: -3.6576, y: 1 }, 'mm')).toEqual({
      right: { m: -3.658, typed: '−3658 mm', units: 'mm' },
      front: { m: 1, typed: '1000 mm', units: 'mm' },
    });
  });

  test('the worst hole, or that one is not fixed at all', () => {
    const crossing = { angle: 63 * DEGREE, drms: 0.0048, worstAxis: 0.004, grade: 'good' } as const;
    expect(worstWords({ worst: { hole: '6', crossing } }, units)).toBe(
      'Worst is hole 6: good to 3/16″, where the tapes cross at 63°.',
    );
    const flat = { ...crossing, drms: Number.POSITIVE_INFINITY };
    expect(worstWords({ worst: { hole: '6', crossing: flat } }, units)).toContain('in line with A and B');
  });
});

describe('the flattest crossing', () => {
  const at = (hole: string, degrees: number) => ({
    hole,
    crossing: { angle: degrees * DEGREE, drms: 0.003, worstAxis: 0.003, grade: 'good' } as const,
    withinTape: true,
  });

  test('is told where it is not that of the worst hole', () => {
    const [worst, flattest] = [at('2', 69), at('6', 121)];
    expect(flattestWords({ perHole: [at('1', 90), worst, flattest], worst })).toBe(
      'The flattest crossing is 121°, at hole 6.',
    );
    expect(flattestWords({ perHole: [at('1', 90), worst, at('6', 110)], worst })).toBe('');
    expect(flattestWords({ perHole: [], worst: null })).toBe('');
  });
});

describe('the ellipse that two equal tapes give', () => {
  const instruments = { ...samplePlan.instruments, tapeErrorPerMetre: 0 };
  const sigma = instruments.tapeError.m;

  test('is a circle where they cross squarely, 2.73 σ long at 30° (derived, not published)', () => {
    const round = expectedEllipse({ x: 0, y: 0 }, { x: 5, y: 0 }, { x: 0, y: 5 }, instruments)!;
    expect(round.semiMajor / sigma).toBeCloseTo(1, 6);
    expect(round.semiMinor / sigma).toBeCloseTo(1, 6);
    const half = 15 * DEGREE;
    const [a, b] = [1, -1].map((k) => ({ x: 5 * Math.cos(half), y: k * 5 * Math.sin(half) })) as [
      { x: number; y: number },
      { x: number; y: number },
    ];
    const sharp = expectedEllipse({ x: 0, y: 0 }, a, b, instruments)!;
    expect(sharp.semiMajor / sigma).toBeCloseTo(2.732, 3);
    // Long across the tapes: both run along x, so along y.
    expect(Math.abs(Math.sin(sharp.bearing))).toBeCloseTo(1, 6);
  });

  test('agrees with the crossing where one tape is longer, and its error greater', () => {
    const far = { ...samplePlan.instruments, tapeErrorPerMetre: 0.0005 };
    const [at, a, b] = [
      { x: 1, y: 2 },
      { x: -3, y: -4 },
      { x: 20, y: 3 },
    ] as const;
    const { semiMajor, semiMinor } = expectedEllipse(at, a, b, far)!;
    const { worstAxis, drms } = crossingAt(at, a, b, far);
    expect(semiMajor).toBeCloseTo(worstAxis, 12);
    expect(Math.hypot(semiMajor, semiMinor)).toBeCloseTo(drms, 12);
  });

  test('does not exist in line with both', () => {
    const [at, a, b] = [
      { x: 0, y: 0 },
      { x: 1, y: 0 },
      { x: 2, y: 0 },
    ];
    expect(expectedEllipse(at!, a!, b!, instruments)).toBeNull();
  });
});
