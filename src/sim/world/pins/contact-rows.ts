import { type ContactList, MOST_CONTACTS } from './contact-list.js'
import type { RackWorld } from './rack-world.js'

/** Slower approaches than this (m/s) do not bounce. */
const BOUNCE_METRES_PER_SECOND = 0.08
/** Numbers a row: direction, both arms crossed with it, both turned by the inverse inertias, then the scalars. */
const ROW = 18
const MASS = 15
const IMPULSE = 16
const TARGET = 17
const MOST_ROWS = MOST_CONTACTS * 3

const rows = new Float64Array(MOST_ROWS * ROW)

/**
 * What the solver keeps of each contact: three rows, along the normal and two directions across it. `size` numbers a
 * row; `mass`, `impulse` and `target` are the places of a row's effective mass, impulse so far and wanted velocity.
 */
export const CONTACT_ROWS = { rows, size: ROW, mass: MASS, impulse: IMPULSE, target: TARGET } as const

function prepareRow(
  world: RackWorld,
  contacts: ContactList,
  contact: number,
  row: number,
  dx: number,
  dy: number,
  dz: number,
): void {
  const { axis, inverseMass, acrossInertia, alongInertia } = world
  const first = contacts.first[contact]!
  const second = contacts.second[contact]!
  const c = contact * 3
  const r = row * ROW
  rows[r] = dx
  rows[r + 1] = dy
  rows[r + 2] = dz
  let compliance = inverseMass[first]!
  {
    const rx = contacts.firstArm[c]!
    const ry = contacts.firstArm[c + 1]!
    const rz = contacts.firstArm[c + 2]!
    const cx = ry * dz - rz * dy
    const cy = rz * dx - rx * dz
    const cz = rx * dy - ry * dx
    const i = first * 3
    const across = 1 / acrossInertia[first]!
    const along = (cx * axis[i]! + cy * axis[i + 1]! + cz * axis[i + 2]!) * (1 / alongInertia[first]! - across)
    const ix = cx * across + axis[i]! * along
    const iy = cy * across + axis[i + 1]! * along
    const iz = cz * across + axis[i + 2]! * along
    rows[r + 3] = cx
    rows[r + 4] = cy
    rows[r + 5] = cz
    rows[r + 6] = ix
    rows[r + 7] = iy
    rows[r + 8] = iz
    compliance += cx * ix + cy * iy + cz * iz
  }
  if (second >= 0) {
    const rx = contacts.secondArm[c]!
    const ry = contacts.secondArm[c + 1]!
    const rz = contacts.secondArm[c + 2]!
    const cx = ry * dz - rz * dy
    const cy = rz * dx - rx * dz
    const cz = rx * dy - ry * dx
    const i = second * 3
    const across = 1 / acrossInertia[second]!
    const along = (cx * axis[i]! + cy * axis[i + 1]! + cz * axis[i + 2]!) * (1 / alongInertia[second]! - across)
    const ix = cx * across + axis[i]! * along
    const iy = cy * across + axis[i + 1]! * along
    const iz = cz * across + axis[i + 2]! * along
    rows[r + 9] = cx
    rows[r + 10] = cy
    rows[r + 11] = cz
    rows[r + 12] = ix
    rows[r + 13] = iy
    rows[r + 14] = iz
    compliance += inverseMass[second]! + cx * ix + cy * iy + cz * iz
  }
  rows[r + MASS] = 1 / compliance
  rows[r + IMPULSE] = 0
  rows[r + TARGET] = 0
}

/** Velocity of the first body's touching point against the second's, along the row's direction. */
export function closing(world: RackWorld, row: number, first: number, second: number): number {
  const { velocity, spin } = world
  const r = row * ROW
  const a = first * 3
  let speed =
    rows[r]! * velocity[a]! +
    rows[r + 1]! * velocity[a + 1]! +
    rows[r + 2]! * velocity[a + 2]! +
    (rows[r + 3]! * spin[a]! + rows[r + 4]! * spin[a + 1]! + rows[r + 5]! * spin[a + 2]!)
  if (second >= 0) {
    const b = second * 3
    speed -=
      rows[r]! * velocity[b]! +
      rows[r + 1]! * velocity[b + 1]! +
      rows[r + 2]! * velocity[b + 2]! +
      (rows[r + 9]! * spin[b]! + rows[r + 10]! * spin[b + 1]! + rows[r + 11]! * spin[b + 2]!)
  }
  return speed
}

/** Fills the three rows of a contact from the velocities before it is solved. */
export function prepareContact(world: RackWorld, contacts: ContactList, contact: number): void {
  const { velocity, spin } = world
  const first = contacts.first[contact]!
  const second = contacts.second[contact]!
  const c = contact * 3
  const row = c
  const nx = contacts.normal[c]!
  const ny = contacts.normal[c + 1]!
  const nz = contacts.normal[c + 2]!
  prepareRow(world, contacts, contact, row, nx, ny, nz)
  const speed = closing(world, row, first, second)
  if (speed < -BOUNCE_METRES_PER_SECOND) rows[row * ROW + TARGET] = -contacts.restitution[contact]! * speed

  const a = first * 3
  const rx = contacts.firstArm[c]!
  const ry = contacts.firstArm[c + 1]!
  const rz = contacts.firstArm[c + 2]!
  let vx = velocity[a]! + (spin[a + 1]! * rz - spin[a + 2]! * ry) - speed * nx
  let vy = velocity[a + 1]! + (spin[a + 2]! * rx - spin[a]! * rz) - speed * ny
  let vz = velocity[a + 2]! + (spin[a]! * ry - spin[a + 1]! * rx) - speed * nz
  if (second >= 0) {
    const b = second * 3
    const sx = contacts.secondArm[c]!
    const sy = contacts.secondArm[c + 1]!
    const sz = contacts.secondArm[c + 2]!
    vx -= velocity[b]! + (spin[b + 1]! * sz - spin[b + 2]! * sy)
    vy -= velocity[b + 1]! + (spin[b + 2]! * sx - spin[b]! * sz)
    vz -= velocity[b + 2]! + (spin[b]! * sy - spin[b + 1]! * sx)
  }
  let slip = Math.sqrt(vx * vx + vy * vy + vz * vz)
  if (slip < 1e-9) {
    // No slip to speak of: any direction across the normal will do.
    vx = nz
    vy = 0
    vz = -nx
    slip = Math.sqrt(vx * vx + vz * vz)
    if (slip < 1e-3) {
      vx = 0
      vy = -nz
      vz = ny
      slip = Math.sqrt(vy * vy + vz * vz)
    }
  }
  vx /= slip
  vy /= slip
  vz /= slip
  prepareRow(world, contacts, contact, row + 1, vx, vy, vz)
  prepareRow(world, contacts, contact, row + 2, ny * vz - nz * vy, nz * vx - nx * vz, nx * vy - ny * vx)
}
