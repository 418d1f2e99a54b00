import { toPlan } from '../../src/geometry/rigid.ts';
import type { Body, Entry, PullEnd } from '../../src/job/entry-schema.ts';
import { roundedLength } from '../../src/job/length.ts';
import { PIER_LABEL } from '../../src/plan/index.ts';
import { checkPulls, type HolePulls, holePulls, setPulls, workOrder } from '../../src/stakeout/index.ts';
import type { Draws } from './draws.ts';
import type { StudyPlan } from './plans.ts';
import { Readings } from './readings.ts';
import type { Yard } from './yard.ts';

/**
 * The people with the tapes: they do the job in the tool's own order, and take every pull that it asks for.
 */
export class Crew extends Readings {
  readonly #job: StudyPlan;
  readonly #yard: Yard;

  /** @param exact true for readings without noise or rounding, as theory wants them */
  constructor(job: StudyPlan, yard: Yard, draws: Draws, exact = false) {
    super(job, yard, draws, exact);
    this.#job = job;
    this.#yard = yard;
  }

  /** Everything from the drawing to the last reading on the last post. */
  work(): readonly Entry[] {
    this.write({ kind: 'plan', plan: this.#job.plan });
    this.write(this.#job.site);
    this.#stakeOut(['A', 'B']);
    this.#set();
    return this.log;
  }

  /**
   * The staking, with a third stake C driven and tied to A and B; then a stake is knocked and nobody says so; then the
   * triangle is pulled once more, and from A and B to the hole's stake where the two tapes cross nearest to square.
   */
  stakeAndCheck(knock: () => void): readonly Entry[] {
    this.write({ kind: 'plan', plan: this.#job.plan });
    this.write(this.#job.site);
    this.write(this.#whereC());
    this.#stakeOut(['A', 'B', 'C']);
    this.#triangle();
    knock();
    this.pull(stake('A'), stake('B'));
    this.#triangle();
    const hole = this.#squarest();
    for (const from of ['A', 'B']) this.pull(stake(from), holeStake(hole));
    return this.log;
  }

  /** Where C is meant to stand, as the app asks of who drives a further stake. */
  #whereC(): Body {
    const { laid, plan } = this.#job;
    const thing = { kind: 'stake', label: 'C' } as const;
    const meant = toPlan(laid.motion, this.#yard.placeOf(thing));
    const at = { right: roundedLength(meant.x, plan.units), front: roundedLength(meant.y, plan.units) };
    return { kind: 'reference', thing, at };
  }

  #squarest(): string {
    const { laid, plan } = this.#job;
    const skew = ({ crossing }: HolePulls) => Math.abs(crossing.angle - Math.PI / 2);
    const pulls = holePulls(laid.holes, this.#yard.baseline, plan.instruments);
    return pulls.reduce((best, next) => (skew(next) < skew(best) ? next : best)).hole;
  }

  #triangle(): void {
    for (const from of ['A', 'B']) this.pull(stake(from), stake('C'));
  }

  #stakeOut(driven: readonly string[]): void {
    const { laid, plan } = this.#job;
    for (const label of driven) this.stands({ kind: 'stake', label }, 'driven');
    this.pull(stake('A'), stake('B'));
    for (const hole of workOrder(laid.holes.map(({ label, site }) => ({ label, at: site })))) {
      const to = holeStake(hole);
      this.stands(to.thing, 'driven');
      for (const label of ['A', 'B']) this.pull(stake(label), to);
    }
    for (const { from, to } of checkPulls(laid.holes, plan.instruments)) this.pull(from, to);
  }

  #set(): void {
    const { laid, plan } = this.#job;
    this.pull(stake('A'), stake('B'));
    for (let i = 0; i < 2; i++) this.rod({ point: 'benchmark' }, 0);
    const set = new Set<string>();
    const order = [...laid.holes].sort(
      (p, q) => Number(q.label === PIER_LABEL) - Number(p.label === PIER_LABEL),
    );
    for (const hole of order) {
      this.stands({ kind: 'post', hole: hole.label }, 'set');
      const { baseline } = this.#yard;
      const pulls = setPulls({ hole, holes: laid.holes, set, baseline, instruments: plan.instruments });
      for (const { from, to } of pulls) this.pull(from, to);
      set.add(hole.label);
      if (hole.section.kind === 'post') this.plumbAll(hole.label);
      for (let i = 0; i < 2; i++)
        this.rod({ point: 'top', hole: hole.label }, this.#yard.postOf(hole.label).top);
    }
  }
}

const stake = (label: string): PullEnd => ({ thing: { kind: 'stake', label }, touch: { at: 'nail' } });
const holeStake = (hole: string): PullEnd => ({ thing: { kind: 'hole-stake', hole }, touch: { at: 'nail' } });
