import fc from 'fast-check'
import { errorFunction } from 'simple-statistics'
import { describe, expect, it } from 'vitest'
import {
  arcTangent,
  arcTangent2,
  cosine,
  exponential,
  hypotenuse,
  naturalLogarithm,
  normalDensity,
  normalDistribution,
  normalQuantile,
  PI,
  power,
  sine,
  tangent,
} from '../../src/sim/exact-math.js'

type Function1 = (x: number) => number

const relative = (found: number, expected: number): number =>
  Object.is(found, expected) || found === expected ? 0 : Math.abs(found - expected) / Math.abs(expected)

/** Largest relative difference between two functions over an even grid and over random points, ends included. */
function worst(ours: Function1, theirs: Function1, low: number, high: number, points = 60_000): number {
  let largest = 0
  const check = (x: number) => {
    const difference = relative(ours(x), theirs(x))
    // a NaN must not slip through a comparison
    if (!(difference <= largest)) largest = Number.isNaN(difference) ? Infinity : difference
  }
  for (let i = 0; i <= points; i += 1) check(low + ((high - low) * i) / points)
  fc.assert(
    fc.property(fc.double({ min: low, max: high, noNaN: true }), (x) => {
      check(x)
    }),
    { numRuns: 3000, seed: 20 },
  )
  return largest
}

// The judge here is the engine's own Math, an implementation that shares no code with ours. Both sides may be off by
// up to about one unit in the last place (2.2e-16), so agreement to a few of them is as much as can be asked.
describe('elementary functions against the engine', () => {
  it.each([
    ['sine', sine, Math.sin, -1000, 1000, 4.5e-16],
    ['sine, small angles', sine, Math.sin, -1, 1, 4.5e-16],
    ['cosine', cosine, Math.cos, -1000, 1000, 4.5e-16],
    ['tangent', tangent, Math.tan, -1000, 1000, 9e-16],
    ['arcTangent', arcTangent, Math.atan, -20, 20, 4.5e-16],
    ['arcTangent, far out', arcTangent, Math.atan, -1e9, 1e9, 4.5e-16],
    ['exponential', exponential, Math.exp, -700, 700, 4.5e-16],
    ['exponential, near 0', exponential, Math.exp, -1, 1, 4.5e-16],
    ['naturalLogarithm', naturalLogarithm, Math.log, 1e-9, 20, 4.5e-16],
    ['naturalLogarithm, near 1', naturalLogarithm, Math.log, 0.99, 1.01, 4.5e-16],
    ['naturalLogarithm, large', naturalLogarithm, Math.log, 1, 1e300, 4.5e-16],
  ] as const)('%s', (_name, ours, theirs, low, high, allowed) => {
    expect(worst(ours, theirs, low, high)).toBeLessThanOrEqual(allowed)
  })

  it('takes logarithms over the whole range of magnitudes, subnormals too', () => {
    for (let exponent = -323; exponent <= 308; exponent += 1) {
      const x = Number(`1e${exponent}`)
      expect(relative(naturalLogarithm(x), Math.log(x))).toBeLessThanOrEqual(4.5e-16)
    }
  })

  it('keeps sine and cosine exact near multiples of a quarter turn', () => {
    for (let n = -636; n <= 636; n += 1) {
      const x = (n * Math.PI) / 2
      expect(relative(sine(x), Math.sin(x))).toBeLessThanOrEqual(4.5e-16)
      expect(relative(cosine(x), Math.cos(x))).toBeLessThanOrEqual(4.5e-16)
    }
  })

  it('places points round the circle as the engine does, and in the same quadrant on the axes', () => {
    for (const [y, x] of [
      [0, 1],
      [0, -1],
      [1, 0],
      [-1, 0],
      [0, 0],
      [1, 1],
      [-1, -1],
      [3, -2],
    ] as const)
      expect(relative(arcTangent2(y, x), Math.atan2(y, x))).toBeLessThanOrEqual(2.3e-16)
    const coordinate = fc.double({ min: -1e6, max: 1e6, noNaN: true })
    fc.assert(
      fc.property(coordinate, coordinate, (y, x) => {
        if (Math.abs(y) < 1e-200 || Math.abs(x) < 1e-200) return
        expect(relative(arcTangent2(y, x), Math.atan2(y, x))).toBeLessThanOrEqual(5e-16)
      }),
      { numRuns: 3000, seed: 21 },
    )
  })

  it('raises to powers', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1e-3, max: 1e3, noNaN: true }),
        fc.double({ min: -12, max: 12, noNaN: true }),
        (base, exponent) => {
          // up to 12 factors are multiplied and one exponential taken: a few units in the last place
          expect(relative(power(base, exponent), base ** exponent)).toBeLessThanOrEqual(4e-15)
        },
      ),
      { numRuns: 5000, seed: 22 },
    )
  })

  it('raises whole numbers to whole powers exactly', () => {
    for (let base = -9; base <= 9; base += 1)
      for (let exponent = 0; exponent <= 16; exponent += 1) {
        const exact = Number(BigInt(base) ** BigInt(exponent))
        if (Number.isSafeInteger(exact)) expect(power(base, exponent)).toBe(exact)
      }
    expect(power(2, -10)).toBe(2 ** -10)
    expect(power(2, 1000)).toBe(2 ** 1000)
    expect(power(0, 0)).toBe(1)
    expect(power(0, 2.5)).toBe(0)
    expect(power(-2, 0.5)).toBeNaN()
  })

  it('measures hypotenuses, huge and tiny ones too', () => {
    expect(hypotenuse(3, 4)).toBe(5)
    expect(hypotenuse(-5, 12)).toBe(13)
    expect(relative(hypotenuse(3e200, 4e200), 5e200)).toBeLessThanOrEqual(3e-16)
    expect(relative(hypotenuse(3e-200, 4e-200), 5e-200)).toBeLessThanOrEqual(3e-16)
    expect(hypotenuse(0, 0)).toBe(0)
    const side = fc.double({ min: -1e3, max: 1e3, noNaN: true })
    fc.assert(
      fc.property(side, side, (a, b) => {
        expect(relative(hypotenuse(a, b), Math.hypot(a, b))).toBeLessThanOrEqual(7e-16)
      }),
      { numRuns: 3000, seed: 23 },
    )
  })

  it('says what happens at the edges', () => {
    expect(exponential(710)).toBe(Infinity)
    expect(exponential(-746)).toBe(0)
    expect(naturalLogarithm(0)).toBe(-Infinity)
    expect(naturalLogarithm(-1)).toBeNaN()
    expect(naturalLogarithm(Infinity)).toBe(Infinity)
    expect(arcTangent(Infinity)).toBe(PI / 2)
    expect(arcTangent(-Infinity)).toBe(-PI / 2)
    for (const f of [
      sine,
      cosine,
      tangent,
      arcTangent,
      exponential,
      naturalLogarithm,
      normalDistribution,
      normalQuantile,
    ])
      expect(f(Number.NaN)).toBeNaN()
    expect(normalQuantile(0)).toBe(-Infinity)
    expect(normalQuantile(1)).toBe(Infinity)
    expect(normalQuantile(1.5)).toBeNaN()
  })
})

