import { inchesToMetres } from '../../units.js'
import { MIRROR_PIN } from './leaves.js'
import { PIN_CENTRE_OF_GRAVITY_METRES } from './pin-body.js'
import { PIN_HEIGHT_INCHES } from './pin-profile.js'
import { BALL, BODY_COUNT, GONE, type RackWorld } from './rack-world.js'

/** From a pin's centre of gravity to its base and to the top of its head, along its axis. */
const BASE_METRES = PIN_CENTRE_OF_GRAVITY_METRES
const HEAD_METRES = inchesToMetres(PIN_HEIGHT_INCHES) - PIN_CENTRE_OF_GRAVITY_METRES

/** One body of the rack at one instant; x down-lane from the headpin spot, y to the left of it, z up, all in metres. */
export interface BodyPlace {
  /** A pin's base, or the ball's centre. */
  readonly base: readonly [downLane: number, left: number, up: number]
  /** The top of a pin's head; the ball's centre again. */
  readonly head: readonly [downLane: number, left: number, up: number]
  /** True once it has dropped into the pit, or never stood there. */
  readonly isGone: boolean
}

/** The rack at one instant: pins 1 to 10 in their order, and the ball. */
export interface RackPicture {
  /** Since the ball first touched a pin. */
  readonly seconds: number
  readonly pins: readonly BodyPlace[]
  readonly ball: BodyPlace
}

/** Reads the world at wanted instants while a throw runs; it changes nothing in it. */
export interface RackWatch {
  /** To be called after each step, with the time since the throw began and whether the ball has touched a pin by then. */
  see(world: RackWorld, elapsedSeconds: number, hasTouched: boolean): void
  /** The pictures, one for each instant; those the throw did not last until show it as it ended. */
  pictures(world: RackWorld): readonly RackPicture[]
}

/** @param instantsSeconds since the first contact, ascending */
export function watchRack(instantsSeconds: readonly number[]): RackWatch {
  const taken: RackPicture[] = []
  let contactAt = Number.NaN
  return {
    see(world, elapsedSeconds, hasTouched) {
      if (hasTouched && Number.isNaN(contactAt)) contactAt = elapsedSeconds
      while (taken.length < instantsSeconds.length && elapsedSeconds - contactAt >= instantsSeconds[taken.length]!) {
        taken.push(pictureOf(world, elapsedSeconds - contactAt))
      }
    },
    pictures(world) {
      while (taken.length < instantsSeconds.length) taken.push(pictureOf(world, instantsSeconds[taken.length]!))
      return taken
    },
  }
}

function pictureOf(world: RackWorld, seconds: number): RackPicture {
  const bodies = Array.from({ length: BODY_COUNT }, (_, body) => placeOf(world, body))
  return { seconds, pins: bodies.slice(0, BALL), ball: bodies[BALL]! }
}

function placeOf({ place, axis, state }: RackWorld, body: number): BodyPlace {
  const at = (along: number) =>
    [0, 1, 2].map((axisIndex) => place[body * 3 + axisIndex]! + along * axis[body * 3 + axisIndex]!) as [
      number,
      number,
      number,
    ]
  const isBall = body === BALL
  return {
    base: at(isBall ? 0 : -BASE_METRES),
    head: at(isBall ? 0 : HEAD_METRES),
    isGone: state[body] === GONE,
  }
}

const MIRROR_PLACE = MIRROR_PIN.slice(1).map((pin) => pin - 1)

/** The picture of the rack seen in a mirror. */
export function mirrorPicture({ seconds, pins, ball }: RackPicture): RackPicture {
  return { seconds, pins: MIRROR_PLACE.map((place) => mirrored(pins[place]!)), ball: mirrored(ball) }
}

const mirrored = ({ base, head, ...rest }: BodyPlace): BodyPlace => ({
  ...rest,
  base: [base[0], 0 - base[1], base[2]],
  head: [head[0], 0 - head[1], head[2]],
})
