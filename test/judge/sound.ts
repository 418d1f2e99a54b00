import { expect } from 'vitest';
import type { Judgement } from '../../src/judge/types.ts';

/** What every judgement must hold, whatever it judged. */
export function sound(judgement: Judgement): Judgement {
  const { verdict, chance, error, uncertainty, checked, text, why } = judgement;
  if (verdict === 'unmeasured') {
    expect([chance, error, uncertainty, checked]).toEqual([null, null, null, false]);
    expect(text).toBe('unmeasured');
  } else {
    expect(chance).toBeGreaterThanOrEqual(0);
    expect(chance).toBeLessThanOrEqual(1);
    expect(text.startsWith(`${verdict}, `)).toBe(true);
    expect(text.endsWith(', unchecked')).toBe(!checked);
  }
  expect(why === '').toBe(verdict === 'in' && checked);
  if (why !== '') expect(why).toMatch(/^[A-Z].*\.$/);
  expect(`${text} ${why}`).not.toMatch(/NaN|undefined|null|Infinity|[-−]\d/);
  return judgement;
}
