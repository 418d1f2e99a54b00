import { expect, test } from 'vitest';
import { startLine, withKind } from '../../../src/screens/stake/lay/line-draft.ts';

test('another kind of line brings its usual name, and never takes away one that was typed', () => {
  const named = (name: string) => withKind({ ...startLine(null), name }, 'house', []).name;
  expect(['', 'Line', 'Boundary 2'].map(named)).toEqual(['House', 'House', 'House']);
  expect(['Lineside ditch', 'House of Ann'].map(named)).toEqual(['Lineside ditch', 'House of Ann']);
});
