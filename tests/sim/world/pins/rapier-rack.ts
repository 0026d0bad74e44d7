import RAPIER from '@dimforge/rapier3d-deterministic-compat'
import { PIN_COUNT } from '../../../../src/sim/world/pins/leaves.js'
import type { RackNature } from '../../../../src/sim/world/pins/nature.js'
import type { RackThrow } from '../../../../src/sim/world/pins/rack.js'

/**
 * The same throw in a general rigid-body library, as an independent judge: its own solver, its own contact search, and
 * a pin skin of its own. Only the published measures of pin, ball and lane and the materials are shared. Here y is up
 * and z to the right.
 */

const INCH = 0.0254
const STEP_SECONDS = 1 / 600
const LONGEST_STEPS = 4 * 600
const PIN_MASS = 3.5 * 0.45359237
const BALL_RADIUS = (8.551 / 2) * INCH
const BALL_GYRATION = 2.55 * INCH
// A uniform solid of the pin's drawing: centre of gravity 5.80 in, gyration radii 1.389 in along and 3.62 in across.
const PIN_CENTRE = 5.8 * INCH
const PIN_AXIAL_GYRATION = 1.389 * INCH
const PIN_CROSS_GYRATION = 3.62 * INCH
const HALF_WIDTH = (41.5 / 2) * INCH
const WALL = 30.1 * INCH
const GUTTER_DEPTH = 3.5 * INCH
const DECK_END = 34.1875 * INCH
const ROWS = [0, 1, 1, 2, 2, 2, 3, 3, 3, 3]
const RIGHT_HALF_PITCHES = [0, -1, 1, -2, 0, 2, -3, -1, 1, 3]
const UPRIGHT = { x: 0, y: 0, z: 0, w: 1 }

/** Spheres, capsules and the base cylinder of the skin: [from, to, radius] in inches above the base. */
const SKIN = [
  [2.3, 2.3, 1.98],
  [4.05, 5.15, 2.36],
  [6.9, 6.9, 1.95],
  [8.5, 13.5, 1.0],
  [13.727, 13.727, 1.2735],
] as const

await RAPIER.init()

interface Coefficients {
  readonly restitution: number
  readonly friction: number
}

const give = (shape: RAPIER.ColliderDesc, { restitution, friction }: Coefficients): RAPIER.ColliderDesc =>
  shape
    .setDensity(0)
    .setRestitution(restitution)
    .setRestitutionCombineRule(RAPIER.CoefficientCombineRule.Multiply)
    .setFriction(friction)
    .setFrictionCombineRule(RAPIER.CoefficientCombineRule.Multiply)

function addBox(world: RAPIER.World, low: number[], high: number[], coefficients: Coefficients): void {
  const half = low.map((value, axis) => (high[axis]! - value) / 2)
  const middle = low.map((value, axis) => (high[axis]! + value) / 2)
  const shape = RAPIER.ColliderDesc.cuboid(half[0]!, half[1]!, half[2]!).setTranslation(
    middle[0]!,
    middle[1]!,
    middle[2]!,
  )
  world.createCollider(give(shape, coefficients))
}

function addPin(world: RAPIER.World, x: number, z: number, mass: number, coefficients: Coefficients): RAPIER.RigidBody {
  const across = mass * PIN_CROSS_GYRATION * PIN_CROSS_GYRATION
  const along = mass * PIN_AXIAL_GYRATION * PIN_AXIAL_GYRATION
  const body = world.createRigidBody(
    RAPIER.RigidBodyDesc.dynamic()
      .setTranslation(x, 0, z)
      .setAdditionalMassProperties(mass, { x: 0, y: PIN_CENTRE, z: 0 }, { x: across, y: along, z: across }, UPRIGHT),
  )
  const base = RAPIER.ColliderDesc.cylinder(0.5 * INCH, 1.0155 * INCH).setTranslation(0, 0.5 * INCH, 0)
  world.createCollider(give(base, coefficients), body)
  for (const [from, to, radius] of SKIN) {
    const shape =
      from === to
        ? RAPIER.ColliderDesc.ball(radius * INCH)
        : RAPIER.ColliderDesc.capsule(((to - from) / 2) * INCH, radius * INCH)
    world.createCollider(give(shape.setTranslation(0, ((from + to) / 2) * INCH, 0), coefficients), body)
  }
  return body
}

