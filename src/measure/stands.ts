import type { Thing } from '../job/entry-schema.ts';
import { thingKey } from '../job/log.ts';

/** One thing during one stand. */
export interface Stand {
  readonly thing: Thing;
  readonly key: string;
  /** Place in `Stands.all`. */
  readonly index: number;
  /** 1 for the first. */
  readonly stand: number;
}

/**
 * Follows every thing through the log, read in order. The first mention of a thing opens its first stand, be it a reading
 * or a `stand` entry; each later `stand` entry opens the next.
 */
export class Stands {
  readonly all: Stand[] = [];
  readonly #current = new Map<string, Stand>();

  /** The stand that a thing is in now. */
  of(thing: Thing): Stand {
    return this.#current.get(thingKey(thing)) ?? this.open(thing);
  }

  isCurrent(stand: Stand): boolean {
    return this.#current.get(stand.key) === stand;
  }

  /** Opens the next stand of a thing: the first one, unless a reading has already opened that. */
  open(thing: Thing): Stand {
    const key = thingKey(thing);
    const index = this.all.length;
    const stand = { thing, key, index, stand: (this.#current.get(key)?.stand ?? 0) + 1 };
    this.#current.set(key, stand);
    this.all.push(stand);
    return stand;
  }
}
