import { describe, expect, it } from 'vitest';
import { unit } from '../../src/geometry/point.ts';
import { adviceFor } from '../../src/judge/advice.ts';
import { assess } from '../../src/judge/assess.ts';
import { principalAxes } from '../../src/judge/chance.ts';
import { localFix } from '../../src/judge/local-fix.ts';
import { possiblePulls } from '../../src/judge/possible-pulls.ts';
import { situate } from '../../src/judge/situation.ts';
import { type JobView, viewOf } from '../../src/judge/view.ts';
import { Field, holeStake, mm, noise, post, ringPlan, stake } from './field.ts';

const A = stake('A');
const B = stake('B');
const rays = (sigma: number, ...degrees: readonly number[]) =>
  degrees.map((degree) => ({ along: unit((degree * Math.PI) / 180), sigma }));

describe('localFix', () => {
  // Two equal tapes that cross at γ: root mean square σ√2 / sin γ, worst axis σ / √(1 − |cos γ|) (derived, not published).
  for (const [angle, drms, worst] of [
    [90, Math.SQRT2, 1],
    [60, 1.633, Math.SQRT2],
    [120, 1.633, Math.SQRT2],
    [45, 2, 1.848],
    [30, 2.828, 2.732],
    [20, 4.135, 4.072],
  ] as const) {
    it(`two tapes that cross at ${angle}°`, () => {
      const { covariance, unseenShift } = localFix(rays(1, 10, 10 + angle))!;
      expect(Math.abs(Math.sqrt(covariance.xx + covariance.yy) - drms)).toBeLessThan(6e-4);
      expect(Math.abs(principalAxes(covariance).major - worst)).toBeLessThan(6e-4);
      expect(unseenShift).toBe(Number.POSITIVE_INFINITY);
    });
  }
  it('three tapes 120° apart: redundancy a third each, an unseen shift of 4.132 · √3 · 2/3 σ', () => {
    const { unseenShift } = localFix(rays(2, 0, 120, 240))!;
    expect(unseenShift).toBeCloseTo(4.132 * Math.sqrt(3) * (2 / 3) * 2, 9);
  });
  it('one tape, or two in one line, fix nothing', () => {
    expect(localFix(rays(1, 30))).toBeNull();
    expect(localFix(rays(1, 30, 210))).toBeNull();
    expect(localFix([])).toBeNull();
  });
});

function viewWith(field: Field): JobView {
  const view = viewOf(situate(field.log));
  if (!view) throw new Error('no plan');
  return view;
}

function ring(field: Field, ...holes: readonly string[]): Field {
  field.pull(A, B);
  field.pull(A, B);
  for (const hole of holes) field.set(hole).pullsTo(post(hole), [A, B]);
  return field;
}

describe('possiblePulls', () => {
  const from = (field: Field, hole: string) =>
    possiblePulls(viewWith(field), post(hole), field.placeOf(post(hole))).map(({ from: thing }) =>
      thing.kind === 'post' ? thing.hole : thing.kind === 'stake' ? thing.label : '?',
    );
  it('start from stakes and measured posts, and not from itself', () => {
    expect(from(ring(new Field().site(), '1', '2', '3'), '1').sort()).toEqual(['2', '3', 'A', 'B']);
  });
  it('do not go through a pier that stands', () => {
    const field = ring(new Field().site(), '1', '4');
    expect(from(field, '1')).toContain('4');
    field.set('P').pullsTo(post('P'), [A, B]);
    expect(from(field, '1')).not.toContain('4');
  });
  it('do not go through a house', () => {
    const at = (right: number, front: number) =>
      ({ by: 'plan', right: mm(right), front: mm(front) }) as const;
    const house = {
      name: 'House',
      kind: 'house',
      from: at(-3900, -4000),
      to: at(3900, -4000),
      noStakes: 'right',
    } as const;
    const open = ring(new Field(ringPlan('mm')).site(), '1', '5');
    const walled = ring(new Field(ringPlan('mm', { lines: [house] })).site(), '1', '5');
    expect(from(open, '1').sort()).toEqual(['5', 'A', 'B']);
    expect(from(walled, '1')).toEqual(['5']);
  });
  it('stay within the tape', () => {
    const { instruments } = ringPlan();
    const short = ringPlan('mm', { instruments: { ...instruments, tapeLength: mm(5000) } });
    expect(from(ring(new Field(short).site(), '1', '2'), '1')).toEqual(['2']);
  });
});

/** One pull for each of the seven stakes of the ring. */
const MOST = 7;