function addBall(world: RAPIER.World, rackThrow: RackThrow, coefficients: Coefficients): RAPIER.RigidBody {
  const { offsetMetres, angleRadians, speedMetresPerSecond: speed, ballMassKilograms: mass } = rackThrow
  const x = -0.3
  const inertia = mass * BALL_GYRATION * BALL_GYRATION
  const vx = speed * Math.cos(angleRadians)
  const vz = -speed * Math.sin(angleRadians)
  const ball = world.createRigidBody(
    RAPIER.RigidBodyDesc.dynamic()
      .setTranslation(x, BALL_RADIUS, offsetMetres - x * Math.tan(angleRadians))
      .setLinvel(vx, 0, vz)
      .setAngvel({ x: vz / BALL_RADIUS, y: 0, z: -vx / BALL_RADIUS })
      .setAdditionalMassProperties(mass, { x: 0, y: 0, z: 0 }, { x: inertia, y: inertia, z: inertia }, UPRIGHT),
  )
  world.createCollider(give(RAPIER.ColliderDesc.ball(BALL_RADIUS), coefficients), ball)
  return ball
}

/** Cosine of a pin's lean. */
function upright(body: RAPIER.RigidBody): number {
  const { x, z } = body.rotation()
  return 1 - 2 * (x * x + z * z)
}

/** Mask of the pins left standing. */
export function throwAtRapierRack(rackThrow: RackThrow, nature: RackNature): number {
  const world = new RAPIER.World({ x: 0, y: -9.80665, z: 0 })
  world.timestep = STEP_SECONDS
  world.integrationParameters.numSolverIterations = 4
  world.integrationParameters.normalizedPredictionDistance = 0.002
  world.integrationParameters.normalizedAllowedLinearError = 0.0005

  const m = nature.materials
  const pin = { restitution: Math.sqrt(m.pinPinRestitution), friction: Math.sqrt(m.pinPinFriction) }
  const withPin = (restitution: number, friction: number): Coefficients => ({
    restitution: restitution / pin.restitution,
    friction: friction / pin.friction,
  })
  const deck = withPin(m.pinDeckRestitution, m.pinDeckFriction)
  const wall = withPin(m.wallRestitution, m.wallFriction)
  addBox(world, [-1.5, -0.5, -HALF_WIDTH], [DECK_END, 0, HALF_WIDTH], deck)
  for (const side of [-1, 1]) {
    const inner = side * HALF_WIDTH
    const outer = side * WALL
    const low = Math.min(inner, outer)
    const high = Math.max(inner, outer)
    addBox(world, [-1.5, -0.5, low], [DECK_END, -GUTTER_DEPTH, high], deck)
    const far = outer + side * 0.3
    addBox(world, [-1.5, -0.5, Math.min(outer, far)], [DECK_END + 0.5, 1, Math.max(outer, far)], wall)
  }

  const pins = new Map<number, RAPIER.RigidBody>()
  for (let index = 0; index < PIN_COUNT; index++) {
    if ((rackThrow.standing & (1 << index)) === 0) continue
    const x = ROWS[index]! * 12 * INCH * Math.sqrt(0.75) + nature.spotDownLane[index]!
    const z = RIGHT_HALF_PITCHES[index]! * 6 * INCH - nature.spotLeft[index]!
    pins.set(index, addPin(world, x, z, PIN_MASS * nature.massFactor[index]!, pin))
  }
  let ball: RAPIER.RigidBody | undefined = addBall(world, rackThrow, withPin(m.ballPinRestitution, m.ballPinFriction))
  let leave = 0
  for (let step = 1; step <= LONGEST_STEPS; step++) {
    world.step()
    if (ball !== undefined && ball.translation().x > DECK_END + 5 * INCH) {
      world.removeRigidBody(ball)
      ball = undefined
    }
    if (step % 20 !== 0) continue
    leave = 0
    let quiet = ball === undefined || speedOf(ball) < 0.12
    for (const [index, body] of pins) {
      const { x, y, z } = body.translation()
      if (x > DECK_END + 5 * INCH || y < -0.4) {
        world.removeRigidBody(body)
        pins.delete(index)
        continue
      }
      const cosine = upright(body)
      if (cosine > 0.8988) {
        leave |= 1 << index
        if (cosine < 0.997) quiet = false
      }
      if (speedOf(body) > (Math.abs(z) > HALF_WIDTH ? 0.6 : 0.12)) quiet = false
    }
    if (leave === 0 || quiet) break
  }
  world.free()
  return leave
}

function speedOf(body: RAPIER.RigidBody): number {
  const { x, y, z } = body.linvel()
  return Math.sqrt(x * x + y * y + z * z)
}
