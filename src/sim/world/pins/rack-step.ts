import { findBallContacts, findPinContacts } from './body-contacts.js'
import { findBuildingContacts } from './building-contacts.js'
import type { ContactList } from './contact-list.js'
import { solveContacts } from './contact-solver.js'
import { drift, fall } from './free-motion.js'
import type { Materials } from './materials.js'
import { mendOverlaps } from './overlaps.js'
import { PIN_SKIN } from './pin-body.js'
import { RACK_BALL_RADIUS_METRES, setUpright } from './rack-setting.js'
import { ASLEEP, BODIES, type RackWorld } from './rack-world.js'
import { BUILDING_MEASURES } from './spots.js'

/** Rate at which rubbing on the deck takes the wobble out of a pin, per second. */
const WOBBLE_DAMPING = 1
const STILL_COSINE = 0.9999
const STILL_SPEED_SQUARE = 0.015 * 0.015
const STILL_SPIN_SQUARE = 0.1 * 0.1
const STILL_STEPS = 25

/** Moves the whole rack on by one step and returns the mask of pins the ball touched in it. */
export function stepRack(
  world: RackWorld,
  contacts: ContactList,
  materials: Materials,
  step: number,
  seconds: number,
): number {
  contacts.count = 0
  fall(world, seconds)
  const touched = findBallContacts(world, contacts, materials, RACK_BALL_RADIUS_METRES, seconds)
  findPinContacts(world, contacts, materials, step, seconds)
  findBuildingContacts(world, contacts, materials, RACK_BALL_RADIUS_METRES)
  solveContacts(world, contacts)
  drift(world, seconds)
  mendOverlaps(world, contacts)
  restAndLeave(world, seconds)
  return touched
}

/** Damps wobbling pins, lets still ones sleep and takes away what has dropped into the pit. */
function restAndLeave(world: RackWorld, seconds: number): void {
  const { place, axis, velocity, spin, state, stillSteps } = world
  const { ball, pinCount, awake, gone } = BODIES
  const { pit } = BUILDING_MEASURES
  const { centreOfGravity } = PIN_SKIN
  if (state[ball] === awake && place[ball * 3]! > pit) state[ball] = gone
  const kept = 1 - WOBBLE_DAMPING * seconds
  for (let pin = 0; pin < pinCount; pin++) {
    if (state[pin] !== awake) continue
    const i = pin * 3
    if (place[i]! > pit || place[i + 2]! < -centreOfGravity * 3) {
      state[pin] = gone
      continue
    }
    if (place[i + 2]! > 2 * centreOfGravity) continue
    spin[i]! *= kept
    spin[i + 1]! *= kept
    spin[i + 2]! *= kept
    if (axis[i + 2]! < STILL_COSINE) {
      stillSteps[pin] = 0
      continue
    }
    const speed =
      velocity[i]! * velocity[i]! + velocity[i + 1]! * velocity[i + 1]! + velocity[i + 2]! * velocity[i + 2]!
    const turning = spin[i]! * spin[i]! + spin[i + 1]! * spin[i + 1]! + spin[i + 2]! * spin[i + 2]!
    if (speed > STILL_SPEED_SQUARE || turning > STILL_SPIN_SQUARE) stillSteps[pin] = 0
    else if (++stillSteps[pin]! >= STILL_STEPS) {
      state[pin] = ASLEEP
      setUpright(world, pin)
    }
  }
}
