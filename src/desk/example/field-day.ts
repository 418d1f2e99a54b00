import type { Body, Entry } from '../../job/entry-schema.ts';

/** A minute and a half: about what it takes to pull a tape, say the reading and tap it in. */
const BETWEEN_MS = 90_000;

/** Collects the log, with ids and times that are the same on every run. */
export class FieldDay {
  readonly entries: Entry[] = [];
  #time: number;

  constructor(start: string) {
    this.#time = Date.parse(start);
  }

  log(body: Body): void {
    const seq = this.entries.length + 1;
    const id = `orchard-${String(seq).padStart(4, '0')}`;
    this.entries.push({ id, seq, at: new Date(this.#time).toISOString(), body });
    this.#time += BETWEEN_MS;
  }

  /** Goes on at another time, which must be later. */
  at(time: string): void {
    const next = Date.parse(time);
    if (!(next > this.#time)) throw new RangeError(`${time} is before the last entry`);
    this.#time = next;
  }
}
