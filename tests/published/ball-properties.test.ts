import { describe, expect, it } from 'vitest'
import { inchesToMetres, metresToBoards } from '../../src/sim/units.js'
import { coverFriction, frictionAtRoughness } from '../../src/sim/world/ball/cover.js'
import { type BallDynamics, dynamicsOf } from '../../src/sim/world/ball/dynamics.js'
import { type FrictionLaw, prepareFriction } from '../../src/sim/world/ball/friction.js'
import { newRollOutcome, type RollOutcome } from '../../src/sim/world/ball/launch.js'
import { rollBall } from '../../src/sim/world/ball/motion.js'
import type { BallSpecification } from '../../src/sim/world/ball/specification.js'
import { buildStepTable } from '../../src/sim/world/ball/step-table.js'
import { emptyFilm } from '../../src/sim/world/lane/film.js'
import { layPattern } from '../../src/sim/world/lane/pattern.js'
import { hybrid, symmetricSolid } from '../sim/world/ball/bag-for-tests.js'
import { RigidBody } from '../sim/world/ball/rigid-body.js'
import { throwOf } from '../sim/world/ball/throws-for-tests.js'
import { flatForty, flatFortyFive, houseForty, plainForty } from '../sim/world/lane/patterns-for-tests.js'

const MICRONS_PER_MICROINCH = 0.0254

const lanes = [
  { pattern: houseForty, laydown: 21, target: 14.5 },
  { pattern: flatForty, laydown: 15, target: 10.5 },
  { pattern: flatFortyFive, laydown: 14, target: 9.5 },
  { pattern: plainForty, laydown: 15, target: 10.5 },
].map(({ pattern, ...line }) => {
  const film = layPattern(pattern)
  return { film, steps: buildStepTable(film), launch: throwOf(line) }
})
const balls = [symmetricSolid, hybrid]
const outcome = newRollOutcome()

type Lane = (typeof lanes)[number]

function roll({ film, steps, launch }: Lane, ball: BallDynamics): RollOutcome {
  rollBall(film, steps, ball, launch, outcome)
  return outcome
}

/** Mean over lanes and balls of the boards at the pins between the two ends of a property's range. */
function effect(ends: (ball: BallSpecification) => readonly [BallDynamics, BallDynamics]): number {
  const sizes = lanes.flatMap((lane) =>
    balls.map((ball) => {
      const [from, to] = ends(ball)
      return Math.abs(metresToBoards(roll(lane, to).lateralAtPinsMetres - roll(lane, from).lateralAtPinsMetres))
    }),
  )
  return sizes.reduce((sum, size) => sum + size, 0) / sizes.length
}

/** A ball with some part of its friction law replaced. */
const withFriction = (ball: BallSpecification, change: Partial<FrictionLaw>): BallDynamics => ({
  ...dynamicsOf(ball),
  friction: prepareFriction({ ...coverFriction(ball.cover, ball.surfaceGrit, ball.polished), ...change }),
})

const withCarried = (ball: BallSpecification, share: number): BallDynamics => {
  const dynamics = dynamicsOf(ball)
  return { ...dynamics, carriedFilmShare: share * (1 - dynamics.freshCoverShare) }
}

const withCore = (ball: BallSpecification, change: Partial<BallSpecification>): BallDynamics =>
  dynamicsOf({ ...ball, ...change })

/** From the smoothest to the roughest finish that reactive covers get: polished over 4000 grit, sanded at 500. */
const reactive = (['solid', 'hybrid', 'pearl'] as const).flatMap((cover) => [
  coverFriction(cover, 500, false),
  coverFriction(cover, 4000, true),
])
const spanOf = (part: keyof FrictionLaw): readonly [number, number] => {
  const values = reactive.map((law) => law[part])
  return [Math.min(...values), Math.max(...values)]
}

