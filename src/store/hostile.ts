/** A job's file is nine deep: log, entry, body, plan, shape, points, point, length. */
const DEEPEST = 16;

/** Objects, lists and commas; the largest log that is read has some 700,000, and the memory for more is not spent. */
const MOST_PARTS = 1_000_000;

/**
 * One pass over a JSON text, before it is parsed: is it nested too deep, made of too many parts, or does it end inside
 * a string or a bracket? A text that is no JSON at all may pass.
 */
export function scanText(text: string): 'deep' | 'many' | 'cut-off' | null {
  let depth = 0;
  let parts = 0;
  let inString = false;
  for (let i = 0; i < text.length; i++) {
    const c = text[i];
    if (inString) {
      if (c === '\\') i++;
      else if (c === '"') inString = false;
    } else if (c === '"') inString = true;
    else if (c === ',') parts++;
    else if (c === '{' || c === '[') {
      parts++;
      if (++depth > DEEPEST) return 'deep';
    } else if (c === '}' || c === ']') depth--;
    if (parts > MOST_PARTS) return 'many';
  }
  return inString || depth > 0 ? 'cut-off' : null;
}

const UNSAFE_KEYS = new Set(['__proto__', 'prototype', 'constructor']);

/** A key, at any depth, that could reach an object's prototype in careless hands; null when there is none. */
export function unsafeKey(value: unknown): string | null {
  if (typeof value !== 'object' || value === null) return null;
  for (const [key, member] of Object.entries(value)) {
    const unsafe = UNSAFE_KEYS.has(key) ? key : unsafeKey(member);
    if (unsafe) return unsafe;
  }
  return null;
}
