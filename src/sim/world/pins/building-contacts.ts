import type { ContactList } from './contact-list.js'
import type { Materials } from './materials.js'
import { PIN_SKIN } from './pin-body.js'
import { BODIES, type RackWorld } from './rack-world.js'
import { BUILDING_MEASURES } from './spots.js'
import { addBuildingContact } from './touching-pair.js'

/** A point this near the deck counts as touching it, so that a standing pin keeps all its support. */
const TOUCH_METRES = 0.0001
/** No body sinks this far into a floor within one step. */
const UNDER_FLOOR_METRES = 0.012
/** A pin leaning less than this has only its base on the deck: cosine of 18 degrees. */
const BASE_ONLY_COSINE = 0.951

/** Finds what every awake body touches of deck, gutters and side walls. */
export function findBuildingContacts(
  world: RackWorld,
  contacts: ContactList,
  materials: Materials,
  ballRadius: number,
): void {
  const { place, state } = world
  const { ball, pinCount, awake } = BODIES
  const { reach } = PIN_SKIN
  const { wall } = BUILDING_MEASURES
  if (state[ball] === awake) {
    const { ballDeckFriction, pinDeckRestitution } = materials
    touchRound(world, contacts, materials, ball, 0, ballRadius, pinDeckRestitution, ballDeckFriction)
  }
  for (let pin = 0; pin < pinCount; pin++) {
    if (state[pin] !== awake) continue
    const height = place[pin * 3 + 2]!
    const side = Math.abs(place[pin * 3 + 1]!)
    if (height > reach && side + reach < wall) continue
    touchPin(world, contacts, materials, pin, side)
  }
}

function touchPin(world: RackWorld, contacts: ContactList, materials: Materials, pin: number, side: number): void {
  const { axis, place } = world
  const { pinDeckRestitution, pinDeckFriction } = materials
  const { count, from, to, radius, reach } = PIN_SKIN
  const clearOfWall = side + reach < BUILDING_MEASURES.wall
  const uz = axis[pin * 3 + 2]!
  if (uz > BASE_ONLY_COSINE && clearOfWall) {
    touchBase(world, contacts, materials, pin, true)
    return
  }
  const height = place[pin * 3 + 2]!
  for (let element = 0; element < count; element++) {
    const size = radius[element]!
    const start = from[element]!
    const end = to[element]!
    const lowEnough = height + (uz > 0 ? start : end) * uz < size + TOUCH_METRES
    if (!lowEnough && clearOfWall) continue
    touchRound(world, contacts, materials, pin, start, size, pinDeckRestitution, pinDeckFriction)
    if (end > start) touchRound(world, contacts, materials, pin, end, size, pinDeckRestitution, pinDeckFriction)
  }
  touchBase(world, contacts, materials, pin, false)
}

/** One round element, a ball of `radius` about a point of the body's axis. */
function touchRound(
  world: RackWorld,
  contacts: ContactList,
  materials: Materials,
  body: number,
  along: number,
  radius: number,
  restitution: number,
  friction: number,
): void {
  const { place, axis } = world
  const { deckEnd, halfWidth, gutterDepth, wall } = BUILDING_MEASURES
  const i = body * 3
  const ax = axis[i]! * along
  const ay = axis[i + 1]! * along
  const az = axis[i + 2]! * along
  const y = place[i + 1]! + ay
  const z = place[i + 2]! + az
  const sign = y < 0 ? -1 : 1
  const side = y * sign
  const wallDepth = side + radius - wall
  if (wallDepth > 0) {
    const { wallRestitution, wallFriction } = materials
    addBuildingContact(contacts, body, -sign, 0, ax, ay + sign * radius, az, wallDepth, wallRestitution, wallFriction)
  }
  if (place[i]! + ax > deckEnd) return
  const beyond = side - halfWidth
  if (beyond <= 0) {
    if (z < beyond) {
      // The element's middle is inside the deck's side: the short way out is back into the gutter.
      const side = radius - beyond
      addBuildingContact(contacts, body, sign, 0, ax, ay - sign * radius, az, side, restitution, friction)
      return
    }
    const depth = radius - z
    touchFloor(contacts, body, ax, ay, az - radius, depth, restitution, friction)
    return
  }
  const floorDepth = radius - (z + gutterDepth)
  touchFloor(contacts, body, ax, ay, az - radius, floorDepth, restitution, friction)
  if (beyond < radius) {
    const above = Math.max(z, 0)
    const distance = Math.sqrt(beyond * beyond + above * above)
    const depth = radius - distance
    if (depth > 0 && distance > 1e-9) {
      const ny = (sign * beyond) / distance
      const nz = above / distance
      addBuildingContact(contacts, body, ny, nz, ax, ay - ny * radius, az - nz * radius, depth, restitution, friction)
    }
  }
}

