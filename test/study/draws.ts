import { scale, unit, type Vec } from '../../src/geometry/point.ts';
import { normal, random } from '../measure/build.ts';

/** Seeded chance of every kind that the study needs: the same seed gives the same jobs on every machine. */
export class Draws {
  readonly #uniform: () => number;
  readonly #normal: () => number;

  constructor(seed: number) {
    this.#uniform = random(seed);
    this.#normal = normal(this.#uniform);
  }

  between(least: number, most: number): number {
    return least + (most - least) * this.#uniform();
  }

  /** Every factor as likely as any other: as often from 1 to 2 as from 2 to 4. */
  logBetween(least: number, most: number): number {
    return Math.exp(this.between(Math.log(least), Math.log(most)));
  }

  /** A whole number, both ends included. */
  whole(least: number, most: number): number {
    return least + Math.floor((most - least + 1) * this.#uniform());
  }

  happens(chance: number): boolean {
    return this.#uniform() < chance;
  }

  pick<T>(from: readonly T[]): T {
    return from[Math.floor(this.#uniform() * from.length)]!;
  }

  normal(sigma: number): number {
    return sigma * this.#normal();
  }

  /** Independent in both directions. */
  spread(sigma: number): Vec {
    return { x: this.normal(sigma), y: this.normal(sigma) };
  }

  /** Every place of the disc as likely as any other. */
  withinDisc(radius: number): Vec {
    return scale(unit(this.between(0, 2 * Math.PI)), radius * Math.sqrt(this.#uniform()));
  }
}
