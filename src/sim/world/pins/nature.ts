import { drawNormal, type RandomSource } from '../../random.js'
import { MIRROR_PIN, PIN_COUNT } from './leaves.js'
import { type Materials, type RackSpread, USUAL_MATERIALS, USUAL_SPREAD } from './materials.js'

/** What no bowler can know of one rack: where its pins really stand, what they weigh and how they bounce and rub. */
export interface RackNature {
  /** Down-lane from the spot, metres; index is the pin number less one, as in the two below. */
  readonly spotDownLane: readonly number[]
  readonly spotLeft: readonly number[]
  readonly massFactor: readonly number[]
  /** What multiplies the restitution of each pin. */
  readonly liveliness: readonly number[]
  /** How far the ball's rolling is turned to the left of its path, radians. */
  readonly ballTurnRadians: number
  readonly materials: Materials
}

const exactly = (value: number): number[] => new Array<number>(PIN_COUNT).fill(value)

/** Every pin on its spot, of the same mass and the usual materials. */
export const IDEAL_NATURE: RackNature = {
  spotDownLane: exactly(0),
  spotLeft: exactly(0),
  massFactor: exactly(1),
  liveliness: exactly(1),
  ballTurnRadians: 0,
  materials: USUAL_MATERIALS,
}

/** Normal numbers are cut off at two and a half standard deviations: a machine that sets worse is called. */
const FARTHEST_NORMAL = 2.5

/** Draws one rack; always 49 uniform numbers, in a fixed order. */
export function drawRackNature(
  random: RandomSource,
  usual: Materials = USUAL_MATERIALS,
  spread: RackSpread = USUAL_SPREAD,
): RackNature {
  const normal = (): number => Math.max(-FARTHEST_NORMAL, Math.min(FARTHEST_NORMAL, drawNormal(random)))
  const factor = (share: number): number => 1 + share * normal()
  const ten = (draw: () => number): number[] => Array.from({ length: PIN_COUNT }, draw)
  const offSpot = (): number => {
    const deviations = normal()
    const off = spread.spotMetres * deviations * (1 + spread.spotTail * deviations * deviations)
    return Math.max(-spread.farthestSpotMetres, Math.min(spread.farthestSpotMetres, off))
  }
  const rackLeft = spread.rackAcrossMetres * normal()
  return {
    spotDownLane: ten(offSpot),
    spotLeft: ten(() => rackLeft + offSpot()),
    massFactor: ten(() => factor(spread.pinMass)),
    liveliness: ten(() => factor(spread.pinLiveliness)),
    ballTurnRadians: spread.ballTurnRadians * normal(),
    materials: {
      ...usual,
      ballPinRestitution: usual.ballPinRestitution * factor(spread.ballPinRestitution),
      pinPinRestitution: usual.pinPinRestitution * factor(spread.pinPinRestitution),
      wallRestitution: usual.wallRestitution * factor(spread.wallRestitution),
      ballPinFriction: usual.ballPinFriction * factor(spread.ballPinFriction),
      pinPinFriction: usual.pinPinFriction * factor(spread.pinPinFriction),
      pinDeckFriction: usual.pinDeckFriction * factor(spread.pinDeckFriction),
      ballDeckFriction: usual.ballDeckFriction * factor(spread.ballDeckFriction),
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
    liveliness: swap(nature.liveliness),
    ballTurnRadians: 0 - nature.ballTurnRadians,
    materials: nature.materials,
  }
}
