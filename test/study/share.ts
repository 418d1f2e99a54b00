/** Half-width of a 95 % interval, in standard errors. */
const HALF_WIDTH = 1.96;

/**
 * So many of so many, counted job by job. Things of one job err together, so the standard error is that of a ratio of
 * sums over jobs (Cochran, "Sampling Techniques", 1977, 2.11), not the binomial one.
 */
export class Share {
  hits = 0;
  of = 0;
  #hitsSquared = 0;
  #ofSquared = 0;
  #product = 0;

  addJob(hits: number, of: number): void {
    this.hits += hits;
    this.of += of;
    this.#hitsSquared += hits * hits;
    this.#ofSquared += of * of;
    this.#product += hits * of;
  }

  /** NaN when nothing was counted. */
  get value(): number {
    return this.hits / this.of;
  }

  get standardError(): number {
    const p = this.value;
    return (
      Math.sqrt(Math.max(this.#hitsSquared - 2 * p * this.#product + p * p * this.#ofSquared, 0)) / this.of
    );
  }

  /** Half of the interval that holds the true share with 95 %. */
  get halfWidth(): number {
    return HALF_WIDTH * this.standardError;
  }
}

/** Mean of what was claimed of each thing, beside a `Share` of what came out. */
export class Mean {
  #sum = 0;
  #of = 0;

  add(value: number, times = 1): void {
    this.#sum += value;
    this.#of += times;
  }

  get value(): number {
    return this.#sum / this.#of;
  }
}
