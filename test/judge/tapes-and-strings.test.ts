import { describe, expect, it } from 'vitest';
import type { Body } from '../../src/job/entry-schema.ts';
import type { TapeSpec } from '../../src/job/plan-schema.ts';
import { describeEntry } from '../../src/job/words.ts';
import { assess } from '../../src/judge/assess.ts';
import { checkPlan } from '../../src/plan/index.ts';
import { inches, samplePlan } from '../job/sample.ts';
import { holeStake, logOf, ORDER, READY, STAKED, stake } from '../screens/stake/field-day.ts';

const RED: TapeSpec = { label: 'Red', nominal: inches('100′'), actual: inches('101′'), zero: inches('0″') };
const tapes = (list: readonly TapeSpec[]): Body => ({
  kind: 'plan',
  plan: { ...samplePlan, instruments: { ...samplePlan.instruments, tapes: [...list] } },
});
const onTape = (body: Body): Body =>
  body.kind === 'pull' ? { ...body, tape: 'Red', pulling: { temperature: 30, tension: 100 } } : body;

describe('a tape of its own corrections', () => {
  it('that the plan does not list is told, with what to do', () => {
    const { findings } = assess(logOf(READY.map(onTape)));
    const told = findings.map(({ text }) => text).filter((text) => text.startsWith('Not used'));
    expect(told).toHaveLength(1);
    expect(told[0]).toMatch(/the plan lists no such tape now.*Put that right in the plan, or strike it/);
  });

  it('changes the place of what it was pulled to, and the words of the next pull', () => {
    const plain = assess(logOf(STAKED));
    const taped = assess(logOf([...STAKED.map(onTape), tapes([RED])]));
    expect(taped.baseline.measured! / plain.baseline.measured!).toBeCloseTo(1.01, 6);
    expect(taped.pulls[0]!.predicted + taped.pulls[0]!.residual).toBeCloseTo(
      plain.pulls[0]!.predicted + plain.pulls[0]!.residual,
      9,
    );
  });

  it('is named in the field book, as warm and as tight as it was', () => {
    const body = onTape(READY.at(-1)!);
    expect(describeEntry({ body })).toMatch(/, level, tape Red, 86 °F, pulled with 22.5 lb$/);
    expect(describeEntry({ body: READY.at(-1)! })).toMatch(/, level$/);
  });

  it('in the plan is questioned where it cannot be, or where its stretch cannot be reckoned', () => {
    const trouble = (tape: TapeSpec) =>
      checkPlan({ ...samplePlan, instruments: { ...samplePlan.instruments, tapes: [tape] } })
        .filter(({ field }) => field === 'Tape Red')
        .map(({ text }) => text);
    expect(trouble(RED)).toEqual([]);
    expect(trouble({ ...RED, actual: inches('10′') })[0]).toMatch(
      /^Tape Red: no tape reads 100′ where there are 10′/,
    );
    expect(trouble({ ...RED, weight: 0.2 })[0]).toMatch(
      /^Tape Red: type how hard it is pulled where it is true/,
    );
    expect(trouble({ ...RED, weight: 0.2, tension: 50 })).toEqual([]);
  });
});

describe('what was measured off a string', () => {
  const off = (offset: string): Body => ({
    kind: 'offset',
    from: stake('A'),
    to: stake('B'),
    of: { thing: holeStake(ORDER[0]!), touch: { at: 'nail' } },
    offset: inches(offset),
    side: 'left',
  });

  it('is assessed part by part', () => {
    const { offsets } = assess(logOf([...STAKED, off('20 0')]));
    expect(offsets).toHaveLength(1);
    expect(offsets[0]).toMatchObject({ part: 'offset', entry: logOf([...STAKED, off('20 0')]).at(-1)!.id });
    expect(offsets[0]!.predicted + offsets[0]!.residual).toBeCloseTo(20 * 0.3048, 12);
  });

  it('is suspected in its own words where it is a foot out', () => {
    const right = assess(logOf([...STAKED, off('20 0')])).offsets[0]!.predicted;
    const feet = Math.round((right / 0.3048 + 1) * 192) / 192;
    const text = `${Math.floor(feet)} ${((feet % 1) * 12).toFixed(4)}`;
    const { findings } = assess(logOf([...STAKED, off(text)]));
    const misread = findings.find(({ code }) => code === 'misreading');
    expect(misread?.text).toContain('String A to B');
  });

  it('asks for no tapes to nails that only hold a string', () => {
    const nail = (label: string) => ({ kind: 'nail', label }) as const;
    const tie: Body = {
      ...(off('0 0') as Extract<Body, { kind: 'offset' }>),
      from: nail('T1a'),
      to: nail('T1b'),
      side: 'on',
    };
    const { findings } = assess(logOf([...STAKED, tie]));
    expect(findings.filter(({ text }) => /T1[ab]/.test(text))).toEqual([]);
  });
});
