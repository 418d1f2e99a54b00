/**
 * Chance that a chi-square variable exceeds `value`: the regularised upper incomplete gamma function Q(ν/2, χ²/2)
 * (Abramowitz & Stegun, "Handbook of Mathematical Functions", 1964, 26.4.19). Right to about 1e-12.
 *
 * @param degreesOfFreedom whole, 0 or more; with 0 nothing was tested and the chance is 1
 */
export function chiSquareChance(value: number, degreesOfFreedom: number): number {
  if (degreesOfFreedom <= 0 || !(value > 0)) return 1;
  const a = degreesOfFreedom / 2;
  const x = value / 2;
  if (x === Number.POSITIVE_INFINITY) return 0;
  const front = Math.exp(a * Math.log(x) - x - logGamma(a));
  return x < a + 1 ? Math.max(1 - front * series(a, x), 0) : front * fraction(a, x);
}

/** Terms shrink by at least x/(a + n); both sums need about 10 √a terms at worst, so this is for far beyond any job. */
const MOST_TERMS = 100_000;

/** Γ(a) x^−a e^x P(a, x) = Σ xⁿ / (a(a+1)…(a+n)) (6.5.29). */
function series(a: number, x: number): number {
  let term = 1 / a;
  let sum = term;
  for (let n = 1; n < MOST_TERMS && term > sum * Number.EPSILON; n++) {
    term *= x / (a + n);
    sum += term;
  }
  return sum;
}

/** Γ(a) x^−a e^x Q(a, x) as a continued fraction (6.5.31 in its even form), by Lentz's method. */
function fraction(a: number, x: number): number {
  let b = x + 1 - a;
  let d = 1 / b;
  let c = Number.POSITIVE_INFINITY;
  let product = d;
  for (let n = 1; n < MOST_TERMS; n++) {
    const numerator = -n * (n - a);
    b += 2;
    d = 1 / (b + numerator * d);
    c = b + numerator / c;
    const change = c * d;
    product *= change;
    if (Math.abs(change - 1) < Number.EPSILON) break;
  }
  return product;
}

/** Above this the first left-out term of the asymptotic series is below 1e-15. */
const ASYMPTOTIC_FROM = 12;

/** ln Γ(x) for x > 0: Stirling's series (6.1.41) after climbing by Γ(x + 1) = x Γ(x). */
function logGamma(x: number): number {
  let climbed = 1;
  let z = x;
  for (; z < ASYMPTOTIC_FROM; z++) climbed *= z;
  const r = 1 / (z * z);
  const tail = (1 / 12 - r * (1 / 360 - r * (1 / 1260 - r * (1 / 1680 - r * (1 / 1188))))) / z;
  return (z - 0.5) * Math.log(z) - z + Math.log(2 * Math.PI) / 2 + tail - Math.log(climbed);
}
