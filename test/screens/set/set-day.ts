import { readFileSync } from 'node:fs';
import type { Body, Entry, PullEnd } from '../../../src/job/entry-schema.ts';
import { roundedLength } from '../../../src/job/length.ts';
import { assessSituation } from '../../../src/judge/assess.ts';
import { situate } from '../../../src/judge/situation.ts';
import type { HoleAssessment } from '../../../src/judge/types.ts';
import { viewOf } from '../../../src/judge/view.ts';
import { type SetBook, setBookOf } from '../../../src/screens/set/set-book.ts';
import { setStep } from '../../../src/screens/set/set-step.ts';
import type { Part, SetChoices, SetStep } from '../../../src/screens/set/step.ts';
import { readBackup } from '../../../src/store/read-backup.ts';
import { inches } from '../../job/sample.ts';
import { logOf } from '../stake/field-day.ts';

const UNITS = 'ft-in-16';
/** Height of the level's line of sight above the benchmark, metres. */
export const SIGHT = 1.5;

export interface Day {
  readonly book: SetBook;
  readonly holes: readonly HoleAssessment[];
  readonly hole: (label: string) => HoleAssessment;
}

/** What the Set phase makes of a log. */
export function dayOf(log: readonly Entry[]): Day {
  const situation = situate(log);
  const view = viewOf(situation);
  if (!view) throw new Error('This log has no plan');
  const { holes } = assessSituation(situation);
  const hole = (label: string) => {
    const found = holes.find((each) => each.hole === label);
    if (!found) throw new Error(`No hole ${label}`);
    return found;
  };
  return { book: setBookOf(view), holes, hole };
}

export const choices = (left: readonly Part[] = [], setup = '1'): SetChoices => ({
  setup,
  left: () => new Set(left),
});

export function stepAfter(bodies: readonly Body[], hole: string, of: SetChoices = choices()): SetStep {
  const day = dayOf(logOf(bodies));
  return setStep(day.book, day.hole(hole), of);
}

export const post = (hole: string, event: 'set' | 'nudged' | 'moved' = 'set'): Body => ({
  kind: 'stand',
  thing: { kind: 'post', hole },
  event,
});

export const pullOf = (ends: { from: PullEnd; to: PullEnd }, m: number): Body => ({
  kind: 'pull',
  from: ends.from,
  to: ends.to,
  reading: roundedLength(m, UNITS),
  hold: { how: 'level' },
});

/** What careful people would log for a step; null for one that is no reading. */
export function answer(step: SetStep, hole: string): Body | null {
  switch (step.do) {
    case 'stand':
      return post(hole);
    case 'baseline':
    case 'pull':
    case 'tell':
      return pullOf(step.pull, step.pull.expected);
    case 'plumb':
      return {
        kind: 'plumb',
        hole,
        side: step.side,
        offset: inches('0'),
        over: inches('4 0'),
        leans: 'none',
      };
    case 'rod':
      return {
        kind: 'rod',
        setup: '1',
        on: step.on,
        reading: roundedLength(step.expected ?? SIGHT, UNITS),
      };
    default:
      return null;
  }
}

/** More steps than any post takes: a circle is a fault. */
const MOST_STEPS = 30;

/** Does what is asked for, step by step, until nothing more is. */
export function walk(bodies: readonly Body[], hole: string): { bodies: Body[]; steps: SetStep[] } {
  const done = [...bodies];
  const steps: SetStep[] = [];
  for (let i = 0; i < MOST_STEPS; i++) {
    const step = stepAfter(done, hole);
    steps.push(step);
    const body = answer(step, hole);
    if (!body) return { bodies: done, steps };
    done.push(body);
  }
  throw new Error(`Still asked for more after ${MOST_STEPS} readings of ${hole}`);
}

/** A step in one word or two, for telling their order. */
export function nameOf(step: SetStep): string {
  if (step.do === 'pull') {
    const { thing } = step.pull.from;
    return `pull ${'label' in thing ? thing.label : thing.hole}`;
  }
  if (step.do === 'plumb') return `plumb ${step.side}`;
  if (step.do === 'rod') return `rod ${step.on.point}`;
  return step.do;
}

/** Seen from where the tests are run. */
const EXAMPLE = 'public/example-job.swingtape.txt';
export const exampleText = (): string => readFileSync(EXAMPLE, 'utf8');

/** The example job: one tape to post 8 misread by an inch, post 4 out of place. */
export function exampleLog(): Entry[] {
  const backup = readBackup(exampleText());
  if (!backup.ok) throw new Error(backup.problem.text);
  return [...backup.value.log];
}

/** The example's log with more at its end. */
export const exampleAnd = (...more: Body[]): Entry[] => {
  const log = exampleLog();
  const last = log.at(-1)!;
  return [
    ...log,
    ...more.map((body, i) => ({ id: `more-${i + 100}`, seq: last.seq + i + 1, at: last.at, body })),
  ];
};
