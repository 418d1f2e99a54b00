import { describe, expect, test } from 'vitest';
import type { Body, Entry } from '../../src/job/entry-schema.ts';
import { assessSituation } from '../../src/judge/assess.ts';
import { situate } from '../../src/judge/situation.ts';
import { viewOf } from '../../src/judge/view.ts';
import { sessionOf } from '../../src/screens/session.ts';
import { BASELINE, MARKED, PROVED, pull, READY, stake } from './stake/field-day.ts';

const HOUR = 3600_000;
const NOW = Date.UTC(2026, 4, 2, 8);
const [A, B] = [stake('A'), stake('B')];
const against = (mm: number): Body => pull(A, B, BASELINE + mm / 1000);

/** Entries logged a minute apart, the last of `before` so many hours ago; then those of now. */
function session(before: readonly Body[], hours: number, since: readonly Body[] = []) {
  const timed = [
    ...before.map((body, i) => ({ body, at: NOW - hours * HOUR - (before.length - 1 - i) * 60_000 })),
    ...since.map((body, i) => ({ body, at: NOW + i * 60_000 })),
  ];
  const log = timed.map(
    ({ body, at }, i): Entry => ({
      id: `entry-${String(i + 1).padStart(4, '0')}`,
      seq: i + 1,
      at: new Date(at).toISOString(),
      body,
    }),
  );
  const situation = situate(log);
  const { holes } = assessSituation(situation);
  return sessionOf(viewOf(situation)!, holes, NOW + since.length * 60_000);
}

describe('when work begins again', () => {
  test('half a day after the last entry, A–B is asked for, with what it should read', () => {
    const asked = session(PROVED, 16)!;
    expect(asked.ask).toMatchObject({ from: { thing: A }, to: { thing: B } });
    expect(asked.ask!.expected).toBeCloseTo(BASELINE, 2);
    expect(asked.why).toMatch(
      /^A to B was last pulled \d+ hours ago: a stake may have been knocked meanwhile\.$/,
    );
    expect(session(PROVED, 72)!.why).toMatch(/^A to B was last pulled 3 days ago: /);
    // What else was logged just now is not held against the stakes.
    const note: Body = { kind: 'note', text: 'rain' };
    expect(session(PROVED, 72, [note])!.why).toMatch(/^A to B was last pulled 3 days ago: /);
  });

  test('nothing is asked within a session, nor before A–B was ever pulled', () => {
    expect(session(PROVED, 1)).toBeNull();
    expect(session(MARKED, 16)).toBeNull();
  });

  test('A–B that fits is told so, and one more pull to something that stood still is asked for', () => {
    const told = session(PROVED, 16, [against(1)])!;
    expect(told.found).toMatch(/^A–B still fits: .* from before, .* would be trouble\.$/);
    expect(told.ask).toMatchObject({ from: { thing: A }, to: { thing: { kind: 'hole-stake' } } });
    const { to, expected } = told.ask!;
    expect(session(PROVED, 16, [against(1), pull(A, to.thing, expected)])).toMatchObject({ ask: null });
  });

  test('A–B that does not fit is told so', () => {
    expect(session(READY, 16, [against(25)])!.found).toMatch(/^A–B does not fit any more: 1″ from before/);
  });

  test('what was found is told until something else is logged', () => {
    const note: Body = { kind: 'note', text: 'rain' };
    expect(session(READY, 16, [against(1)])!.found).not.toBeNull();
    expect(session(READY, 16, [against(1), note])).toBeNull();
  });

  test('who goes on without is not asked again, and the log says so', () => {
    const { without } = session(PROVED, 16)!;
    expect(without).toMatch(/^A–B was not pulled again/);
    expect(session(PROVED, 16, [{ kind: 'note', text: without }])).toBeNull();
    const witness = session(PROVED, 16, [against(1)])!.without;
    expect(witness).toMatch(/^A–B was pulled when work began again, and no other line/);
    expect(session(PROVED, 16, [against(1), { kind: 'note', text: witness }])).toBeNull();
  });
});
