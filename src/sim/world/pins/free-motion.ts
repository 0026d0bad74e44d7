import { STANDARD_GRAVITY } from '../../units.js'
import { BODIES, type RackWorld } from './rack-world.js'

/** Gravity over one step, before contacts answer it. */
export function fall(world: RackWorld, seconds: number): void {
  const { velocity, state } = world
  const { bodyCount, awake } = BODIES
  const change = STANDARD_GRAVITY * seconds
  for (let body = 0; body < bodyCount; body++) {
    if (state[body] === awake) velocity[body * 3 + 2]! -= change
  }
}

/**
 * Moves every awake body freely. A symmetric top's axis turns about its angular momentum at the steady rate
 * momentum / cross inertia; the turn is a Cayley rotation, which keeps both length and momentum along the axis.
 */
export function drift(world: RackWorld, seconds: number): void {
  const { place, axis, velocity, spin, acrossInertia, alongInertia, state } = world
  const { bodyCount, awake } = BODIES
  for (let body = 0; body < bodyCount; body++) {
    if (state[body] !== awake) continue
    const i = body * 3
    place[i]! += velocity[i]! * seconds
    place[i + 1]! += velocity[i + 1]! * seconds
    place[i + 2]! += velocity[i + 2]! * seconds
    const across = acrossInertia[body]!
    const surplus = alongInertia[body]! - across
    if (surplus === 0) continue
    const ux = axis[i]!
    const uy = axis[i + 1]!
    const uz = axis[i + 2]!
    const along = spin[i]! * ux + spin[i + 1]! * uy + spin[i + 2]! * uz
    const lean = (surplus / across) * along
    const tx = spin[i]! + lean * ux
    const ty = spin[i + 1]! + lean * uy
    const tz = spin[i + 2]! + lean * uz
    const half = seconds * 0.5
    const ax = tx * half
    const ay = ty * half
    const az = tz * half
    const scale = 2 / (1 + ax * ax + ay * ay + az * az)
    const cx = ay * uz - az * uy
    const cy = az * ux - ax * uz
    const cz = ax * uy - ay * ux
    let nx = ux + scale * (cx + (ay * cz - az * cy))
    let ny = uy + scale * (cy + (az * cx - ax * cz))
    let nz = uz + scale * (cz + (ax * cy - ay * cx))
    const length = 1 / Math.sqrt(nx * nx + ny * ny + nz * nz)
    nx *= length
    ny *= length
    nz *= length
    axis[i] = nx
    axis[i + 1] = ny
    axis[i + 2] = nz
    spin[i] = tx - lean * nx
    spin[i + 1] = ty - lean * ny
    spin[i + 2] = tz - lean * nz
  }
}
