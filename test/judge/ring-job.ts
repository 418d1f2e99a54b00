import type { Assessment, HoleAssessment } from '../../src/judge/types.ts';
import { Field, noise, post, stake } from './field.ts';

export const HOLES = ['1', '2', '3', '4', '5', '6'] as const;
export const A = stake('A');
export const B = stake('B');

export const holeOf = (assessment: Assessment, label: string): HoleAssessment => {
  const found = assessment.holes.find(({ hole }) => hole === label);
  if (!found) throw new Error(`no hole ${label}`);
  return found;
};
export const codes = (assessment: Assessment) => assessment.findings.map(({ code }) => code);

interface Job {
  readonly seed?: number;
  /** A slip in the pull from B to post 2, metres. */
  readonly slip?: number;
  /** Post 5 stands this far to the right of its mark, metres. */
  readonly off?: number;
  readonly before?: (field: Field) => void;
}

/** Six posts round a pier, all set and measured from A, B and both neighbours, with the tape's own noise. */
export function setJob({ seed = 1, slip = 0, off = 0, before }: Job = {}): Field {
  const field = new Field().site();
  const n = noise(seed);
  before?.(field);
  if (off !== 0) field.off(post('5'), off, 0);
  field.pull(A, B, { error: n(0.002) });
  field.pull(A, B, { error: n(0.002) });
  for (const hole of HOLES) {
    field.dig(hole).set(hole);
    field.pull(A, post(hole), { error: n(0.002), side: 'back' });
    field.pull(B, post(hole), { error: n(0.002) + (hole === '2' ? slip : 0), side: 'back' });
  }
  HOLES.forEach((hole, i) => {
    field.pull(post(hole), post(HOLES[(i + 1) % HOLES.length]!), { error: n(0.002), side: 'left' });
  });
  return field;
}
