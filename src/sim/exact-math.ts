/**
 * Elementary functions from + - * / and square root alone. Engines may round their own sine or exponential as they
 * please; these give the same bits everywhere.
 *
 * Sine, cosine, arc tangent, exponential, logarithm and the complementary error function follow FDLIBM 5.3
 * (Sun Microsystems, 1993); the normal quantile is Wichura's PPND16 (Algorithm AS 241, Applied Statistics 37, 1988).
 */

import {
  ERFC_FAR_BOTTOM,
  ERFC_FAR_TOP,
  ERFC_MIDDLE_BOTTOM,
  ERFC_MIDDLE_TOP,
  ERFC_NEAR_ONE_BOTTOM,
  ERFC_NEAR_ONE_TOP,
  ERFC_SMALL_BOTTOM,
  ERFC_SMALL_TOP,
  QUANTILE_CENTRE_BOTTOM,
  QUANTILE_CENTRE_TOP,
  QUANTILE_FAR_BOTTOM,
  QUANTILE_FAR_TOP,
  QUANTILE_TAIL_BOTTOM,
  QUANTILE_TAIL_TOP,
} from './normal-coefficients.js'

export const PI = Math.PI

const LN2_HIGH = 0.6931471803691238
const LN2_LOW = 1.9082149292705877e-10
const SQUARE_ROOT_OF_HALF = Math.SQRT1_2
const TWO_PI_SQUARE_ROOT = 2.5066282746310002

/** sine of a reduced angle x + tail, |x| <= π/4 */
function sineKernel(x: number, tail: number): number {
  const z = x * x
  const v = z * x
  const r =
    0.00833333333332249 +
    z * (-0.0001984126982985795 + z * (2.7557313707070068e-6 + z * (-2.5050760253406863e-8 + z * 1.58969099521155e-10)))
  return x - (z * (0.5 * tail - v * r) - tail + v * 0.16666666666666632)
}

/** cosine of a reduced angle x + tail, |x| <= π/4 */
function cosineKernel(x: number, tail: number): number {
  const z = x * x
  const r =
    z *
    (0.0416666666666666 +
      z *
        (-0.001388888888887411 +
          z *
            (2.480158728947673e-5 +
              z * (-2.7557314351390663e-7 + z * (2.087572321298175e-9 + z * -1.1359647557788195e-11)))))
  const half = 0.5 * z
  const w = 1 - half
  return w + (1 - w - half + (z * r - x * tail))
}

/** sine of x + quarterTurns·π/2, with π/2 taken off in three pieces so that nothing cancels */
function sineTurned(x: number, quarterTurns: number): number {
  const n = Math.round(x * 0.6366197723675814)
  const t = x - n * 1.5707963267341256
  const w1 = n * 6.077100506303966e-11
  const r = t - w1
  const w = n * 2.0222662487959506e-21 - (t - r - w1)
  const head = r - w
  const tail = r - head - w
  const quadrant = (n + quarterTurns) % 4
  switch (quadrant < 0 ? quadrant + 4 : quadrant) {
    case 0:
      return sineKernel(head, tail)
    case 1:
      return cosineKernel(head, tail)
    case 2:
      return -sineKernel(head, tail)
    default:
      return -cosineKernel(head, tail)
  }
}

/** Sine of an angle in radians; full accuracy for |x| up to 10⁵, NaN for an infinite angle. */
export function sine(radians: number): number {
  return sineTurned(radians, 0)
}

/** Cosine of an angle in radians; full accuracy for |x| up to 10⁵, NaN for an infinite angle. */
export function cosine(radians: number): number {
  return sineTurned(radians, 1)
}

/** Tangent of an angle in radians, as sine over cosine (error below 2 units in the last place). */
export function tangent(radians: number): number {
  return sineTurned(radians, 0) / sineTurned(radians, 1)
}

function arcTangentSeries(x: number, high: number, low: number): number {
  const z = x * x
  const w = z * z
  const odd =
    z *
    (0.3333333333333293 +
      w *
        (0.14285714272503466 +
          w *
            (0.09090887133436507 + w * (0.06661073137387531 + w * (0.049768779946159324 + w * 0.016285820115365782)))))
  const even =
    w *
    (-0.19999999999876483 +
      w * (-0.11111110405462356 + w * (-0.0769187620504483 + w * (-0.058335701337905735 + w * -0.036531572744216916))))
  return high - (x * (odd + even) - low - x)
}

