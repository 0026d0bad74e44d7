import { newContactList } from './contact-list.js'
import { mirrorMask, PIN_COUNT } from './leaves.js'
import { mirrorNature, type RackNature } from './nature.js'
import { PIN_CENTRE_OF_GRAVITY_METRES } from './pin-body.js'
import { setRack } from './rack-setting.js'
import { stepRack } from './rack-step.js'
import type { RackResult, RackThrow } from './rack-throw.js'
import { ASLEEP, AWAKE, BALL, newRackWorld } from './rack-world.js'
import { DECK_END_METRES, DECK_HALF_WIDTH_METRES } from './spots.js'

export type { RackResult, RackThrow } from './rack-throw.js'

/** Version of the rack's physics; a table of results names the version it was made with. */
export const RACK_VERSION = 1

const BALL_STEP_SECONDS = 1 / 1000
const PIN_STEP_SECONDS = 1 / 500
const LONGEST_SECONDS = 4
/** A pin leaning beyond this never comes back: cosine of 26 degrees. */
const FALLEN_COSINE = 0.8988
const UPRIGHT_COSINE = 0.997
const CHECK_EVERY = 8
const QUIET_SQUARE = 0.12 * 0.12
const QUIET_GUTTER_SQUARE = 0.6 * 0.6

const world = newRackWorld()
const contacts = newContactList()

/**
 * Throws a ball at the standing pins and returns what is left, by rigid-body dynamics in three dimensions.
 * The mirrored throw at the mirrored rack gives exactly the mirrored result. A ball whose centre is beyond the lane's
 * edge at the head pin's row is in the gutter and fells nothing.
 */
export function throwAtRack(rackThrow: RackThrow, nature: RackNature): RackResult {
  if (rackThrow.standing === 0 || Math.abs(rackThrow.offsetMetres) > DECK_HALF_WIDTH_METRES) {
    return { standing: rackThrow.standing, touched: 0, exitOffsetMetres: Number.NaN, steps: 0 }
  }
  if (!comesFromLeft(rackThrow, nature)) return run(rackThrow, nature)
  const result = run(
    {
      ...rackThrow,
      offsetMetres: -rackThrow.offsetMetres,
      angleRadians: -rackThrow.angleRadians,
      standing: mirrorMask(rackThrow.standing),
    },
    mirrorNature(nature),
  )
  return {
    standing: mirrorMask(result.standing),
    touched: mirrorMask(result.touched),
    exitOffsetMetres: -result.exitOffsetMetres,
    steps: result.steps,
  }
}

/** Which of a throw and its mirror image is computed; contacts are settled in the order of pins, which has a hand. */
function comesFromLeft(rackThrow: RackThrow, nature: RackNature): boolean {
  if (rackThrow.offsetMetres !== 0) return rackThrow.offsetMetres < 0
  if (rackThrow.angleRadians !== 0) return rackThrow.angleRadians < 0
  return nature.spotLeft[0]! > 0
}

function run(rackThrow: RackThrow, nature: RackNature): RackResult {
  setRack(world, rackThrow, nature)
  let touched = 0
  let exitOffsetMetres = Number.NaN
  let elapsed = 0
  let step = 0
  while (elapsed < LONGEST_SECONDS) {
    const ballInPlay = world.state[BALL] === AWAKE
    const seconds = ballInPlay ? BALL_STEP_SECONDS : PIN_STEP_SECONDS
    const before = world.place[BALL * 3]!
    touched |= stepRack(world, contacts, nature.materials, step, seconds)
    elapsed += seconds
    step++
    const after = world.place[BALL * 3]!
    if (ballInPlay && before <= DECK_END_METRES && after > DECK_END_METRES) {
      const share = (DECK_END_METRES - after) / world.velocity[BALL * 3]!
      exitOffsetMetres = -(world.place[BALL * 3 + 1]! + world.velocity[BALL * 3 + 1]! * share)
    }
    if (step % CHECK_EVERY === 0 && ((standingPins() === 0 && ballHasPassed()) || isQuiet())) break
  }
  return { standing: standingPins(), touched, exitOffsetMetres, steps: step }
}

/** The ball can touch no further pin. */
const ballHasPassed = (): boolean => world.place[BALL * 3]! > DECK_END_METRES || world.state[BALL] !== AWAKE

function standingPins(): number {
  let mask = 0
  for (let pin = 0; pin < PIN_COUNT; pin++) {
    const upright =
      world.axis[pin * 3 + 2]! > FALLEN_COSINE && world.place[pin * 3 + 2]! > PIN_CENTRE_OF_GRAVITY_METRES / 2
    if (world.state[pin] === ASLEEP || (world.state[pin] === AWAKE && upright)) mask |= 1 << pin
  }
  return mask
}

/** True when nothing moves that could still fell a pin. */
function isQuiet(): boolean {
  const { place, axis, velocity, spin, state } = world
  for (let body = 0; body <= BALL; body++) {
    if (state[body] !== AWAKE) continue
    const i = body * 3
    const lean = axis[i + 2]!
    if (body !== BALL && lean > FALLEN_COSINE && lean < UPRIGHT_COSINE) return false
    const inGutter = Math.abs(place[i + 1]!) > DECK_HALF_WIDTH_METRES
    const limit = inGutter ? QUIET_GUTTER_SQUARE : QUIET_SQUARE
    const speed =
      velocity[i]! * velocity[i]! + velocity[i + 1]! * velocity[i + 1]! + velocity[i + 2]! * velocity[i + 2]!
    if (speed > limit) return false
    const turning = spin[i]! * spin[i]! + spin[i + 1]! * spin[i + 1]!
    if (body !== BALL && lean >= UPRIGHT_COSINE && turning > 0.25) return false
  }
  return true
}
