/**
 * The normal, beta and Student distributions and their quantiles, in plain arithmetic. Accuracy: about 1e-9, far below
 * what a forecast can claim.
 * Sources: standard series and continued fractions of handbooks of mathematical functions; the rational approximation of
 * the normal quantile as publicly described by Acklam (relative error below 1.2e-9, from memory, held by tests against
 * the series).
 */

/** Chance that a standard normal value is at most `x`. */
export function normalShare(x: number): number {
  if (x < -38) return 0;
  if (x > 38) return 1;
  if (Math.abs(x) > 6) {
    const tail = upperTail(Math.abs(x));
    return x > 0 ? 1 - tail : tail;
  }
  let term = x;
  let sum = x;
  for (let n = 3; Math.abs(term) > 1e-17 * Math.abs(sum) && n < 400; n += 2) {
    term *= (x * x) / n;
    sum += term;
  }
  return 0.5 + sum * Math.exp(-0.5 * x * x) * 0.3989422804014327;
}

/** Upper tail by its continued fraction, which converges quickly beyond 6. */
function upperTail(x: number): number {
  let fraction = x;
  for (let k = 60; k >= 1; k -= 1) fraction = x + k / fraction;
  return (Math.exp(-0.5 * x * x) * 0.3989422804014327) / fraction;
}

/** The standard normal value that the share `p` lies at or below; minus or plus infinity at 0 and 1. */
export function normalQuantile(p: number): number {
  if (p <= 0) return -Infinity;
  if (p >= 1) return Infinity;
  if (p > 0.97575) return -tailQuantile(1 - p);
  if (p < 0.02425) return tailQuantile(p);
  const q = p - 0.5;
  const r = q * q;
  const above =
    ((((-39.69683028665376 * r + 220.9460984245205) * r - 275.9285104469687) * r + 138.357751867269) * r -
      30.66479806614716) *
      r +
    2.506628277459239;
  const below =
    ((((-54.47609879822406 * r + 161.5858368580409) * r - 155.6989798598866) * r + 66.80131188771972) * r -
      13.28068155288572) *
      r +
    1;
  return (above * q) / below;
}

function tailQuantile(p: number): number {
  const q = Math.sqrt(-2 * Math.log(p));
  const above =
    ((((-0.007784894002430293 * q - 0.3223964580411365) * q - 2.400758277161838) * q - 2.549732539343734) * q +
      4.374664141464968) *
      q +
    2.938163982698783;
  const below =
    (((0.007784695709041462 * q + 0.3224671290700398) * q + 2.445134137142996) * q + 3.754408661907416) * q + 1;
  return above / below;
}

const gammaCoefficients = [
  676.5203681218851, -1259.1392167224028, 771.32342877765313, -176.61502916214059, 12.507343278686905,
  -0.13857109526572012, 9.9843695780195716e-6, 1.5056327351493116e-7,
];

/** Natural logarithm of the gamma function for `x` above 0 (Lanczos's series, g = 7). */
function logGamma(x: number): number {
  const y = x - 1;
  let sum = 0.99999999999980993;
  for (let index = 0; index < gammaCoefficients.length; index += 1) {
    sum += (gammaCoefficients[index] as number) / (y + index + 1);
  }
  const t = y + 7.5;
  return 0.9189385332046727 + (y + 0.5) * Math.log(t) - t + Math.log(sum);
}

/** Chance that a beta value with these shapes is at most `x`, for shapes above 0. */
export function betaShare(x: number, alpha: number, beta: number): number {
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  const front = Math.exp(
    logGamma(alpha + beta) - logGamma(alpha) - logGamma(beta) + alpha * Math.log(x) + beta * Math.log1p(-x),
  );
  // The fraction converges quickly on this side only.
  if (x < (alpha + 1) / (alpha + beta + 2)) return (front * betaFraction(x, alpha, beta)) / alpha;
  return 1 - (front * betaFraction(1 - x, beta, alpha)) / beta;
}

function betaFraction(x: number, a: number, b: number): number {
  const guard = (value: number): number => (Math.abs(value) < 1e-300 ? 1e-300 : value);
  let c = 1;
  let d = 1 / guard(1 - ((a + b) * x) / (a + 1));
  let result = d;
  for (let m = 1; m <= 500; m += 1) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    d = 1 / guard(1 + even * d);
    c = guard(1 + even / c);
    result *= d * c;
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / guard(1 + odd * d);
    c = guard(1 + odd / c);
    const change = d * c;
    result *= change;
    if (Math.abs(change - 1) < 1e-15) break;
  }
  return result;
}

/** The beta value that the share `p` lies at or below. */
export function betaQuantile(p: number, alpha: number, beta: number): number {
  return bisect(p, 0, 1, (x) => betaShare(x, alpha, beta));
}

/** Chance that a Student value with `degrees` of freedom is at most `x`. */
export function studentShare(x: number, degrees: number): number {
  const tail = betaShare(degrees / (degrees + x * x), degrees / 2, 0.5) / 2;
  return x > 0 ? 1 - tail : tail;
}

/** Density of Student's distribution with `degrees` of freedom at `x`. */
export function studentDensity(x: number, degrees: number): number {
  const front = logGamma((degrees + 1) / 2) - logGamma(degrees / 2) - 0.5 * Math.log(degrees * Math.PI);
  return Math.exp(front - ((degrees + 1) / 2) * Math.log1p((x * x) / degrees));
}

/** The Student value that the share `p` lies at or below; minus or plus infinity at 0 and 1. */
export function studentQuantile(p: number, degrees: number): number {
  if (p <= 0) return -Infinity;
  if (p >= 1) return Infinity;
  if (p === 0.5) return 0;
  let reach = 2;
  while (studentShare(-reach, degrees) > Math.min(p, 1 - p)) reach *= 2;
  return bisect(p, -reach, reach, (x) => studentShare(x, degrees));
}

/** Where a growing function reaches `wanted`; sixty halvings leave nothing of a double's width worth halving. */
function bisect(wanted: number, from: number, to: number, share: (x: number) => number): number {
  let lower = from;
  let upper = to;
  for (let round = 0; round < 60; round += 1) {
    const middle = (lower + upper) / 2;
    if (share(middle) < wanted) lower = middle;
    else upper = middle;
  }
  return (lower + upper) / 2;
}