// The ball-motion study of the governing body (2008; 59 balls, 18 properties) ranks surface roughness first, then friction on
// oil, roughness spacing, friction on a dry lane, oil absorption, then RG, differential, and near the end the centre of mass.
describe('6. what a ball’s properties are worth', () => {
  const effects = {
    // Limit of a weight class's mean Ra since 2009 is 50 µin; 10 µin for a polished ball is from memory.
    roughness: effect((ball) => [
      { ...dynamicsOf(ball), friction: prepareFriction(frictionAtRoughness(ball.cover, 10 * MICRONS_PER_MICROINCH)) },
      { ...dynamicsOf(ball), friction: prepareFriction(frictionAtRoughness(ball.cover, 50 * MICRONS_PER_MICROINCH)) },
    ]),
    oiledFriction: effect((ball) => {
      const [least, most] = spanOf('oiledFriction')
      return [withFriction(ball, { oiledFriction: least }), withFriction(ball, { oiledFriction: most })]
    }),
    dryFriction: effect((ball) => {
      const [least, most] = spanOf('dryFriction')
      return [withFriction(ball, { dryFriction: least }), withFriction(ball, { dryFriction: most })]
    }),
    absorption: effect((ball) => [withCarried(ball, 1), withCarried(ball, 0.4)]),
    // The legal range since 2010.
    radiusOfGyration: effect((ball) => [
      withCore(ball, { radiusOfGyrationMetres: inchesToMetres(2.46) }),
      withCore(ball, { radiusOfGyrationMetres: inchesToMetres(2.8) }),
    ]),
    // Above the 0.025 in that defines a house ball, up to the legal 0.060 in.
    differential: effect((ball) => [
      withCore(ball, { differentialMetres: inchesToMetres(0.025), intermediateDifferentialMetres: 0 }),
      withCore(ball, { differentialMetres: inchesToMetres(0.06), intermediateDifferentialMetres: 0 }),
    ]),
    // 1 oz of side weight, the limit when the study was made, moves the centre of mass by about 0.45 mm (derived).
    centreOfMass: (() => {
      const sizes = lanes.flatMap(({ film, launch }) =>
        balls.map((ball) => {
          const at = (massOffsetMetres: number): number =>
            new RigidBody(film, dynamicsOf(ball), ball, {
              stepSeconds: 4e-4,
              phaseRadians: 1,
              massOffsetMetres,
            }).roll(launch).lateralMetres
          return Math.abs(metresToBoards(at(0.00045) - at(0)))
        }),
      )
      return sizes.reduce((sum, size) => sum + size, 0) / sizes.length
    })(),
  }
  const ranking = Object.entries(effects)
    .sort(([, a], [, b]) => b - a)
    .map(([name]) => name)
  const figures = Object.entries(effects)
    .map(([name, size]) => `${name} ${size.toFixed(2)}`)
    .join(', ')

  it(`ranks the surface in oil first and second (boards: ${figures})`, () => {
    expect(new Set(ranking.slice(0, 2))).toEqual(new Set(['roughness', 'oiledFriction']))
  })

  it('ranks friction on a dry lane third and the centre of mass last', () => {
    expect(ranking[2]).toBe('dryFriction')
    expect(ranking.at(-1)).toBe('centreOfMass')
  })

  // The study puts absorption before RG and RG (from memory) before differential. Here flare acts through fresh cover, whose
  // law is a choice, and outweighs both; see the figures in the first title.
  it.fails('known gap: ranks absorption before RG and RG before differential', () => {
    expect(effects.absorption).toBeGreaterThan(effects.radiusOfGyration)
    expect(effects.radiusOfGyration).toBeGreaterThan(effects.differential)
  })

  it('slips 1.207 times as long with an RG of 2.80 in as with 2.46 in, and rolls further down the lane', () => {
    // k/(1+k) of the two radii: the sliding sphere; raising the minimum RG to "delay" motion (governing body, 2009).
    const film = emptyFilm()
    const steps = buildStepTable(film)
    const launch = { ...throwOf({ laydown: 20, target: 20, touchdownFeet: 0 }), sineTilt: 0, cosineTilt: 1 }
    const slip = (inches: number): { seconds: number; metres: number } => {
      const ball = {
        ...withCore(symmetricSolid, { differentialMetres: 0, radiusOfGyrationMetres: inchesToMetres(inches) }),
        friction: { dryFriction: 0.1, dryFading: 0.03, oiledFriction: 0.1, floatingPerCubicMicron: 1e15 },
      }
      film.microns.fill(1)
      rollBall(film, steps, ball, launch, outcome)
      const straight = (18.288 - outcome.rollStartMetres) * Math.sqrt(1 + outcome.tangentAtPins ** 2)
      return {
        seconds: outcome.timeToPinsSeconds - straight / outcome.speedAtPinsMetresPerSecond,
        metres: outcome.rollStartMetres,
      }
    }
    const low = slip(2.46)
    const high = slip(2.8)
    expect(Math.abs(high.seconds / low.seconds / 1.207 - 1)).toBeLessThan(0.005)
    expect(high.metres).toBeGreaterThan(low.metres)
  })

  it('hooks a rougher ball earlier in oil and gives it no more friction on a dry lane', () => {
    // Direction of both: popular account of the same study (2021).
    for (const lane of lanes) {
      const start = (grit: number): number => {
        const ball = dynamicsOf({ ...symmetricSolid, surfaceGrit: grit })
        return roll(lane, ball).hookStartMetres
      }
      expect(start(500)).toBeLessThan(start(4000))
    }
    for (const cover of ['solid', 'hybrid', 'pearl', 'urethane', 'plastic'] as const) {
      const rough = coverFriction(cover, 500, false)
      const smooth = coverFriction(cover, 4000, true)
      expect(rough.oiledFriction).toBeGreaterThan(smooth.oiledFriction)
      expect(rough.dryFriction).toBeLessThanOrEqual(smooth.dryFriction)
    }
  })
})
