import { normalDistribution } from '../../exact-math.js'
import { feetToMetres } from '../../units.js'
import { crownStrength } from '../../world/lane/crown-strength.js'
import { layStroke, type OilPass, strokeOf } from '../../world/lane/oil-pass.js'
import { patternVolumeMicrolitres } from '../../world/lane/pattern.js'
import { halfFeetToMetres, type PatternRanges } from './pattern-ranges.js'

/**
 * The family of patterns a bowler has in mind: whatever a machine lays with passes over the whole width and a crown of
 * narrower ones, from flat to house-like. A member is named by coordinates that are independent standard normal numbers
 * before anything is seen; each is turned into its own range by its distribution function.
 */
const COORDINATE = {
  length: 0,
  volume: 1,
  ratio: 2,
  lean: 3,
  backAmount: 4,
  backFrom: 5,
  frontAmount: 6,
  frontReach: 7,
  crownWidest: 8,
  crownSteepness: 9,
  crownTilt: 10,
  crownBackAmount: 11,
  crownBackReach: 12,
  crownBackFan: 13,
  crownFrontAmount: 14,
  crownShortfall: 15,
  edges: 16,
} as const
export const PATTERN_COORDINATES = 17

/** As many patterns leave the outermost boards dry as cover them. */
const DRY_EDGES_SHARE = 0.5
const CROWN_PASSES = 6
const TAPER_METRES = feetToMetres(2)
const INWARD_STEP_BOARDS = 0.75
const INWARD_STEPS = 14

type Coordinates = ArrayLike<number>

/** Lays the pattern with these coordinates on a stripped lane: writes its film, in micrometres, into `into`. */
export function layFamilyMember(z: Coordinates, ranges: PatternRanges, into: Float64Array): void {
  const [shortest, longest] = ranges.lengthHalfFeet
  const first = Math.ceil(shortest)
  const count = Math.floor(longest) - first + 1
  const lengthMetres = halfFeetToMetres(first + Math.min(count - 1, Math.floor(count * even(z, 'length'))))
  const volumeMicrolitres = between(ranges.volumeMicrolitres, even(z, 'volume'))
  const [flattest, steepest] = ranges.ratio
  const ratio = 1 / between([1 / steepest, 1 / flattest], even(z, 'ratio'))

  const base = basePasses(z, lengthMetres)
  const baseStrokes = base.map(strokeOf)
  const outermost = crownPasses(z, lengthMetres, ratio, 0).map(strokeOf)
  for (let step = 0; ; step++) {
    const crown = crownPasses(z, lengthMetres, ratio, step * INWARD_STEP_BOARDS)
    const crownStrokes = crown.map((pass, at) => ({ pass, rowShares: outermost[at].rowShares }))
    const strength = crownStrength(baseStrokes, crownStrokes, lengthMetres, ratio)
    if (strength === null && step < INWARD_STEPS) continue
    const crownShare = strength ?? 1
    const laid = patternVolumeMicrolitres({ passes: base })
    const scale = volumeMicrolitres / (laid + crownShare * patternVolumeMicrolitres({ passes: crown }))
    into.fill(0)
    for (const stroke of baseStrokes) layStroke(into, stroke, scale)
    for (const stroke of crownStrokes) layStroke(into, stroke, scale * crownShare)
    return
  }
}

/** A coordinate as a number that is even between 0 and 1 before anything is seen. */
function even(z: Coordinates, name: keyof typeof COORDINATE): number {
  return normalDistribution(z[COORDINATE[name]])
}

const between = ([least, most]: readonly [number, number], share: number): number => least + (most - least) * share

function basePasses(z: Coordinates, lengthMetres: number): OilPass[] {
  const inset = even(z, 'edges') < DRY_EDGES_SHARE ? 2 : 1
  const wide = { fromBoard: inset, toBoard: 40 - inset, fromMetres: 0 }
  return [
    { ...wide, direction: 'forward', microlitresPerBoard: 100, toMetres: lengthMetres, taperMetres: TAPER_METRES },
    {
      ...wide,
      direction: 'reverse',
      microlitresPerBoard: 20 + 70 * even(z, 'backAmount'),
      toMetres: lengthMetres * (0.65 + 0.3 * even(z, 'backFrom')),
      taperMetres: TAPER_METRES,
    },
    {
      ...wide,
      direction: 'forward',
      microlitresPerBoard: 5 + 55 * even(z, 'frontAmount'),
      toMetres: lengthMetres * (0.4 + 0.3 * even(z, 'frontReach')),
      taperMetres: lengthMetres * 0.2,
    },
  ]
}

/** The crown: half its passes out and half back, one inside the other, and one more over the heads. */
function crownPasses(z: Coordinates, lengthMetres: number, ratio: number, inward: number): OilPass[] {
  const widest = Math.min(5.5 + 0.4 * ratio, 9) - 1.5 + 5 * even(z, 'crownWidest') + inward
  const narrowest = Math.min(widest + 2 + 6 * even(z, 'crownSteepness'), 16.5)
  const lean = leanBoards(z)
  const tilt = 1.4 * (even(z, 'crownTilt') - 0.5)
  const backAmount = 0.4 + 0.8 * even(z, 'crownBackAmount')
  const backReach = 0.6 + 0.3 * even(z, 'crownBackReach')
  const backFan = 0.4 * (even(z, 'crownBackFan') - 0.5)
  const shortfall = 0.08 * even(z, 'crownShortfall')
  const passes: OilPass[] = []
  for (let i = 0; i < CROWN_PASSES; i++) {
    const share = i / (CROWN_PASSES - 1)
    const amount = 70 * (1 + tilt * (share - 0.5))
    const isOut = i % 2 === 0
    const reach = isOut ? (i === 0 ? 1 : 1 - shortfall) : within(backReach + backFan * (share - 0.5), 0.4, 0.95)
    passes.push({
      direction: isOut ? 'forward' : 'reverse',
      ...crownBoards(widest + (narrowest - widest) * share, lean),
      microlitresPerBoard: isOut ? amount : backAmount * amount,
      fromMetres: 0,
      toMetres: lengthMetres * reach,
      taperMetres: TAPER_METRES,
    })
  }
  passes.push({
    direction: 'forward',
    ...crownBoards(narrowest, lean),
    microlitresPerBoard: 1 + 29 * even(z, 'crownFrontAmount'),
    fromMetres: 0,
    toMetres: lengthMetres * 0.55,
    taperMetres: lengthMetres * 0.2,
  })
  return passes
}

/** Half of all patterns are alike on both sides; the others lean by one to three boards. */
function leanBoards(z: Coordinates): number {
  const share = even(z, 'lean')
  if (share < 0.25) return -1 - 2 * (1 - share / 0.25)
  if (share > 0.75) return 1 + 2 * ((share - 0.75) / 0.25)
  return 0
}

function crownBoards(inset: number, lean: number): { fromBoard: number; toBoard: number } {
  return { fromBoard: insetBoard(inset + lean), toBoard: 40 - insetBoard(inset - lean) }
}

const insetBoard = (inset: number): number => within(Math.round(inset), 3, 18)

const within = (value: number, least: number, most: number): number => Math.min(Math.max(value, least), most)
