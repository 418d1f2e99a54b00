import { describe, expect, it } from 'vitest';
import {
  ANGLE_STEP,
  angleAgainst,
  angleTold,
  lengthAgainst,
  lengthTold,
  mitreTold,
  told,
} from '../../src/judge/frame-words.ts';

const INCH = 0.0254;
const DEGREE = Math.PI / 180;

describe('a figure as it is told', () => {
  it('is rounded to the tape’s marks, its half-width up, and never to nothing', () => {
    expect(lengthTold({ is: 90.26 * INCH, sigma: 0.1 * INCH }, 'ft-in-16')).toBe('7′ 6 1/4″ ± 1/4″');
    expect(lengthTold({ is: 2.3, sigma: 0 }, 'm')).toBe('2.300 m ± 1 mm');
  });

  it('has what rounding takes away in its half-width', () => {
    const step = 0.01;
    for (let i = 0; i < 100; i++) {
      const is = i * 0.00037;
      const said = told({ is, sigma: 0.0001 }, step);
      expect(Math.abs(said.is - is)).toBeLessThanOrEqual(said.half);
    }
  });

  it('in degrees is told to a tenth', () => {
    expect(angleTold({ is: 134.62 * DEGREE, sigma: 0.1 * DEGREE })).toBe('134.6° ± 0.3°');
  });
});

describe('against the drawing', () => {
  it.each([
    [1, 1 + 0.25 * INCH, '1/4″ shorter'],
    [1 + 0.125 * INCH, 1, '1/8″ longer'],
    [1 + 0.01 * INCH, 1, 'as drawn'],
  ])('%f for %f is %s', (is, drawn, words) => {
    expect(lengthAgainst({ is, drawn, sigma: 0 }, 'ft-in-16')).toBe(words);
  });

  it.each([
    [135.4, 135, '0.4° more'],
    [134.8, 135, '0.2° less'],
    [135.02, 135, 'as drawn'],
  ])('%f° for %f° is %s', (is, drawn, words) => {
    expect(angleAgainst({ is: is * DEGREE, drawn: drawn * DEGREE, sigma: 0 })).toBe(words);
  });
});

describe('the saw', () => {
  const mitre = (is: number, drawn = 22.5, sigma = 0.1) =>
    mitreTold({ is: is * DEGREE, drawn: drawn * DEGREE, sigma: sigma * DEGREE });

  it('is set to half the turn', () => {
    expect(mitre(22.31)).toBe('22.3° ± 0.3°');
  });

  it('cuts square where the row was drawn straight and is, as far as is known', () => {
    expect(mitre(0.1, 0)).toBe('square: they run straight on');
    expect(mitre(-0.1, 0)).toBe('square: they run straight on');
  });

  it('is set to what a bent row bends, and the way is told', () => {
    expect(mitre(1.2, 0)).toBe('1.2° ± 0.3°');
    expect(mitre(-1.2, 0)).toBe('1.2° ± 0.3°, bent inwards');
  });

  it('shows a tenth of a degree', () => {
    expect(ANGLE_STEP).toBeCloseTo(0.1 * DEGREE, 12);
  });
});
