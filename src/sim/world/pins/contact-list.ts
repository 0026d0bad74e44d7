/**
 * The contacts of one step, in preallocated arrays. A contact presses the first body along its normal away from the
 * second, which is -1 for the building (deck, gutter, wall).
 */
export interface ContactList {
  count: number
  readonly first: Int8Array
  readonly second: Int8Array
  /** Three numbers a contact: normal, and arms from the two centres of gravity to the touching point. */
  readonly normal: Float64Array
  readonly firstArm: Float64Array
  readonly secondArm: Float64Array
  readonly depth: Float64Array
  /** How long ago the bodies first touched, seconds; 0 for contacts that last. */
  readonly sinceTouch: Float64Array
  readonly restitution: Float64Array
  readonly friction: Float64Array
}

export const MOST_CONTACTS = 128
export const BUILDING = -1

export function newContactList(): ContactList {
  return {
    count: 0,
    first: new Int8Array(MOST_CONTACTS),
    second: new Int8Array(MOST_CONTACTS),
    normal: new Float64Array(MOST_CONTACTS * 3),
    firstArm: new Float64Array(MOST_CONTACTS * 3),
    secondArm: new Float64Array(MOST_CONTACTS * 3),
    depth: new Float64Array(MOST_CONTACTS),
    sinceTouch: new Float64Array(MOST_CONTACTS),
    restitution: new Float64Array(MOST_CONTACTS),
    friction: new Float64Array(MOST_CONTACTS),
  }
}

export const hasRoom = (contacts: ContactList): boolean => contacts.count < MOST_CONTACTS