describe('normal distribution', () => {
  it('gives the quantiles printed with Algorithm AS 241', () => {
    // Wichura, Applied Statistics 37 (1988), test values of PPND16
    expect(relative(normalQuantile(0.25), -0.6744897501960817)).toBeLessThan(1e-15)
    expect(relative(normalQuantile(0.001), -3.090232306167814)).toBeLessThan(1e-15)
    expect(relative(normalQuantile(1e-20), Number('-9.262340089798408'))).toBeLessThan(1e-15)
  })

  it('gives the tabled probabilities', () => {
    // Abramowitz & Stegun, Table 26.1, P(x) to 15 places; from memory
    expect(Math.abs(normalDistribution(1) - 0.841344746068543)).toBeLessThan(1e-15)
    expect(Math.abs(normalDistribution(2) - 0.977249868051821)).toBeLessThan(1e-15)
    expect(Math.abs(normalDistribution(3) - 0.99865010196837)).toBeLessThan(1e-15)
    expect(normalDistribution(0)).toBe(0.5)
  })

  it('is undone by the quantile, a separate fit, over the whole lower tail', () => {
    for (let z = -37; z <= 4; z += 0.001) {
      // the quantile's error is magnified by z² in the tail, and by the rounding of 1 - p above 0
      const allowed = z < 0 ? 2e-15 * (1 + z * z) : 4e-16 / (normalDensity(z) + 1e-300)
      expect(Math.abs(normalQuantile(normalDistribution(z)) - z)).toBeLessThan(Math.max(allowed, 2e-14))
    }
  })

  it('is the integral of the density', () => {
    // Simpson's rule with 2000 panels between -8 and z; its own error is below 1e-12 here
    for (const z of [-3, -1.5, -0.4, 0, 0.7, 1.3, 2.2, 4]) {
      const panels = 2000
      const h = (z + 8) / panels
      let sum = normalDensity(-8) + normalDensity(z)
      for (let i = 1; i < panels; i += 1) sum += (i % 2 === 0 ? 2 : 4) * normalDensity(-8 + i * h)
      expect(Math.abs(normalDistribution(z) - (sum * h) / 3)).toBeLessThan(2e-12)
    }
  })

  it('agrees with simple-statistics as far as that goes', () => {
    // its errorFunction is a Chebyshev fit whose fractional error is at most 1.2e-7
    for (let z = -4; z <= 4; z += 0.01)
      expect(Math.abs(normalDistribution(z) - 0.5 * (1 + errorFunction(z / Math.SQRT2)))).toBeLessThan(1.2e-7)
  })

  it('is symmetric', () => {
    for (let z = 0; z < 8; z += 0.013) expect(normalDistribution(z) + normalDistribution(-z)).toBeCloseTo(1, 15)
    for (let k = 1; k < 128; k += 1) expect(normalQuantile(k / 256)).toBe(-normalQuantile(1 - k / 256))
  })
})
