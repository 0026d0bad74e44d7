import { drawNormal, type RandomSource } from '../../random.js'
import { MIRROR_PIN, PIN_COUNT } from './leaves.js'
import { type Materials, type RackSpread, USUAL_MATERIALS, USUAL_SPREAD } from './materials.js'

/** What no bowler can know of one rack: where its pins really stand, what they weigh and how they bounce and rub. */
export interface RackNature {
  /** Down-lane from the spot, metres; index is the pin number less one, as in the two below. */
  readonly spotDownLane: readonly number[]
  readonly spotLeft: readonly number[]
  readonly massFactor: readonly number[]
  readonly materials: Materials
}

const exactly = (value: number): number[] => new Array<number>(PIN_COUNT).fill(value)

/** Every pin on its spot, of the same mass and the usual materials. */
export const IDEAL_NATURE: RackNature = {
  spotDownLane: exactly(0),
  spotLeft: exactly(0),
  massFactor: exactly(1),
  materials: USUAL_MATERIALS,
}

/** Normal numbers are cut off at two and a half standard deviations: a machine that sets worse is called. */
const FARTHEST_NORMAL = 2.5

/** Draws one rack; always 35 uniform numbers, in a fixed order. */
export function drawRackNature(
  random: RandomSource,
  usual: Materials = USUAL_MATERIALS,
  spread: RackSpread = USUAL_SPREAD,
): RackNature {
  const normal = (): number => Math.max(-FARTHEST_NORMAL, Math.min(FARTHEST_NORMAL, drawNormal(random)))
  const factor = (share: number): number => 1 + share * normal()
  const ten = (draw: () => number): number[] => Array.from({ length: PIN_COUNT }, draw)
  const spotDownLane = ten(() => spread.spotMetres * normal())
  const spotLeft = ten(() => spread.spotMetres * normal())
  const massFactor = ten(() => factor(spread.pinMass))
  return {
    spotDownLane,
    spotLeft,
    massFactor,
    materials: {
      ...usual,
      ballPinRestitution: usual.ballPinRestitution * factor(spread.ballPinRestitution),
      pinPinRestitution: usual.pinPinRestitution * factor(spread.pinPinRestitution),
      pinDeckFriction: usual.pinDeckFriction * factor(spread.pinDeckFriction),
      ballPinFriction: usual.ballPinFriction * factor(spread.ballPinFriction),
      pinPinFriction: usual.pinPinFriction * factor(spread.pinPinFriction),
    },
  }
}

/** The same rack seen in a mirror. */
export function mirrorNature(nature: RackNature): RackNature {
  const swap = (values: readonly number[]): number[] => values.map((_, index) => values[MIRROR_PIN[index + 1]! - 1]!)
  return {
    spotDownLane: swap(nature.spotDownLane),
    spotLeft: swap(nature.spotLeft).map((left) => 0 - left),
    massFactor: swap(nature.massFactor),
    materials: nature.materials,
  }
}
