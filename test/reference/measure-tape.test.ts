import { describe, expect, it } from 'vitest';
import {
  calibrationCorrection,
  sagCorrection,
  slopeCorrection,
  type Tape,
  tapeCorrection,
  temperatureCorrection,
  tensionCorrection,
} from '../../src/measure/tape.ts';
import { readingFor, tapedOf, trueLength } from '../../src/measure/taped.ts';
import { apart } from '../measure/build.ts';

// The formulas hold in any consistent units: these examples are in feet and pounds, as published.
const PRINTED = 0.005;
const STEEL_PER_F = 6.5e-6;

describe('"Taping Corrections", lecture slides (slideplayer.com 13085605)', () => {
  it('a 100 ft tape of 100.02 ft, measured 500.00 ft: 500.10 ft', () => {
    expect(apart(500 + calibrationCorrection(500, 100, 100.02), 500.1)).toBeLessThan(PRINTED);
  });
  it('300.00 ft on 5°: plan 298.86, rise 26.15, correction 1.14', () => {
    const rise = 300 * Math.sin((5 * Math.PI) / 180);
    expect(apart(rise, 26.15)).toBeLessThan(PRINTED);
    expect(apart(slopeCorrection(300, rise), -1.14)).toBeLessThan(PRINTED);
    expect(apart(300 + slopeCorrection(300, rise), 298.86)).toBeLessThan(PRINTED);
  });
  it('368.50 ft at 22 °F with a tape right at 68 °F: −0.11, 368.39 ft', () => {
    const correction = temperatureCorrection(368.5, 22 - 68, STEEL_PER_F);
    expect(apart(correction, -0.11)).toBeLessThan(PRINTED);
    expect(apart(368.5 + correction, 368.39)).toBeLessThan(PRINTED);
  });
  const sags = [
    ['3 × 100 + 48.75 ft at 12 lb', [100, 100, 100, 48.75], 12, -0.71],
    ['3 × 100 + 48.75 ft at 18 lb', [100, 100, 100, 48.75], 18, -0.31],
    ['6 × 50 + 48.75 ft at 12 lb', [50, 50, 50, 50, 50, 50, 48.75], 12, -0.2],
  ] as const;
  for (const [name, spans, tension, printed] of sags) {
    it(`a 2.8 lb tape hanging ${name}: ${printed} ft`, () => {
      const sum = spans.reduce((total, span) => total + sagCorrection(span, 0.028, tension), 0);
      expect(apart(sum, printed)).toBeLessThan(PRINTED);
    });
  }
  it('18 lb on a tape right at 12 lb, 0.015 in²: 0.0014 ft in 100 ft', () => {
    expect(apart(tensionCorrection(100, 18 - 12, 0.015 * 29e6), 0.0014)).toBeLessThan(5e-5);
  });
});

describe('Engineering Aid Basic, US Navy, ch. 12', () => {
  it('a 100 ft steel tape: 0.00065 ft per °F, about 0.01 ft per 15 °F', () => {
    expect(apart(temperatureCorrection(100, 1, STEEL_PER_F), 0.00065)).toBeLessThan(1e-12);
    expect(apart(temperatureCorrection(100, 15, STEEL_PER_F), 0.01)).toBeLessThan(0.0005);
  });
});

describe('laying out 529.81 ft (textbook exercise, justaaa.com civil-engineering 875987; the sum derived)', () => {
  const tape: Tape = {
    nominal: 100,
    actual: 100.01,
    temperature: 68,
    tension: 12,
    expansion: 6.45e-6,
    stiffness: 0.0075 * 29e6,
    weight: 0.02,
    zeroOffset: 0,
  };
  const pulling = { temperature: 95, tension: 20, spans: [] };
  it('corrections 0.053, 0.092 and 0.0195 ft; hold 529.645 ft', () => {
    const { calibration, temperature, tension, sag } = tapeCorrection(529.81, tape, pulling);
    expect(apart(calibration, 0.053)).toBeLessThan(0.0005);
    expect(apart(temperature, 0.092)).toBeLessThan(0.0005);
    expect(apart(tension, 0.0195)).toBeLessThan(0.00005);
    expect(sag).toBe(0);
    expect(apart(readingFor(tapedOf(tape, pulling), 529.81), 529.645)).toBeLessThan(0.0005);
  });
  it('what is laid out measures as wanted', () => {
    const hung = { ...pulling, spans: [50, 50] };
    const blank = { ...tape, zeroOffset: -0.3 };
    const taped = tapedOf(blank, hung);
    const held = readingFor(taped, 100);
    const { total, zero } = tapeCorrection(held, blank, hung);
    expect(zero).toBe(-0.3);
    expect(apart(held + total, 100)).toBeLessThan(1e-12);
    expect(apart(trueLength(taped, held), 100)).toBeLessThan(1e-12);
  });
});

describe('slope correction for 100 (derived, not published)', () => {
  const rows = [
    [1, 0.0050001],
    [5, 0.1250782],
    [8, 0.3205136],
    [10, 0.5012563],
    [20, 2.0204103],
  ] as const;
  for (const [rise, exact] of rows) {
    it(`rise ${rise}: −${exact}`, () => {
      expect(apart(slopeCorrection(100, rise), -exact)).toBeLessThan(5e-8);
    });
  }
  it('no rise, no correction; more rise than slope is no triangle', () => {
    expect(Math.abs(slopeCorrection(100, 0))).toBe(0);
    expect(slopeCorrection(1, 2)).toBeNaN();
  });
});
