import { describe, expect, test } from 'vitest';
import { hrefOf, PHASES, readRoute } from '../../src/screens/route.ts';

describe('the address', () => {
  test.each(PHASES)('of %s leads back to it, whatever the hole is called', (phase) => {
    for (const hole of [null, '4', 'P', 'north/east 50%'])
      expect(readRoute(hrefOf({ at: 'job', job: 'abc', phase, hole }))).toEqual({
        at: 'job',
        job: 'abc',
        phase,
        hole,
      });
  });

  test.each(['', '#', '#/', '#/job', '#/elsewhere/abc'])('“%s” leads home', (fragment) => {
    expect(readRoute(fragment)).toEqual({ at: 'home' });
  });

  test('a phase that there is not is the plan, and a broken escape names no hole', () => {
    expect(readRoute('#/job/abc/dance')).toMatchObject({ phase: 'plan' });
    expect(readRoute('#/job/abc/set/%E0%A4%A')).toEqual({ at: 'job', job: 'abc', phase: 'set', hole: null });
  });
});
