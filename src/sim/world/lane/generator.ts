import type { RandomSource } from '../../random.js'
import { feetToMetres } from '../../units.js'
import { crownStrength } from './crown-strength.js'
import { type OilPass, strokeOf } from './oil-pass.js'
import { layPattern, measurePattern, type OilPattern, patternVolumeMicrolitres } from './pattern.js'

/** What a drawn pattern must measure; each pair is [least, most]. */
export interface PatternLimits {
  /** Within 20 to 55 ft, and wide enough to hold a whole half foot. */
  readonly lengthMetres: readonly [number, number]
  readonly volumeMicrolitres: readonly [number, number]
  /** From 1.2:1 up. */
  readonly ratio: readonly [number, number]
  readonly symmetric: boolean | 'either'
}

/** The spread of oil met in play: 32-48 ft, 18-32 mL, 1.5:1 to 12:1 (league and tour ranges of published lane pages). */
export const WIDEST_LIMITS: PatternLimits = {
  lengthMetres: [feetToMetres(32), feetToMetres(48)],
  volumeMicrolitres: [18_000, 32_000],
  ratio: [1.5, 12],
  symmetric: 'either',
}

const HALF_FOOT_METRES = feetToMetres(0.5)
const ATTEMPTS = 60

/**
 * Draws a pattern whose measured volume, length and ratio lie within the limits.
 *
 * It is built as a lane machine would: base passes from board 2 to board 38 both ways, and a crown of narrower passes, most of
 * it towards the heads. How much of either is then solved for, not searched: at every reading the ratio is a quotient of sums that are
 * linear in the crown's strength, and the volume is linear in everything.
 *
 * @throws RangeError when the limits contradict themselves or no pattern fits them.
 */
export function generatePattern(limits: PatternLimits, random: RandomSource): OilPattern {
  checkLimits(limits)
  const lengthMetres = drawHalfFeet(limits.lengthMetres, random)
  const volumeMicrolitres = drawWithin(limits.volumeMicrolitres, random)
  const ratio = drawRatio(limits.ratio, random)
  const symmetric = limits.symmetric === 'either' ? random() < 0.5 : limits.symmetric
  const base = basePasses(lengthMetres, random)
  const baseStrokes = base.map(strokeOf)
  for (let attempt = 0; attempt < ATTEMPTS; attempt++) {
    const crown = crownPasses(lengthMetres, ratio, symmetric, random)
    const strength = crownStrength(baseStrokes, crown.map(strokeOf), lengthMetres, ratio)
    if (strength === null) continue
    const passes = [...base, ...scaled(crown, strength)]
    const share = volumeMicrolitres / patternVolumeMicrolitres({ passes })
    const pattern = { name: 'drawn', passes: scaled(passes, share) }
    if (fits(pattern, limits)) return pattern
  }
  throw new RangeError(
    `No pattern of ${limits.ratio[0]}:1 to ${limits.ratio[1]}:1 came out within the limits; widen the ratio or the length.`,
  )
}

function checkLimits({ lengthMetres, volumeMicrolitres, ratio }: PatternLimits): void {
  const sentence =
    problemOf('length (m)', lengthMetres, feetToMetres(20), feetToMetres(55)) ??
    problemOf('volume (µL)', volumeMicrolitres, 1000, 60_000) ??
    problemOf('ratio', ratio, 1.2, 40)
  if (sentence !== null) throw new RangeError(sentence)
  if (lastHalfFoot(lengthMetres) < firstHalfFoot(lengthMetres))
    throw new RangeError(`No whole half foot lies between ${lengthMetres[0]} m and ${lengthMetres[1]} m.`)
}

function problemOf(
  what: string,
  [least, most]: readonly [number, number],
  floor: number,
  ceiling: number,
): string | null {
  if (least >= floor && most <= ceiling && least <= most) return null
  return `The ${what} limits ${least} to ${most} must run upward within ${floor} to ${ceiling}.`
}

const firstHalfFoot = ([least]: readonly [number, number]) => Math.ceil(least / HALF_FOOT_METRES - 1e-9)
const lastHalfFoot = ([, most]: readonly [number, number]) => Math.floor(most / HALF_FOOT_METRES + 1e-9)