/** A floor's contact, unless the point is so far below it that it has swung back under the deck's end. */
function touchFloor(
  contacts: ContactList,
  body: number,
  armX: number,
  armY: number,
  armZ: number,
  depth: number,
  restitution: number,
  friction: number,
): void {
  if (depth < -TOUCH_METRES || depth > UNDER_FLOOR_METRES) return
  addBuildingContact(contacts, body, 0, 1, armX, armY, armZ, depth, restitution, friction)
}

/** The rim of the base: its lowest point, and when `whole` the points opposite and at both sides as well. */
function touchBase(world: RackWorld, contacts: ContactList, materials: Materials, pin: number, whole: boolean): void {
  const { axis } = world
  const i = pin * 3
  const ux = axis[i]!
  const uy = axis[i + 1]!
  const uz = axis[i + 2]!
  const sine = Math.sqrt(ux * ux + uy * uy)
  let lowX = 1
  let lowY = 0
  let lowZ = 0
  if (sine > 1e-7) {
    lowX = (ux * uz) / sine
    lowY = (uy * uz) / sine
    lowZ = -sine
  }
  touchRim(world, contacts, materials, pin, lowX, lowY, lowZ)
  if (!whole || sine * 2 * PIN_SKIN.baseRadius > 0.01) return
  touchRim(world, contacts, materials, pin, -lowX, -lowY, -lowZ)
  const crossX = uy * lowZ - uz * lowY
  const crossY = uz * lowX - ux * lowZ
  touchRim(world, contacts, materials, pin, crossX, crossY, 0)
  touchRim(world, contacts, materials, pin, -crossX, -crossY, 0)
}

function touchRim(
  world: RackWorld,
  contacts: ContactList,
  materials: Materials,
  pin: number,
  outX: number,
  outY: number,
  outZ: number,
): void {
  const { place, axis } = world
  const { deckEnd, halfWidth, gutterDepth } = BUILDING_MEASURES
  const { baseRadius, centreOfGravity } = PIN_SKIN
  const i = pin * 3
  const ax = outX * baseRadius - axis[i]! * centreOfGravity
  const ay = outY * baseRadius - axis[i + 1]! * centreOfGravity
  const az = outZ * baseRadius - axis[i + 2]! * centreOfGravity
  if (place[i]! + ax > deckEnd) return
  const y = place[i + 1]! + ay
  const z = place[i + 2]! + az
  const sign = y < 0 ? -1 : 1
  const inside = halfWidth - y * sign
  const { pinDeckRestitution, pinDeckFriction } = materials
  if (inside < 0) {
    const depth = -gutterDepth - z
    touchFloor(contacts, pin, ax, ay, az, depth, pinDeckRestitution, pinDeckFriction)
  } else if (z < TOUCH_METRES) {
    if (-z > inside) addBuildingContact(contacts, pin, sign, 0, ax, ay, az, inside, pinDeckRestitution, pinDeckFriction)
    else touchFloor(contacts, pin, ax, ay, az, -z, pinDeckRestitution, pinDeckFriction)
  }
}
