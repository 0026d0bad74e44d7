import { cosine, sine } from '../../exact-math.js'
import { inchesToMetres } from '../../units.js'
import { PIN_COUNT } from './leaves.js'
import type { RackNature } from './nature.js'
import {
  PIN_AXIAL_GYRATION_METRES,
  PIN_CENTRE_OF_GRAVITY_METRES,
  PIN_MASS_KILOGRAMS,
  PIN_SKIN,
  PIN_TRANSVERSE_GYRATION_METRES,
} from './pin-body.js'
import type { RackThrow } from './rack-throw.js'
import { ASLEEP, AWAKE, BALL, GONE, type RackWorld } from './rack-world.js'
import { DECK_HALF_WIDTH_METRES, SPOT_DOWN_LANE_METRES, SPOT_LEFT_METRES } from './spots.js'

/** Half of 8.551 in; the rule allows diameters of 8.500 to 8.595 in. */
export const RACK_BALL_RADIUS_METRES = inchesToMetres(8.551 / 2)
/** Between the allowed 2.46 and 2.80 in. */
const BALL_GYRATION_METRES = inchesToMetres(2.55)
const CLEARANCE_METRES = 0.01

/** Sets the standing pins asleep on their spots and the ball rolling a little ahead of the first of them. */
export function setRack(world: RackWorld, rackThrow: RackThrow, nature: RackNature): void {
  let firstRow = Number.POSITIVE_INFINITY
  for (let pin = 0; pin < PIN_COUNT; pin++) {
    const i = pin * 3
    const mass = PIN_MASS_KILOGRAMS * nature.massFactor[pin]!
    world.place[i] = SPOT_DOWN_LANE_METRES[pin]! + nature.spotDownLane[pin]!
    world.place[i + 1] = SPOT_LEFT_METRES[pin]! + nature.spotLeft[pin]!
    world.place[i + 2] = PIN_CENTRE_OF_GRAVITY_METRES
    setUpright(world, pin)
    world.inverseMass[pin] = 1 / mass
    world.acrossInertia[pin] = mass * PIN_TRANSVERSE_GYRATION_METRES * PIN_TRANSVERSE_GYRATION_METRES
    world.alongInertia[pin] = mass * PIN_AXIAL_GYRATION_METRES * PIN_AXIAL_GYRATION_METRES
    const stands = (rackThrow.standing & (1 << pin)) !== 0
    world.state[pin] = stands ? ASLEEP : GONE
    world.stillSteps[pin] = 0
    if (stands && world.place[i]! < firstRow) firstRow = world.place[i]!
  }
  world.pairRest.fill(0)
  setBall(world, rackThrow, firstRow - PIN_SKIN.reach - CLEARANCE_METRES)
}

/** Stands a pin still and upright where it is. */
export function setUpright(world: RackWorld, pin: number): void {
  const i = pin * 3
  world.axis[i] = 0
  world.axis[i + 1] = 0
  world.axis[i + 2] = 1
  world.velocity.fill(0, i, i + 3)
  world.spin.fill(0, i, i + 3)
}

function setBall(world: RackWorld, rackThrow: RackThrow, wantedDownLane: number): void {
  const { offsetMetres, angleRadians, speedMetresPerSecond, ballMassKilograms } = rackThrow
  const forward = cosine(angleRadians)
  const sideways = sine(angleRadians)
  const edge = DECK_HALF_WIDTH_METRES - CLEARANCE_METRES
  let downLane = wantedDownLane
  let left = (downLane * sideways) / forward - offsetMetres
  if (Math.abs(left) > edge && sideways !== 0) {
    left = left < 0 ? -edge : edge
    downLane = ((left + offsetMetres) * forward) / sideways
  }
  const i = BALL * 3
  world.place[i] = downLane
  world.place[i + 1] = left
  world.place[i + 2] = RACK_BALL_RADIUS_METRES
  setUpright(world, BALL)
  world.velocity[i] = speedMetresPerSecond * forward
  world.velocity[i + 1] = speedMetresPerSecond * sideways
  world.spin[i] = (-speedMetresPerSecond * sideways) / RACK_BALL_RADIUS_METRES
  world.spin[i + 1] = (speedMetresPerSecond * forward) / RACK_BALL_RADIUS_METRES
  const inertia = ballMassKilograms * BALL_GYRATION_METRES * BALL_GYRATION_METRES
  world.inverseMass[BALL] = 1 / ballMassKilograms
  world.acrossInertia[BALL] = inertia
  world.alongInertia[BALL] = inertia
  world.state[BALL] = AWAKE
}
