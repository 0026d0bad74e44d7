import { STANDARD_GRAVITY } from '../../../../src/sim/units.js'
import { type ContactList, newContactList } from '../../../../src/sim/world/pins/contact-list.js'
import { type Materials, USUAL_MATERIALS } from '../../../../src/sim/world/pins/materials.js'
import { IDEAL_NATURE } from '../../../../src/sim/world/pins/nature.js'
import { setRack } from '../../../../src/sim/world/pins/rack-setting.js'
import { stepRack } from '../../../../src/sim/world/pins/rack-step.js'
import type { RackThrow } from '../../../../src/sim/world/pins/rack-throw.js'
import {
  AWAKE,
  BALL,
  BODY_COUNT,
  GONE,
  newRackWorld,
  type RackWorld,
} from '../../../../src/sim/world/pins/rack-world.js'

export interface Bench {
  readonly world: RackWorld
  readonly contacts: ContactList
  readonly step: (number: number, seconds: number) => number
}

/** A rack set for one throw that the test steps by itself. */
export function bench(rackThrow: RackThrow, nature = IDEAL_NATURE, materials: Materials = nature.materials): Bench {
  const world = newRackWorld()
  const contacts = newContactList()
  setRack(world, rackThrow, nature)
  return { world, contacts, step: (number, seconds) => stepRack(world, contacts, materials, number, seconds) }
}

/** The head pin alone on the deck, awake, no ball. */
export function lonePin(materials: Materials = USUAL_MATERIALS): Bench {
  const rackThrow = { offsetMetres: 0, angleRadians: 0, speedMetresPerSecond: 1, ballMassKilograms: 7, standing: 1 }
  const made = bench(rackThrow, IDEAL_NATURE, materials)
  made.world.state[BALL] = GONE
  made.world.state[0] = AWAKE
  return made
}

/** Kinetic and potential energy of one body, joules. */
export function energyOf(world: RackWorld, body: number): number {
  const { velocity, spin, axis, inverseMass, acrossInertia, alongInertia, place } = world
  const i = body * 3
  const mass = 1 / inverseMass[body]!
  const along = spin[i]! * axis[i]! + spin[i + 1]! * axis[i + 1]! + spin[i + 2]! * axis[i + 2]!
  const spinSquare = spin[i]! ** 2 + spin[i + 1]! ** 2 + spin[i + 2]! ** 2
  const speedSquare = velocity[i]! ** 2 + velocity[i + 1]! ** 2 + velocity[i + 2]! ** 2
  return (
    0.5 * mass * speedSquare +
    0.5 * acrossInertia[body]! * (spinSquare - along * along) +
    0.5 * alongInertia[body]! * along * along +
    mass * STANDARD_GRAVITY * place[i + 2]!
  )
}

/** Sum of a quantity over all bodies still in the world. */
export function overBodies(world: RackWorld, of: (body: number) => number): number {
  let sum = 0
  for (let body = 0; body < BODY_COUNT; body++) if (world.state[body] !== GONE) sum += of(body)
  return sum
}