function drawHalfFeet(range: readonly [number, number], random: RandomSource): number {
  const first = firstHalfFoot(range)
  return (first + Math.floor(random() * (lastHalfFoot(range) - first + 1))) * HALF_FOOT_METRES
}

/** A little inside both ends, so that rounding cannot carry the measured figure over them. */
function drawWithin([least, most]: readonly [number, number], random: RandomSource): number {
  return least + (most - least) * (0.001 + 0.998 * random())
}

/** Even in 1/ratio, so that flat patterns, which differ most in play, come as often as house ones. */
function drawRatio([least, most]: readonly [number, number], random: RandomSource): number {
  return 1 / drawWithin([1 / most, 1 / least], random)
}

/** Half of all base loads leave the outermost boards dry, half cover them; common practice knows both, no source. */
const DRY_EDGES_SHARE = 0.5

/** Oil over the whole width: long ways out, shorter ways back, so the film thins down-lane. */
function basePasses(lengthMetres: number, random: RandomSource): OilPass[] {
  const backFrom = lengthMetres * (0.7 + 0.2 * random())
  const inset = random() < DRY_EDGES_SHARE ? 2 : 1
  const wide = { fromBoard: inset, toBoard: 40 - inset }
  return [
    { ...wide, direction: 'forward', microlitresPerBoard: 100, ...stroke(0, lengthMetres, feetToMetres(2)) },
    {
      ...wide,
      direction: 'reverse',
      microlitresPerBoard: 30 + 50 * random(),
      ...stroke(0, backFrom, feetToMetres(2)),
    },
    {
      ...wide,
      direction: 'forward',
      microlitresPerBoard: 15 + 35 * random(),
      ...stroke(0, lengthMetres * (0.45 + 0.2 * random()), lengthMetres * 0.2),
    },
  ]
}

/** Narrower passes one inside the other; the higher the ratio, the further in the widest of them begins. */
function crownPasses(lengthMetres: number, ratio: number, symmetric: boolean, random: RandomSource): OilPass[] {
  const count = 5 + Math.floor(random() * 4)
  const widest = Math.min(6.5 + 0.25 * ratio, 9) + 2 * random()
  const narrowest = Math.min(widest + 3 + 4.5 * random(), 16)
  const lean = symmetric ? 0 : (random() < 0.5 ? -1 : 1) * (1 + 2 * random())
  const passes: OilPass[] = []
  for (let i = 0; i < count; i++) {
    const inset = widest + ((narrowest - widest) * i) / (count - 1)
    const direction = i % 2 === 0 ? 'forward' : 'reverse'
    const reach = direction === 'forward' ? 1 - 0.05 * random() : 0.6 + 0.3 * random()
    passes.push({
      direction,
      fromBoard: insetBoard(inset + lean),
      toBoard: 40 - insetBoard(inset - lean),
      microlitresPerBoard: 40 + 60 * random(),
      ...stroke(0, lengthMetres * (i === 0 ? 1 : reach), feetToMetres(2)),
    })
  }
  return passes
}

const insetBoard = (inset: number) => Math.min(Math.max(Math.round(inset), 3), 17)

/** Ends of a stroke on the film's half feet. */
function stroke(nearMetres: number, farMetres: number, taperMetres: number) {
  const toMetres = Math.round(farMetres / HALF_FOOT_METRES) * HALF_FOOT_METRES
  return { fromMetres: nearMetres, toMetres, taperMetres }
}

const scaled = (passes: readonly OilPass[], factor: number): OilPass[] =>
  passes.map((pass) => ({ ...pass, microlitresPerBoard: pass.microlitresPerBoard * factor }))

function fits(pattern: OilPattern, limits: PatternLimits): boolean {
  const measured = measurePattern(layPattern(pattern))
  return (
    inside(measured.lengthMetres, limits.lengthMetres) &&
    inside(measured.volumeMicrolitres, limits.volumeMicrolitres) &&
    inside(measured.ratio, limits.ratio)
  )
}

/** Within the limits but for the last digits of floating point. */
const inside = (value: number, [least, most]: readonly [number, number]) =>
  value >= least - 1e-9 * least && value <= most + 1e-9 * most
