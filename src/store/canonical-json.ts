/**
 * JSON with keys in order and no spaces, as RFC 8785 (JSON Canonicalization Scheme) has it: the same data gives the
 * same text, however a file was laid out. `undefined` members are left out, as JSON does.
 */
export function canonicalJson(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(canonicalJson).join(',')}]`;
  if (typeof value !== 'object' || value === null) return JSON.stringify(value);
  const members = Object.entries(value)
    .filter(([, member]) => member !== undefined)
    .sort(([p], [q]) => (p < q ? -1 : 1))
    .map(([key, member]) => `${JSON.stringify(key)}:${canonicalJson(member)}`);
  return `{${members.join(',')}}`;
}
