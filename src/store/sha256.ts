/**
 * SHA-256 (FIPS 180-4, section 6.2) of a text's UTF-8 bytes, in hexadecimal.
 *
 * Written out because `crypto.subtle` is missing on a page served without TLS, such as one tried out on a home network, and
 * a backup must be possible there too. It guards against damage, not against forgers.
 */
export function sha256(text: string): string {
  const words = padded(new TextEncoder().encode(text));
  const hash = new Uint32Array(INITIAL);
  const schedule = new Uint32Array(64);
  for (let block = 0; block < words.length; block += 16) {
    extend(schedule, words.subarray(block, block + 16));
    compress(hash, schedule);
  }
  return [...hash].map((word) => word.toString(16).padStart(8, '0')).join('');
}

/** The message as big-endian words: a one bit, zeros, and the length in bits (section 5.1.1). */
function padded(bytes: Uint8Array): Uint32Array {
  const words = new Uint32Array((((bytes.length + 8) >> 6) + 1) * 16);
  for (let i = 0; i < bytes.length; i++) words[i >> 2]! |= bytes[i]! << (24 - 8 * (i & 3));
  words[bytes.length >> 2]! |= 0x80 << (24 - 8 * (bytes.length & 3));
  words[words.length - 2] = Math.floor(bytes.length / 2 ** 29);
  words[words.length - 1] = bytes.length << 3;
  return words;
}

const rotate = (x: number, by: number): number => (x >>> by) | (x << (32 - by));

/** Message schedule W (step 1). */
function extend(w: Uint32Array, block: Uint32Array): void {
  w.set(block);
  for (let t = 16; t < 64; t++) {
    const p = w[t - 15]!;
    const q = w[t - 2]!;
    const s0 = rotate(p, 7) ^ rotate(p, 18) ^ (p >>> 3);
    const s1 = rotate(q, 17) ^ rotate(q, 19) ^ (q >>> 10);
    w[t] = w[t - 16]! + s0 + w[t - 7]! + s1;
  }
}

/** The 64 rounds on the working variables a to h (steps 2 to 4). */
function compress(hash: Uint32Array, w: Uint32Array): void {
  let [a, b, c, d, e, f, g, h] = hash as unknown as Eight;
  for (let t = 0; t < 64; t++) {
    const s1 = rotate(e, 6) ^ rotate(e, 11) ^ rotate(e, 25);
    const t1 = (h + s1 + ((e & f) ^ (~e & g)) + ROUND[t]! + w[t]!) | 0;
    const s0 = rotate(a, 2) ^ rotate(a, 13) ^ rotate(a, 22);
    const t2 = (s0 + ((a & b) ^ (a & c) ^ (b & c))) | 0;
    [h, g, f, e, d, c, b, a] = [g, f, e, (d + t1) | 0, c, b, a, (t1 + t2) | 0];
  }
  [a, b, c, d, e, f, g, h].forEach((x, i) => {
    hash[i]! += x;
  });
}

type Eight = [number, number, number, number, number, number, number, number];

/** First 32 bits of the fractional part of `x`, a root of a prime: the standard's constants (4.2.2 and 5.3.3). */
const fractionBits = (x: number): number => Math.floor((x - Math.floor(x)) * 2 ** 32);

const PRIMES = [...Array(312).keys()].filter(
  (n) => n > 1 && ![...Array(n).keys()].some((d) => d > 1 && n % d === 0),
);
const INITIAL = PRIMES.slice(0, 8).map((prime) => fractionBits(Math.sqrt(prime)));
const ROUND = PRIMES.map((prime) => fractionBits(Math.cbrt(prime)));