/** Arc tangent in radians, -π/2 to π/2. */
export function arcTangent(x: number): number {
  const a = Math.abs(x)
  let angle: number
  if (a < 0.4375) return arcTangentSeries(x, 0, 0)
  if (a < 0.6875) angle = arcTangentSeries((2 * a - 1) / (2 + a), 0.4636476090008061, 2.2698777452961687e-17)
  else if (a < 1.1875) angle = arcTangentSeries((a - 1) / (a + 1), 0.7853981633974483, 3.061616997868383e-17)
  else if (a < 2.4375) angle = arcTangentSeries((a - 1.5) / (1 + 1.5 * a), 0.982793723247329, 1.3903311031230998e-17)
  else angle = arcTangentSeries(-1 / a, 1.5707963267948966, 6.123233995736766e-17)
  return x < 0 ? -angle : angle
}

/** Angle of the point (x, y) from the x axis, radians in (-π, π]; 0 at the origin. */
export function arcTangent2(y: number, x: number): number {
  if (x === 0) return y === 0 ? 0 * y : y > 0 ? PI / 2 : -PI / 2
  if (Math.abs(y) > Math.abs(x)) {
    const fromVertical = arcTangent(x / y)
    return (y > 0 ? PI / 2 : -PI / 2) - fromVertical
  }
  const angle = arcTangent(y / x)
  return x > 0 ? angle : y < 0 ? angle - PI : angle + PI
}

/** x · 2^exponent by exact doublings and halvings */
function scaleByPowerOfTwo(x: number, exponent: number): number {
  let scaled = x
  let left = exponent
  for (; left >= 32; left -= 32) scaled *= 4294967296
  for (; left <= -32; left += 32) scaled /= 4294967296
  for (; left > 0; left -= 1) scaled *= 2
  for (; left < 0; left += 1) scaled /= 2
  return scaled
}

/** e to the power x; Infinity above 709.78, 0 below -745.13. */
export function exponential(x: number): number {
  if (x > 709.782712893384) return Infinity
  if (x < -745.1332191019411) return 0
  const k = Math.round(x * Math.LOG2E)
  const high = x - k * LN2_HIGH
  const low = k * LN2_LOW
  const r = high - low
  const t = r * r
  const c =
    r -
    t *
      (0.16666666666666602 +
        t *
          (-0.0027777777777015593 +
            t * (6.613756321437934e-5 + t * (-1.6533902205465252e-6 + t * 4.1381367970572385e-8))))
  return scaleByPowerOfTwo(1 - (low - (r * c) / (2 - c) - high), k)
}

/** Natural logarithm; NaN below 0, -Infinity at 0. */
export function naturalLogarithm(x: number): number {
  if (!(x > 0)) return x === 0 ? -Infinity : Number.NaN
  if (x === Infinity) return Infinity
  let mantissa = x
  let k = 0
  for (; mantissa >= 4294967296; k += 32) mantissa /= 4294967296
  for (; mantissa < 2.3283064365386963e-10; k -= 32) mantissa *= 4294967296
  for (; mantissa >= 2 * SQUARE_ROOT_OF_HALF; k += 1) mantissa /= 2
  for (; mantissa < SQUARE_ROOT_OF_HALF; k -= 1) mantissa *= 2
  const f = mantissa - 1
  const s = f / (2 + f)
  const z = s * s
  const w = z * z
  const even = w * (0.3999999999940942 + w * (0.22222198432149784 + w * 0.15313837699209373))
  const odd = z * (0.6666666666666735 + w * (0.2857142874366239 + w * (0.1818357216161805 + w * 0.14798198605116586)))
  const half = 0.5 * f * f
  return k * LN2_HIGH - (half - (s * (half + (even + odd)) + k * LN2_LOW) - f)
}

function integerPower(base: number, exponent: number): number {
  let result = 1
  let square = base
  for (let left = exponent; left > 0; left = Math.floor(left / 2)) {
    if (left % 2 === 1) result *= square
    square *= square
  }
  return result
}

/**
 * base to the power exponent: whole exponents by repeated multiplication (exact wherever the product is), the remaining
 * fraction by exponential and logarithm. NaN for a negative base with a fractional exponent.
 */
