import { describe, expect, it } from 'vitest';
import { forceScale, temperatureScale, weightScale } from '../../src/units/index.ts';

describe('of a tape', () => {
  it('temperature: water freezes at 32 °F and boils at 212 °F; 68 °F is 20 °C', () => {
    const { toSI, fromSI, mark } = temperatureScale('ft-in-16');
    expect(mark).toBe('°F');
    expect([32, 212, 68].map(toSI)).toEqual([0, 100, 20]);
    expect(fromSI(-40)).toBe(-40);
    expect(temperatureScale('mm').toSI(31)).toBe(31);
  });

  it('force: a pound is 4.4482216152605 N (NIST SP 811)', () => {
    expect(forceScale('ft').toSI(1)).toBeCloseTo(4.4482216152605, 12);
    expect(forceScale('ft').fromSI(4.4482216152605)).toBeCloseTo(1, 12);
    expect(forceScale('m').toSI(50)).toBe(50);
  });

  it('weight: 2 lb in 100′ is 0.2919 N/m (derived, not published)', () => {
    expect(weightScale('ft-in-32').toSI(2)).toBeCloseTo((2 * 4.4482216152605) / 30.48, 12);
    expect(weightScale('mm').mark).toBe('N in 1 m');
  });
});
