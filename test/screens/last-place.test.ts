import { afterEach, describe, expect, test, vi } from 'vitest';
import { keepPlace, lastPlace } from '../../src/screens/last-place.ts';

afterEach(() => vi.unstubAllGlobals());

describe('the place kept for the next start', () => {
  test('is the one kept last', () => {
    const kept = new Map<string, string>();
    vi.stubGlobal('localStorage', {
      getItem: (key: string) => kept.get(key) ?? null,
      setItem: (key: string, value: string) => kept.set(key, value),
    });
    expect(lastPlace()).toBe('');
    keepPlace('#/job/abc/set/4');
    keepPlace('#/job/abc/pour');
    expect(lastPlace()).toBe('#/job/abc/pour');
  });

  test('is none where the browser refuses its small store', () => {
    const refuse = () => {
      throw new DOMException('denied', 'SecurityError');
    };
    vi.stubGlobal('localStorage', { getItem: refuse, setItem: refuse });
    expect(() => keepPlace('#/job/abc/set')).not.toThrow();
    expect(lastPlace()).toBe('');
  });

  test('hides no fault of ours', () => {
    vi.stubGlobal('localStorage', {
      getItem: () => {
        throw new RangeError('ours');
      },
    });
    expect(lastPlace).toThrow(RangeError);
  });
});
