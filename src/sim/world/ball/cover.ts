import { power } from '../../exact-math.js'
import type { CoverUptake } from '../lane/wear.js'
import type { FrictionLaw } from './friction.js'

/** Solid, hybrid and pearl are reactive resin. */
export type CoverFamily = 'solid' | 'hybrid' | 'pearl' | 'urethane' | 'plastic'

export const coverFamilies: readonly CoverFamily[] = ['solid', 'hybrid', 'pearl', 'urethane', 'plastic']

export const GRIT_RANGE = { least: 180, most: 6000 } as const

interface CoverParameters extends FrictionLaw, CoverUptake {
  /** Share of the film carried round on the track that is still between cover and lane a lap later; the rest soaks in. */
  readonly carriedFilmShare: number
}

/**
 * Every number of the cover, at the reference roughness. No law of friction against film, slip or grit has been
 * published, so these are chosen, not measured. What they were chosen for, and how that is known:
 *
 * - dryFriction: about 0.20 for reactive covers, the dry value of course notes on ball paths (Weidert, 2007) and, from memory,
 *   of Frohlich (Am. J. Phys. 72, 2004); below the 0.32 of the equipment rules; urethane and plastic weaker (common practice).
 * - oiledFriction: half the 0.04 of the same sources or a little more, so that a ball still hooks near the pins on 45 ft of
 *   oil (common practice). With about 0.024 on 40 ft of even oil the release of the optimum in AIP Advances 15, 045222 (2025)
 *   meets the pocket (derived).
 * - halfFloatingMicrons: on house oil of 10:1 a board of target either way still meets the pocket, on flat 45 ft oil it
 *   does not, and two boards right miss the headpin (common practice).
 * - carriedFilmShare: falls with thirst; large enough that flare matters less than surface and friction (ball-motion
 *   study of the governing body, 2008), small enough that balls without flare skid further (common practice).
 * - pickupShare, layDownShare: oil lost and carried down per game, see the checks of the lane's wear.
 */
const COVERS: Readonly<Record<CoverFamily, CoverParameters>> = {
  solid: {
    dryFriction: 0.222,
    oiledFriction: 0.0047,
    halfFloatingMicrons: 0.21,
    carriedFilmShare: 0.46,
    pickupShare: 0.03687,
    layDownShare: 0.84,
  },
  hybrid: {
    dryFriction: 0.21,
    oiledFriction: 0.0048,
    halfFloatingMicrons: 0.201,
    carriedFilmShare: 0.552,
    pickupShare: 0.03214,
    layDownShare: 0.91,
  },
  pearl: {
    dryFriction: 0.2,
    oiledFriction: 0.0068,
    halfFloatingMicrons: 0.214,
    carriedFilmShare: 0.69,
    pickupShare: 0.02812,
    layDownShare: 1,
  },
  urethane: {
    dryFriction: 0.145,
    oiledFriction: 0.004,
    halfFloatingMicrons: 0.198,
    carriedFilmShare: 0.69,
    pickupShare: 0.02081,
    layDownShare: 1,
  },
  plastic: {
    dryFriction: 0.07,
    oiledFriction: 0.0065,
    halfFloatingMicrons: 0.2,
    carriedFilmShare: 0.828,
    pickupShare: 0.01339,
    layDownShare: 1,
  },
}

/** Roughness at which COVERS is written, that of a 2000-grit finish. */
const REFERENCE_ROUGHNESS_MICRONS = 0.58

const REFERENCE_GRIT = 2000
/** Finer grit leaves less roughness: about 65 µin at 500 grit to about 14 µin at 4000 (from memory). */
const ROUGHNESS_PER_GRIT_POWER = 0.75
/** What polish leaves of the roughness under it (from memory). */
const POLISHED_SHARE = 0.6

/**
 * How the cover's numbers follow its roughness, as powers of (Ra / reference Ra): more friction in oil but a little less on
 * a dry lane, where less of a rough cover touches (direction published with the ball-motion study of 2008), and roughness the
 * strongest of all a ball's properties (same study). The sizes are chosen.
 */
const ROUGHNESS_POWERS = {
  halfFloatingMicrons: 0.4,
  oiledFriction: 0.45,
  dryFriction: -0.03,
  pickupShare: 0.3,
} as const

/** Arithmetic mean roughness Ra of a finish, in micrometres. */
function roughnessMicrons(surfaceGrit: number, polished: boolean): number {
  const sanded = REFERENCE_ROUGHNESS_MICRONS * power(REFERENCE_GRIT / surfaceGrit, ROUGHNESS_PER_GRIT_POWER)
  return polished ? sanded * POLISHED_SHARE : sanded
}

/** Friction law of a cover at a finish. */
export function coverFriction(cover: CoverFamily, surfaceGrit: number, polished: boolean): FrictionLaw {
  return frictionAtRoughness(cover, roughnessMicrons(surfaceGrit, polished))
}

/** Friction law of a cover at a measured roughness Ra in micrometres. */
export function frictionAtRoughness(cover: CoverFamily, roughness: number): FrictionLaw {
  const relative = roughness / REFERENCE_ROUGHNESS_MICRONS
  const at = COVERS[cover]
  return {
    dryFriction: at.dryFriction * power(relative, ROUGHNESS_POWERS.dryFriction),
    oiledFriction: at.oiledFriction * power(relative, ROUGHNESS_POWERS.oiledFriction),
    halfFloatingMicrons: at.halfFloatingMicrons * power(relative, ROUGHNESS_POWERS.halfFloatingMicrons),
  }
}

/** How much oil a cover takes up and lays down again. */
export function coverUptake(cover: CoverFamily, surfaceGrit: number, polished: boolean): CoverUptake {
  const relative = roughnessMicrons(surfaceGrit, polished) / REFERENCE_ROUGHNESS_MICRONS
  const at = COVERS[cover]
  return {
    pickupShare: at.pickupShare * power(relative, ROUGHNESS_POWERS.pickupShare),
    layDownShare: at.layDownShare,
  }
}

/** Share of the film carried on the track that a lap later still keeps the cover off the lane. */
export function carriedFilmShare(cover: CoverFamily): number {
  return COVERS[cover].carriedFilmShare
}
