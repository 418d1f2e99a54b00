import type { Entry, Thing } from '../job/entry-schema.ts';
import { thingKey } from '../job/log.ts';

/** One thing during one stand. */
export interface Stand {
  readonly thing: Thing;
  readonly key: string;
  /** 1 for the first. */
  readonly stand: number;
}

/**
 * Follows every thing through the log. Entries must be given in order. The first mention of a thing opens its first
 * stand, be it a reading or a `stand` entry; each later `stand` entry opens the next.
 */
export class Stands {
  readonly all: Stand[] = [];
  readonly #current = new Map<string, Stand>();

  /** Takes notice of an entry; call before asking for the stands that its readings belong to. */
  read({ body }: Entry): void {
    if (body.kind === 'stand') this.#open(body.thing);
    else if (body.kind === 'pull') {
      this.of(body.from.thing);
      this.of(body.to.thing);
    } else if (body.kind === 'plumb') this.of({ kind: 'post', hole: body.hole });
  }

  /** The stand that a thing is in now. */
  of(thing: Thing): Stand {
    return this.#current.get(thingKey(thing)) ?? this.#open(thing);
  }

  isCurrent(stand: Stand): boolean {
    return this.#current.get(stand.key) === stand;
  }

  #open(thing: Thing): Stand {
    const key = thingKey(thing);
    const stand = { thing, key, stand: (this.#current.get(key)?.stand ?? 0) + 1 };
    this.#current.set(key, stand);
    this.all.push(stand);
    return stand;
  }
}