export function power(base: number, exponent: number): number {
  const whole = Math.round(exponent)
  if (Math.abs(whole) > 4096) return exponential(exponent * naturalLogarithm(base))
  const magnitude = integerPower(base, Math.abs(whole))
  const fraction = exponent - whole
  if (fraction === 0) return whole < 0 ? 1 / magnitude : magnitude
  if (base === 0) return exponent > 0 ? 0 : Infinity
  const remainder = exponential(fraction * naturalLogarithm(base))
  return whole < 0 ? remainder / magnitude : remainder * magnitude
}

/** Length of the vector (a, b), safe from overflow and underflow. */
export function hypotenuse(a: number, b: number): number {
  const larger = Math.max(Math.abs(a), Math.abs(b))
  if (larger > 1e-140 && larger < 1e140) return Math.sqrt(a * a + b * b)
  if (larger === 0 || larger === Infinity) return larger
  const p = a / larger
  const q = b / larger
  return larger * Math.sqrt(p * p + q * q)
}

/** Density of the standard normal distribution at z. */
export function normalDensity(z: number): number {
  return exponential(-0.5 * z * z) / TWO_PI_SQUARE_ROOT
}

/** c₀ + c₁x + c₂x² + ... by Horner's rule */
function polynomial(coefficients: readonly number[], x: number): number {
  let value = coefficients[coefficients.length - 1]
  for (let i = coefficients.length - 2; i >= 0; i -= 1) value = coefficients[i] + x * value
  return value
}

/** erfc(x) for x in [1.25, 28); x is split so that its square is exact in the exponential */
function erfcTail(x: number): number {
  const s = 1 / (x * x)
  const ratio =
    x < 2.857142857142857
      ? polynomial(ERFC_MIDDLE_TOP, s) / polynomial(ERFC_MIDDLE_BOTTOM, s)
      : polynomial(ERFC_FAR_TOP, s) / polynomial(ERFC_FAR_BOTTOM, s)
  const short = Math.fround(x)
  return (exponential(-short * short - 0.5625) * exponential((short - x) * (short + x) + ratio)) / x
}

/** complementary error function for x >= 0 */
function complementaryError(x: number): number {
  if (x < 0.84375) {
    const z = x * x
    const r = polynomial(ERFC_SMALL_TOP, z)
    const s = polynomial(ERFC_SMALL_BOTTOM, z)
    return x < 0.25 ? 1 - (x + (x * r) / s) : 0.5 - (x - 0.5 + (x * r) / s)
  }
  if (x < 1.25) {
    const s = x - 1
    const p = polynomial(ERFC_NEAR_ONE_TOP, s)
    const q = polynomial(ERFC_NEAR_ONE_BOTTOM, s)
    return 1 - 0.8450629115104675 - p / q
  }
  return x >= 28 ? 0 : erfcTail(x)
}

/** Beyond this the upper tail is less than half of the last digit of 1. */
const SURE = 8.4

/** Standard normal distribution function: the chance of a value below z. Relative error below 1e-12 in the lower tail too. */
export function normalDistribution(z: number): number {
  if (z > SURE) return 1
  const upper = 0.5 * complementaryError(Math.abs(z) * SQUARE_ROOT_OF_HALF)
  return z < 0 ? upper : 1 - upper
}

/** Standard normal quantile (Wichura, AS 241, PPND16, about 1 part in 10¹⁶); ±Infinity at 0 and 1, NaN outside. */
export function normalQuantile(p: number): number {
  const q = p - 0.5
  if (Math.abs(q) <= 0.425) {
    const r = 0.180625 - q * q
    return (q * polynomial(QUANTILE_CENTRE_TOP, r)) / polynomial(QUANTILE_CENTRE_BOTTOM, r)
  }
  const tail = q < 0 ? p : 1 - p
  if (!(tail > 0)) return tail === 0 ? (q < 0 ? -Infinity : Infinity) : Number.NaN
  const depth = Math.sqrt(-naturalLogarithm(tail))
  let z: number
  if (depth <= 5) {
    const r = depth - 1.6
    z = polynomial(QUANTILE_TAIL_TOP, r) / polynomial(QUANTILE_TAIL_BOTTOM, r)
  } else {
    const r = depth - 5
    z = polynomial(QUANTILE_FAR_TOP, r) / polynomial(QUANTILE_FAR_BOTTOM, r)
  }
  return q < 0 ? -z : z
}
