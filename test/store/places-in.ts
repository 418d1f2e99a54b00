export type Holder = Record<string, unknown>;

/** Every place in a JSON value where another value could stand. */
export function placesIn(value: unknown): [holder: Holder, key: string][] {
  if (typeof value !== 'object' || value === null) return [];
  const holder = value as Holder;
  return Object.keys(holder).flatMap((key) => [[holder, key] as [Holder, string], ...placesIn(holder[key])]);
}
