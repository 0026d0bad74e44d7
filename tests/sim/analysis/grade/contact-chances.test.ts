import { describe, expect, it } from 'vitest'
import { beginBelief, filmOf, weights } from '../../../../src/sim/analysis/belief/belief.js'
import { contactChances } from '../../../../src/sim/analysis/grade/contact-chances.js'
import { stream } from '../../../../src/sim/random.js'
import { metresToBoard } from '../../../../src/sim/units.js'
import { dynamicsOf } from '../../../../src/sim/world/ball/dynamics.js'
import { newRollOutcome, rollBall } from '../../../../src/sim/world/ball/motion.js'
import { buildStepTable } from '../../../../src/sim/world/ball/step-table.js'
import { callContact } from '../../../../src/sim/world/block/seen.js'
import type { BlockSetup, Contact, Decision } from '../../../../src/sim/world/block/types.js'
import { levelProfile } from '../../../../src/sim/world/bowler/levels.js'
import { deliveredLaunch } from '../../../../src/sim/world/bowler/release.js'
import { mirrorFilm } from '../../../../src/sim/world/lane/film.js'
import { HEADPIN_DISTANCE_METRES } from '../../../../src/sim/world/lane/geometry.js'
import { setupFor } from '../belief/block-for-tests.js'

const DECISION: Decision = {
  ballId: setupFor('nothing').bag[0].id,
  aim: { feetBoard: 25, targetBoard: 13, speedStep: 0 },
  release: 'strike',
}
const DRAWS = 6000

/** The same by plain drawing: a lane by its weight, then a delivery by five normal numbers (Box and Muller, 1958). */
function drawn(setup: BlockSetup, seed: string): Map<Contact, number> {
  const belief = beginBelief(setup, 0, seed)
  const random = stream({ seed: 'plain-drawing', game: 0, frame: 0, ball: 0, purpose: 'solver', index: 0 })
  const normal = () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random())
  const shares = weights(belief)
  const ends = shares.map((_, index) => shares.slice(0, index + 1).reduce((sum, share) => sum + share, 0))
  const films = Array.from(shares, (_, index) => {
    const own = filmOf(belief, index, 0)
    const film = setup.bowler.hand === 'left' ? mirrorFilm(own) : own
    return { film, steps: buildStepTable(film) }
  })
  const ball = dynamicsOf(setup.bag[0])
  const outcome = newRollOutcome()
  const counts = new Map<Contact, number>()
  for (let draw = 0; draw < DRAWS; draw++) {
    const place = random()
    const index = ends.findIndex((end) => place < end)
    const { film, steps } = films[Math.max(0, index)]
    const normals = [normal(), normal(), normal(), normal(), normal()]
    rollBall(film, steps, ball, deliveredLaunch(setup.bowler, DECISION.aim, 'strike', normals), outcome)
    const contact =
      outcome.leftLaneMetres < HEADPIN_DISTANCE_METRES
        ? 'gutter'
        : callContact(metresToBoard(outcome.lateralAtPinsMetres))
    counts.set(contact, (counts.get(contact) ?? 0) + 1 / DRAWS)
  }
  return counts
}

describe('how a choice was to be expected to meet the rack', () => {
  it.each(['right', 'left'] as const)('agrees with plain drawing, %s-handed', (hand) => {
    const setup = { ...setupFor('nothing'), bowler: levelProfile('200', 'tweener', hand) }
    const chances = contactChances(setup, beginBelief(setup, 0, 'chances'), 0, DECISION)
    expect(chances.reduce((sum, { chance }) => sum + chance, 0)).toBeCloseTo(1, 9)
    expect([...chances].sort((a, b) => b.chance - a.chance)).toEqual(chances)
    const shares = drawn(setup, 'chances')
    for (const contact of new Set([...shares.keys(), ...chances.map((one) => one.contact)])) {
      const chance = chances.find((one) => one.contact === contact)?.chance ?? 0
      const share = shares.get(contact) ?? 0
      // four standard errors of the drawing, and one hundredth for the few deliveries that stand for each lane
      const error = 4 * Math.sqrt((Math.max(share, 1 / DRAWS) * (1 - share)) / DRAWS) + 0.01
      expect(Math.abs(chance - share), `${contact}: ${chance} against ${share} drawn`).toBeLessThan(error)
    }
  })
})
