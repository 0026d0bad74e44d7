import type { ContactList } from './contact-list.js'
import { PIN_COUNT } from './leaves.js'
import type { Materials } from './materials.js'
import { PIN_SKIN } from './pin-body.js'
import { ASLEEP, AWAKE, BODIES, type RackWorld } from './rack-world.js'
import { addTouchingPair } from './touching-pair.js'

/** Points of two pins close in on each other at half of this at most, so it also holds when the step doubles. */
const FASTEST_CLOSING = 30

const wake = (world: RackWorld, pin: number): void => {
  world.state[pin] = AWAKE
  world.stillSteps[pin] = 0
}

/** Finds the pins the ball touches and wakes them; returns their mask. */
export function findBallContacts(
  world: RackWorld,
  contacts: ContactList,
  materials: Materials,
  ballRadius: number,
  stepSeconds: number,
): number {
  const { place, axis, state } = world
  const { count, from, to, radius, reach } = PIN_SKIN
  const { ball, pinCount, asleep, gone } = BODIES
  if (state[ball] === gone) return 0
  const nearest = ballRadius + reach
  let touched = 0
  for (let pin = 0; pin < pinCount; pin++) {
    if (state[pin] === gone) continue
    const i = pin * 3
    const dx = place[ball * 3]! - place[i]!
    const dy = place[ball * 3 + 1]! - place[i + 1]!
    if (dx > nearest || dx < -nearest || dy > nearest || dy < -nearest) continue
    const dz = place[ball * 3 + 2]! - place[i + 2]!
    const along = dx * axis[i]! + dy * axis[i + 1]! + dz * axis[i + 2]!
    const square = dx * dx + dy * dy + dz * dz - along * along
    let deepest = 0
    let at = -1
    let where = 0
    for (let element = 0; element < count; element++) {
      const point = clamp(along, from[element]!, to[element]!)
      const depth = ballRadius + radius[element]! - Math.sqrt(square + (along - point) * (along - point))
      if (depth > deepest) {
        deepest = depth
        at = element
        where = point
      }
    }
    if (at < 0) continue
    touched |= 1 << pin
    if (state[pin] === asleep) wake(world, pin)
    addTouchingPair(
      world,
      contacts,
      ball,
      pin,
      0,
      where,
      ballRadius,
      radius[at]!,
      ballRadius + radius[at]! - deepest,
      materials.ballPinRestitution,
      materials.ballPinFriction,
      stepSeconds,
    )
  }
  return touched
}

/** Finds pins that touch each other, the deepest pair of elements only, and wakes them. */
export function findPinContacts(
  world: RackWorld,
  contacts: ContactList,
  materials: Materials,
  step: number,
  stepSeconds: number,
): void {
  const { state, pairRest } = world
  const { pinCount, asleep, gone } = BODIES
  for (let first = 0; first < pinCount; first++) {
    if (state[first] === gone) continue
    for (let second = first + 1; second < pinCount; second++) {
      if (state[second] === gone || (state[first] === asleep && state[second] === asleep)) continue
      if (step < pairRest[first * pinCount + second]!) continue
      testPins(world, contacts, materials, first, second, step, stepSeconds)
    }
  }
}

const clamp = (value: number, low: number, high: number): number => (value < low ? low : Math.min(value, high))

function testPins(
  world: RackWorld,
  contacts: ContactList,
  materials: Materials,
  first: number,
  second: number,
  step: number,
  stepSeconds: number,
): void {
  const { place, axis } = world
  const { count, from, to, radius, lowest, highest, bellyRadius } = PIN_SKIN
  const a = first * 3
  const b = second * 3
  const dx = place[a]! - place[b]!
  const dy = place[a + 1]! - place[b + 1]!
  const dz = place[a + 2]! - place[b + 2]!
  const square = dx * dx + dy * dy + dz * dz
  const onFirst = dx * axis[a]! + dy * axis[a + 1]! + dz * axis[a + 2]!
  const onSecond = dx * axis[b]! + dy * axis[b + 1]! + dz * axis[b + 2]!
  const cosine = axis[a]! * axis[b]! + axis[a + 1]! * axis[b + 1]! + axis[a + 2]! * axis[b + 2]!

  // Closest points of the two axes: the quadratic square + 2 s onFirst - 2 t onSecond + s² + t² - 2 s t cosine.
  const sineSquare = 1 - cosine * cosine
  let s = sineSquare > 1e-9 ? clamp((cosine * onSecond - onFirst) / sineSquare, lowest, highest) : 0
  let t = clamp(onSecond + s * cosine, lowest, highest)
  s = clamp(t * cosine - onFirst, lowest, highest)
  const nearest = Math.sqrt(Math.max(0, square + 2 * (s * onFirst - t * onSecond) + s * s + t * t - 2 * s * t * cosine))
  const gap = nearest - 2 * bellyRadius
  if (gap > 0) {
    world.pairRest[first * PIN_COUNT + second] = step + Math.floor(gap / (FASTEST_CLOSING * stepSeconds))
    return
  }

  let deepest = 0
  let atFirst = -1
  let atSecond = -1
  let alongFirst = 0
  let alongSecond = 0
  for (let i = 0; i < count; i++) {
    for (let j = 0; j < count; j++) {
      const reach = radius[i]! + radius[j]!
      if (reach - deepest < nearest) continue
      const fromFirst = from[i]!
      const toFirst = to[i]!
      const fromSecond = from[j]!
      const toSecond = to[j]!
      s =
        fromFirst === toFirst || sineSquare < 1e-9
          ? (fromFirst + toFirst) / 2
          : clamp((cosine * onSecond - onFirst) / sineSquare, fromFirst, toFirst)
      t = clamp(onSecond + s * cosine, fromSecond, toSecond)
      s = clamp(t * cosine - onFirst, fromFirst, toFirst)
      const depth =
        reach - Math.sqrt(Math.max(0, square + 2 * (s * onFirst - t * onSecond) + s * s + t * t - 2 * s * t * cosine))
      if (depth > deepest) {
        deepest = depth
        atFirst = i
        atSecond = j
        alongFirst = s
        alongSecond = t
      }
    }
  }
  if (atFirst < 0) return
  const reach = radius[atFirst]! + radius[atSecond]!
  if (reach - deepest < 1e-6) return
  if (world.state[first] === ASLEEP) wake(world, first)
  if (world.state[second] === ASLEEP) wake(world, second)
  addTouchingPair(
    world,
    contacts,
    first,
    second,
    alongFirst,
    alongSecond,
    radius[atFirst]!,
    radius[atSecond]!,
    reach - deepest,
    materials.pinPinRestitution,
    materials.pinPinFriction,
    stepSeconds,
  )
}
