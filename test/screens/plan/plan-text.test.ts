import { describe, expect, test } from 'vitest';
import { defaultPlan } from '../../../src/plan/index.ts';
import { fromDefault } from '../../../src/screens/plan/default-hint.ts';
import { withEach, withRing, withShapeKind } from '../../../src/screens/plan/plan-edits.ts';
import * as text from '../../../src/screens/plan/plan-text.ts';
import { inches, samplePlan } from '../../job/sample.ts';

describe('the other sizes of a ring', () => {
  // Regular octagon, textbook identities (from memory): side/R 0.7653668647, apothem/R 0.9238795325.
  // R = 10 ft: side 7.65367 ft = 7′ 7.844″, to the sixteenth 7′ 7 7/8″, flats 18.47759 ft = 18′ 5 3/4″; half of a 5 1/2″ post is 2 3/4″.
  const ring = { ...samplePlan.shape, size: inches('10 0') };
  const say = (r: typeof ring) => {
    if (r.kind !== 'ring') throw new Error('not a ring');
    return text.ringSizesLine(r, text.sectionOfEach(samplePlan), 'ft-in-16');
  };

  test('are those of the octagon', () => {
    expect(say(ring)).toBe(
      'That is 10′ 2 3/4″ to the outer faces, 18′ 5 3/4″ flat to flat, 7′ 7 7/8″ between neighbours.',
    );
  });

  test('are not told of a ring that cannot be', () => {
    if (ring.kind !== 'ring') throw new Error('not a ring');
    expect(say({ ...ring, sizeBy: 'outer-faces', size: inches('2\u2033') })).toBeNull();
  });
});

describe('the lines that open the groups', () => {
  test('say what is set', () => {
    expect(text.shapeLine(samplePlan.shape)).toBe('8 posts on a ring round a pier, a post at the front');
    expect(text.sizeLine(samplePlan.shape)).toBe('9′ 0″ from the middle to post centres');
    expect(text.holdsLine(samplePlan).replaceAll('\u00a0', ' ')).toBe(
      '6×6 post, really 5 1/2″ × 5 1/2″, in holes 1′ 4″ wide; in the middle a round pier, 1′ 0″ across',
    );
    expect(text.heightsLine(samplePlan)).toBe('Tops 3′ 0″ above the benchmark; pier 6″ above the benchmark');
    expect(text.singleLine(samplePlan)).toBe('Different: 3');
    expect(text.rulesLine(samplePlan)).toBe('Frost 3′ 0″, gravel 6″, embedment 3′ 6″');
  });

  test('say that the frost depth is not known, and of one post that it stands in the middle', () => {
    expect(text.rulesLine(defaultPlan('m'))).toBe(
      'Frost depth not known yet, gravel 150 mm, embedment 305 mm',
    );
    const rows = withShapeKind(samplePlan, 'rows').shape;
    expect(text.sizeLine({ ...rows, columns: 1, rows: 1 } as typeof rows)).toBe('One post, in the middle');
  });

  test('say a height below the benchmark without a minus', () => {
    const plan = withRing(withEach(samplePlan, { top: inches('-6\u2033') }), { pier: false });
    expect(text.heightsLine(plan)).toBe('Tops 6″ below the benchmark');
    expect(text.heightWords(inches('0'), 'ft-in-16')).toBe('level with the benchmark');
  });
});

describe('where a value comes from', () => {
  test('is said while it is the default, whatever the job’s units are now', () => {
    const { gravel } = defaultPlan('ft-in-16').rules;
    expect(fromDefault('rules.gravel', gravel, 'ft-in-16')).toEqual({
      usual: 'common practice; your drawing or code decides',
    });
    expect(fromDefault('rules.gravel', gravel, 'm')).toHaveProperty('usual');
  });

  test('is not said once it was changed', () => {
    expect(fromDefault('rules.gravel', inches('4\u2033'), 'ft-in-16')).toEqual({});
    expect(fromDefault('rules.nothing', inches('4\u2033'), 'ft-in-16')).toEqual({});
  });
});