describe('among stakes of holes that nothing guards', () => {
  /** All stakes of the ring driven, and pulled to from A and B only. */
  function staked(): Field {
    const field = new Field().site();
    field.pull(A, B);
    for (const hole of ['1', '2', '3', '4', '5', '6', 'P']) {
      field.add({ kind: 'stand', thing: holeStake(hole), event: 'driven' });
      field.pullsTo(holeStake(hole), [A, B]);
    }
    return field;
  }

  it('the pulls named first guard two stakes each where they can: fewer are needed than there are stakes', () => {
    const field = staked();
    const open = () => assess(field.log).holes.filter(({ staked: { position } }) => !position.checked);
    let made = 0;
    for (; open().length > 0 && made < MOST; made++) {
      const { next } = assess(field.log);
      if (!next) break;
      field.pull(next.from.thing, next.to.thing);
    }
    expect(open()).toEqual([]);
    expect(made).toBeLessThan(MOST);
  });
});

describe('adviceFor', () => {
  it('a place that nothing guards: the pull after which an unseen misreading moves it least', () => {
    const field = ring(new Field().site(), '1', '2', '3');
    const view = viewWith(field);
    const advice = adviceFor(view, post('2'), view.sited.get('2')!.site, false)!;
    expect(['1', '3']).toContain(advice.pull.from.thing.kind === 'post' ? advice.pull.from.thing.hole : '');
    expect(advice.unseenShift).toBeLessThan(0.05);
  });
  it('what it promises of the doubt, the adjustment then keeps to within a third', () => {
    const field = ring(new Field().site(), '1', '2', '3', '4');
    const before = viewWith(field);
    const advice = adviceFor(before, post('2'), before.sited.get('2')!.site, true)!;
    field.add({
      kind: 'pull',
      from: advice.pull.from,
      to: advice.pull.to,
      reading: mm(advice.pull.expected * 1000),
      hold: { how: 'level' },
    });
    const after = viewWith(field).points.get('post:2')!.fix!;
    expect(after.ellipse.semiMajor).toBeLessThan(before.points.get('post:2')!.fix!.ellipse.semiMajor);
    expect(Math.abs(assess(field.log).holes[1]!.set.position.chance! - advice.chance)).toBeLessThan(0.05);
  });
  it('nothing helps where nothing can be pulled from', () => {
    const field = new Field().site();
    field.set('1');
    const view = viewWith(field);
    expect(adviceFor(view, post('1'), view.sited.get('1')!.site, false)).toBeNull();
  });
});

describe('an unsure post', () => {
  it('is settled by following what comes next, and then nothing more is asked', () => {
    const n = noise(5);
    const field = ring(new Field().site(), '1', '2', '3', '4', '5', '6').off(post('3'), 0.0095, 0);
    field.set('3').pullsTo(post('3'), [A, B]);
    let pulls = 0;
    for (let next = assess(field.log).next; next && pulls < 25; next = assess(field.log).next) {
      expect(next.text).toMatch(/^Pull .*: (it (brings|guards|helps)|then (post|pier) )/);
      const [from, to] = [next.from.thing, next.to.thing];
      const side = next.to.touch.at === 'face' ? next.to.touch.side : 'front';
      const fromSide = next.from.touch.at === 'face' ? next.from.touch.side : 'front';
      const reading = field.distanceOf(from, fromSide, to, side) + n(0.002);
      field.add({
        kind: 'pull',
        from: next.from,
        to: next.to,
        reading: mm(reading * 1000),
        hold: { how: 'level' },
      });
      pulls += 1;
    }
    // A dozen or so to guard the ring, and a few to settle post 3.
    expect(pulls).toBeLessThan(15);

    const { position } = assess(field.log).holes[2]!.set;
    expect(position).toMatchObject({ verdict: 'in', checked: true });
  });
});

describe('rows', () => {
  it('tell ways by the front, and nudge the same way', () => {
    const plan = ringPlan('ft-in-16', {
      shape: {
        kind: 'rows',
        columns: 3,
        rows: 2,
        measuredTo: 'centres',
        columnSpacing: mm(2400),
        rowSpacing: mm(2400),
      },
      each: {
        ...ringPlan().each,
        holds: { kind: 'post', nominal: '4×4', width: mm(89), depth: mm(89), turned: 'grid' },
      },
    });
    const field = new Field(plan).site().off(post('2'), 0, 0.019);
    field.pull(A, B);
    for (const hole of ['1', '2', '3']) field.set(hole).pullsTo(post(hole), [A, B]);
    field.pull(post('1'), post('2'), { side: 'left' });
    field.pull(post('3'), post('2'), { side: 'right' });
    const { position, nudge } = assess(field.log).holes[1]!.set;
    expect(position.why).toMatch(
      /^Post 2 is 3\/4″ off its mark, and 1\/2″ is allowed: it stands 3\/4″ too far toward the front\./,
    );
    expect(nudge?.words).toBe('Push the foot of post 2: 3/4″ toward the back.');
  });
});
