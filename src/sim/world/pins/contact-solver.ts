import type { ContactList } from './contact-list.js'
import { CONTACT_ROWS, closing, prepareContact } from './contact-rows.js'
import type { RackWorld } from './rack-world.js'

const SWEEPS = 6
/** A sweep that changes no impulse by more than this (newton seconds) ends the solving. */
const SMALL_IMPULSE = 1e-5

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

function settleContact(world: RackWorld, contacts: ContactList, contact: number): number {
  const first = contacts.first[contact]!
  const second = contacts.second[contact]!
  const { rows, size: rowSize, mass, impulse, target } = CONTACT_ROWS
  const row = contact * 3
  const r = row * rowSize
  const before = rows[r + impulse]!
  const wanted = before + (rows[r + target]! - closing(world, row, first, second)) * rows[r + mass]!
  const after = Math.max(wanted, 0)
  const normalChange = after - before
  if (normalChange !== 0) {
    rows[r + impulse] = after
    push(world, row, first, second, normalChange)
  }

  const s = r + rowSize
  const t = s + rowSize
  const beforeS = rows[s + impulse]!
  const beforeT = rows[t + impulse]!
  let afterS = beforeS - closing(world, row + 1, first, second) * rows[s + mass]!
  let afterT = beforeT - closing(world, row + 2, first, second) * rows[t + mass]!
  const limit = contacts.friction[contact]! * after
  const size = Math.sqrt(afterS * afterS + afterT * afterT)
  if (size > limit) {
    const scale = limit / size
    afterS *= scale
    afterT *= scale
  }
  rows[s + impulse] = afterS
  rows[t + impulse] = afterT
  const changeS = afterS - beforeS
  const changeT = afterT - beforeT
  if (changeS !== 0) push(world, row + 1, first, second, changeS)
  if (changeT !== 0) push(world, row + 2, first, second, changeT)
  return Math.max(Math.abs(normalChange), Math.abs(changeS), Math.abs(changeT))
}

function push(world: RackWorld, row: number, first: number, second: number, impulse: number): void {
  const { velocity, spin, inverseMass } = world
  const { rows, size } = CONTACT_ROWS
  const r = row * size
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
