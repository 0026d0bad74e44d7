import { feetToMetres } from '../../sim/units.js'
import type { OilPass } from '../../sim/world/lane/oil-pass.js'
import { layPattern, measurePattern } from '../../sim/world/lane/pattern.js'
import { type CountedPass, fromFoulLine } from './passes.js'

type Passes = CountedPass[]
type Pass = CountedPass

export interface OilWanted {
  readonly lengthFeet: number
  readonly millilitres: number
  /** Middle over outside, as measurePattern reads it. */
  readonly ratio: number
  /** Boards from the edge at which the crown of the pattern begins and at which its narrowest pass begins; 8 and 13 when left out. */
  readonly crown?: readonly [widest: number, narrowest: number]
  /** Boards that the whole crown is moved to the left of the middle. */
  readonly lean?: number
  /** First board that carries oil, from either edge; 2 when left out. */
  readonly edge?: number
}

const CROWN_PASSES = 6
const STRENGTH_STEPS = 40

/**
 * Machine passes that measure as wanted: thin base passes over the whole width, and on top of them a crown of narrower ones whose
 * strength is halved in until the ratio is met; then all of it is scaled to the volume. Amounts are cut to tenths of a microlitre.
 */
export function oilSheet(wanted: OilWanted): Passes {
  const { lengthFeet, millilitres, crown: [widest, narrowest] = [8, 13], lean = 0, edge = 2 } = wanted
  const wide: Pass['boards'] = [edge, 40 - edge]
  const base = [
    fromFoulLine('forward', wide, 100, lengthFeet),
    fromFoulLine('reverse', wide, 60, halfFoot(lengthFeet * 0.8)),
    fromFoulLine('forward', wide, 25, halfFoot(lengthFeet * 0.55), 8),
  ]
  const crown = Array.from({ length: CROWN_PASSES }, (_, step) => {
    const inset = Math.round(widest + ((narrowest - widest) * step) / (CROWN_PASSES - 1))
    const boards: Pass['boards'] = [inset + lean, 40 - inset + lean]
    return step % 2 === 0
      ? fromFoulLine('forward', boards, 100, lengthFeet - (step === 0 ? 0 : 0.5 * step))
      : fromFoulLine('reverse', boards, 70, halfFoot(lengthFeet * (0.62 + 0.04 * step)))
  })
  const mixed = (strength: number): Passes => [...base, ...scaled(crown, strength)]
  const strength = halvedIn((one) => ratioOf(mixed(one)) < wanted.ratio)
  const passes = mixed(strength).filter((pass) => pass.microlitresPerBoard > 0.5)
  return scaled(passes, millilitres / volumeOf(passes)).map((pass) => ({
    ...pass,
    microlitresPerBoard: Math.round(pass.microlitresPerBoard * 10) / 10,
  }))
}

const halfFoot = (feet: number): number => Math.round(feet * 2) / 2

const scaled = (passes: Passes, factor: number): Passes =>
  passes.map((pass) => ({ ...pass, microlitresPerBoard: pass.microlitresPerBoard * factor }))

function volumeOf(passes: Passes): number {
  return (
    passes.reduce(
      (sum, { boards, microlitresPerBoard }) => sum + (boards[1] - boards[0] + 1) * microlitresPerBoard,
      0,
    ) / 1000
  )
}

function ratioOf(passes: Passes): number {
  return measurePattern(layPattern({ name: '', passes: passes.map(passInMetres) })).ratio
}

function passInMetres({ direction, boards, microlitresPerBoard, fromFeet, toFeet, taperFeet = 0 }: Pass): OilPass {
  return {
    direction,
    fromBoard: boards[0],
    toBoard: boards[1],
    microlitresPerBoard,
    fromMetres: feetToMetres(fromFeet),
    toMetres: feetToMetres(toFeet),
    taperMetres: feetToMetres(taperFeet),
  }
}

/** Where a strength stops being too little. */
function halvedIn(isTooLittle: (strength: number) => boolean): number {
  let [low, high] = [1e-6, 20]
  for (let step = 0; step < STRENGTH_STEPS; step++) {
    const middle = (low + high) / 2
    if (isTooLittle(middle)) low = middle
    else high = middle
  }
  return high
}
