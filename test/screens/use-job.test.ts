import { describe, expect, test } from 'vitest';
import { withEntries } from '../../src/screens/use-job.ts';
import { entry, sampleBodies } from '../job/sample.ts';

describe('a log on the screen', () => {
  const [one, two, three] = [1, 2, 3].map((seq) => entry(seq, sampleBodies.plan)) as [
    ReturnType<typeof entry>,
    ReturnType<typeof entry>,
    ReturnType<typeof entry>,
  ];

  test('loses nothing to a read that began before an append', () => {
    expect(withEntries({ log: [one, two, three] }, [one, two])).toEqual({ log: [one, two, three] });
  });

  test('has each entry once, and in order, whatever comes first', () => {
    expect(withEntries({ log: [one, three] }, [two, three])).toEqual({ log: [one, two, three] });
    expect(withEntries(null, [two, one])).toEqual({ log: [one, two] });
    expect(withEntries({ text: 'did not open' }, [one])).toEqual({ log: [one] });
  });

  test('is the same object when nothing is new, so that nothing is computed again', () => {
    const shown = { log: [one, two] };
    expect(withEntries(shown, [two, one])).toBe(shown);
  });
});
