import { BUILDING, type ContactList, hasRoom } from './contact-list.js'
import type { RackWorld } from './rack-world.js'

/**
 * Adds the contact of two round elements whose centre points lie on the bodies' axes, `alongFirst` and `alongSecond`
 * from their centres of gravity. The normal is the one at the instant the elements first touched: the points are
 * moved back at their present velocities until their distance is the sum of the radii, at most by one step.
 */
export function addTouchingPair(
  world: RackWorld,
  contacts: ContactList,
  first: number,
  second: number,
  alongFirst: number,
  alongSecond: number,
  radiusFirst: number,
  radiusSecond: number,
  distance: number,
  restitution: number,
  friction: number,
  stepSeconds: number,
): void {
  if (!hasRoom(contacts)) return
  const { place, axis, velocity, spin } = world
  const a = first * 3
  const b = second * 3
  const ax = axis[a]! * alongFirst
  const ay = axis[a + 1]! * alongFirst
  const az = axis[a + 2]! * alongFirst
  const bx = axis[b]! * alongSecond
  const by = axis[b + 1]! * alongSecond
  const bz = axis[b + 2]! * alongSecond
  let dx = place[a]! + ax - (place[b]! + bx)
  let dy = place[a + 1]! + ay - (place[b + 1]! + by)
  let dz = place[a + 2]! + az - (place[b + 2]! + bz)
  const vx =
    velocity[a]! + (spin[a + 1]! * az - spin[a + 2]! * ay) - (velocity[b]! + (spin[b + 1]! * bz - spin[b + 2]! * by))
  const vy =
    velocity[a + 1]! + (spin[a + 2]! * ax - spin[a]! * az) - (velocity[b + 1]! + (spin[b + 2]! * bx - spin[b]! * bz))
  const vz =
    velocity[a + 2]! + (spin[a]! * ay - spin[a + 1]! * ax) - (velocity[b + 2]! + (spin[b]! * by - spin[b + 1]! * bx))

  const reach = radiusFirst + radiusSecond
  const approach = dx * vx + dy * vy + dz * vz
  let since = 0
  if (approach < 0) {
    const square = vx * vx + vy * vy + vz * vz
    since = (approach + Math.sqrt(approach * approach - square * (distance * distance - reach * reach))) / square
    if (since > stepSeconds) since = stepSeconds
    dx -= vx * since
    dy -= vy * since
    dz -= vz * since
  }
  const scale = 1 / Math.sqrt(dx * dx + dy * dy + dz * dz)
  dx *= scale
  dy *= scale
  dz *= scale
  const index = contacts.count++
  const i = index * 3
  contacts.first[index] = first
  contacts.second[index] = second
  contacts.normal[i] = dx
  contacts.normal[i + 1] = dy
  contacts.normal[i + 2] = dz
  contacts.firstArm[i] = ax - dx * radiusFirst
  contacts.firstArm[i + 1] = ay - dy * radiusFirst
  contacts.firstArm[i + 2] = az - dz * radiusFirst
  contacts.secondArm[i] = bx + dx * radiusSecond
  contacts.secondArm[i + 1] = by + dy * radiusSecond
  contacts.secondArm[i + 2] = bz + dz * radiusSecond
  contacts.depth[index] = reach - distance
  contacts.sinceTouch[index] = since
  contacts.restitution[index] = restitution
  contacts.friction[index] = friction
}

/** Adds a body's contact with deck, gutter or wall at an arm from its centre of gravity. */
export function addBuildingContact(
  contacts: ContactList,
  body: number,
  normalY: number,
  normalZ: number,
  armX: number,
  armY: number,
  armZ: number,
  depth: number,
  restitution: number,
  friction: number,
): void {
  if (!hasRoom(contacts)) return
  const index = contacts.count++
  const i = index * 3
  contacts.first[index] = body
  contacts.second[index] = BUILDING
  contacts.normal[i] = 0
  contacts.normal[i + 1] = normalY
  contacts.normal[i + 2] = normalZ
  contacts.firstArm[i] = armX
  contacts.firstArm[i + 1] = armY
  contacts.firstArm[i + 2] = armZ
  contacts.depth[index] = depth
  contacts.sinceTouch[index] = 0
  contacts.restitution[index] = restitution
  contacts.friction[index] = friction
}
