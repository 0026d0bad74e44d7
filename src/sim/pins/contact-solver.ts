import type { ContactList } from './contact-list.js'
import type { RackWorld } from './rack-world.js'

const SWEEPS = 6
/** A sweep that changes no impulse by more than this (newton seconds) ends the solving. */
const SMALL_IMPULSE = 1e-5
/** Slower approaches than this (m/s) do not bounce. */
const BOUNCE_METRES_PER_SECOND = 0.08
/** Numbers a row: direction, both arms crossed with it, both turned by the inverse inertias, then the scalars. */
const ROW = 18
const MASS = 15
const IMPULSE = 16
const TARGET = 17
const MOST_ROWS = 128 * 3

const rows = new Float64Array(MOST_ROWS * ROW)

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
function closing(world: RackWorld, row: number, first: number, second: number): number {
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

function push(world: RackWorld, row: number, first: number, second: number, impulse: number): void {
  const { velocity, spin, inverseMass } = world
  const r = row * ROW
  const a = first * 3
  const pa = impulse * inverseMass[first]!
  velocity[a]! += rows[r]! * pa
  velocity[a + 1]! += rows[r + 1]! * pa
  velocity[a + 2]! += rows[r + 2]! * pa
  spin[a]! += rows[r + 6]! * impulse
  spin[a + 1]! += rows[r + 7]! * impulse
  spin[a + 2]! += rows[r + 8]! * impulse
  if (second < 0) return
  const b = second * 3
  const pb = impulse * inverseMass[second]!
  velocity[b]! -= rows[r]! * pb
  velocity[b + 1]! -= rows[r + 1]! * pb
  velocity[b + 2]! -= rows[r + 2]! * pb
  spin[b]! -= rows[r + 12]! * impulse
  spin[b + 1]! -= rows[r + 13]! * impulse
  spin[b + 2]! -= rows[r + 14]! * impulse
}

/**
 * Settles all contacts of a step at once: Newton's restitution along the normals, Coulomb's cone across them, by
 * projected Gauss-Seidel sweeps over accumulated impulses.
 */
export function solveContacts(world: RackWorld, contacts: ContactList): void {
  const { count } = contacts
  for (let contact = 0; contact < count; contact++) prepareContact(world, contacts, contact)
  for (let sweep = 0; sweep < SWEEPS; sweep++) {
    let change = 0
    for (let contact = 0; contact < count; contact++) {
      const changed = settleContact(world, contacts, contact)
      if (changed > change) change = changed
    }
    if (change < SMALL_IMPULSE) break
  }
}

function prepareContact(world: RackWorld, contacts: ContactList, contact: number): void {
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

function settleContact(world: RackWorld, contacts: ContactList, contact: number): number {
  const first = contacts.first[contact]!
  const second = contacts.second[contact]!
  const row = contact * 3
  const r = row * ROW
  const before = rows[r + IMPULSE]!
  const wanted = before + (rows[r + TARGET]! - closing(world, row, first, second)) * rows[r + MASS]!
  const after = Math.max(wanted, 0)
  const normalChange = after - before
  if (normalChange !== 0) {
    rows[r + IMPULSE] = after
    push(world, row, first, second, normalChange)
  }

  const s = r + ROW
  const t = s + ROW
  const beforeS = rows[s + IMPULSE]!
  const beforeT = rows[t + IMPULSE]!
  let afterS = beforeS - closing(world, row + 1, first, second) * rows[s + MASS]!
  let afterT = beforeT - closing(world, row + 2, first, second) * rows[t + MASS]!
  const limit = contacts.friction[contact]! * after
  const size = Math.sqrt(afterS * afterS + afterT * afterT)
  if (size > limit) {
    const scale = limit / size
    afterS *= scale
    afterT *= scale
  }
  rows[s + IMPULSE] = afterS
  rows[t + IMPULSE] = afterT
  const changeS = afterS - beforeS
  const changeT = afterT - beforeT
  if (changeS !== 0) push(world, row + 1, first, second, changeS)
  if (changeT !== 0) push(world, row + 2, first, second, changeT)
  return Math.max(Math.abs(normalChange), Math.abs(changeS), Math.abs(changeT))
}

/** Share of the overlap beyond the allowance that is taken back each step. */
const OVERLAP_SHARE = 0.3
const OVERLAP_ALLOWED_METRES = 0.0001

/**
 * Sets bodies where they would be had the impulses come at first touch rather than at the step's end, and pushes
 * apart what still overlaps.
 */
export function mendOverlaps(world: RackWorld, contacts: ContactList): void {
  const { place, inverseMass } = world
  for (let contact = 0; contact < contacts.count; contact++) {
    const first = contacts.first[contact]!
    const second = contacts.second[contact]!
    const r = contact * 3 * ROW
    const s = r + ROW
    const t = s + ROW
    const since = contacts.sinceTouch[contact]!
    let mx = 0
    let my = 0
    let mz = 0
    let overlap = contacts.depth[contact]! - OVERLAP_ALLOWED_METRES
    if (since > 0) {
      const n = rows[r + IMPULSE]! * since
      const f = rows[s + IMPULSE]! * since
      const g = rows[t + IMPULSE]! * since
      mx = rows[r]! * n + rows[s]! * f + rows[t]! * g
      my = rows[r + 1]! * n + rows[s + 1]! * f + rows[t + 1]! * g
      mz = rows[r + 2]! * n + rows[s + 2]! * f + rows[t + 2]! * g
      overlap -= n / rows[r + MASS]!
    }
    if (overlap > 0) {
      const both = inverseMass[first]! + (second >= 0 ? inverseMass[second]! : 0)
      const back = (OVERLAP_SHARE * overlap) / both
      mx += rows[r]! * back
      my += rows[r + 1]! * back
      mz += rows[r + 2]! * back
    }
    const a = first * 3
    place[a]! += mx * inverseMass[first]!
    place[a + 1]! += my * inverseMass[first]!
    place[a + 2]! += mz * inverseMass[first]!
    if (second < 0) continue
    const b = second * 3
    place[b]! -= mx * inverseMass[second]!
    place[b + 1]! -= my * inverseMass[second]!
    place[b + 2]! -= mz * inverseMass[second]!
  }
}
