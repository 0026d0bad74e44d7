import type { ContactList } from './contact-list.js'
import { CONTACT_ROWS } from './contact-rows.js'
import type { RackWorld } from './rack-world.js'

/** Share of the overlap beyond the allowance that is taken back each step. */
const OVERLAP_SHARE = 0.3
const OVERLAP_ALLOWED_METRES = 0.0001

/**
 * Sets bodies where they would be had the impulses come at first touch rather than at the step's end, and pushes
 * apart what still overlaps.
 */
export function mendOverlaps(world: RackWorld, contacts: ContactList): void {
  const { place, inverseMass } = world
  const { rows, size, mass, impulse } = CONTACT_ROWS
  for (let contact = 0; contact < contacts.count; contact++) {
    const first = contacts.first[contact]!
    const second = contacts.second[contact]!
    const r = contact * 3 * size
    const s = r + size
    const t = s + size
    const since = contacts.sinceTouch[contact]!
    let mx = 0
    let my = 0
    let mz = 0
    let overlap = contacts.depth[contact]! - OVERLAP_ALLOWED_METRES
    if (since > 0) {
      const n = rows[r + impulse]! * since
      const f = rows[s + impulse]! * since
      const g = rows[t + impulse]! * since
      mx = rows[r]! * n + rows[s]! * f + rows[t]! * g
      my = rows[r + 1]! * n + rows[s + 1]! * f + rows[t + 1]! * g
      mz = rows[r + 2]! * n + rows[s + 2]! * f + rows[t + 2]! * g
      overlap -= n / rows[r + mass]!
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
