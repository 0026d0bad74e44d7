/**
 * Simulated learners practise on the ready positions: `npm run study practice-learners [runs]`, some minutes for 50 runs. Whether the profile finds
 * what each is weak in, whether its intervals hold, how much of practice the scheduler gives it, and what adaptive drawing gains over even drawing.
 *
 *     218 positions, 200 answers a run, 50 runs a learner (5 minutes)
 *     learner              weakest by design came first   share of practice (even 12.5 %)   adaptive over even drawing, pins a game
 *     moves late           50 of 50                       52 %                              +0.73 ± 0.12
 *     misreader            50 of 50                       64 %                              +1.30 ± 0.09
 *     ball-loyal           50 of 50                       68 %                              +0.77 ± 0.42
 *     chaser               50 of 50                       72 %                              +2.28 ± 0.77
 *     noisy all-rounder    none by design                 12 %                              -0.06 ± 0.14
 *     80 % intervals hold 83.8 % of 2,000
 */
import { readyPositions } from '../../src/scenarios/practice/position-set.js'
import {
  type Answered,
  type Learner,
  learned,
  NEW_LEARNER,
  normsOf,
  profileOf,
} from '../../src/sim/analysis/practice/learner.js'
import { type Position, SKILLS, type Skill } from '../../src/sim/analysis/practice/position.js'
import type { SkillNorms } from '../../src/sim/analysis/practice/profile.js'
import { difficultyOf } from '../../src/sim/analysis/practice/rating.js'
import { nextPosition, stoodBestLast } from '../../src/sim/analysis/practice/schedule.js'
import { lossOf } from '../../src/sim/analysis/practice/scoring.js'
import { type RandomSource, stream } from '../../src/sim/random.js'
import { LEARNERS, learnerAnswer, type SimulatedLearner, taught, trueLoss } from './practice/learners.js'

const POSITIONS = 200
/** Positions of one sitting, after which a day goes by. */
const SITTING = 28
const RUNS = 50

interface Practised {
  readonly learner: Learner
  readonly after: SimulatedLearner
}

/** A learner practises 200 positions; `isTaught` whether feedback changes it, `isEven` whether skills are drawn evenly. */
function practise(
  store: readonly Position[],
  norms: SkillNorms,
  started: SimulatedLearner,
  how: { isTaught: boolean; isEven: boolean; draw: RandomSource },
): Practised {
  let learner: Learner = NEW_LEARNER
  let mind = started
  let asked: Position[] = []
  for (let count = 0; count < POSITIONS; count++) {
    const day = Math.floor(count / SITTING)
    if (count % SITTING === 0) asked = []
    const profile = profileOf(learner, norms)
    const even = profile.map((one) => ({ ...one, pinsAGame: 1 }))
    const position = nextPosition(
      store,
      {
        profile: how.isEven ? even : profile,
        ratings: learner.ratings,
        seen: new Set(),
        asked,
        rungs: learner.rungs,
        day,
        stoodBest: stoodBestLast(learner.answers, store),
      },
      how.draw,
    )
    if (!position) continue
    asked.push(position)
    const loss = lossOf(position, learnerAnswer(mind, position, how.draw))
    const answered: Answered = {
      id: position.id,
      kind: position.kind,
      skill: position.skill,
      family: position.family,
      mode: 'practice',
      ...loss,
      difficulty: difficultyOf(position),
      sureShare: null,
      day,
    }
    learner = learned(learner, answered)
    if (how.isTaught) mind = taught(mind, position, loss.pins)
  }
  return { learner, after: mind }
}

const source = (seed: string): RandomSource => stream({ seed, game: 0, frame: 0, ball: 0, purpose: 'study' })
const mean = (list: readonly number[]): number => list.reduce((sum, one) => sum + one, 0) / list.length
const sdOf = (list: readonly number[]): number =>
  Math.sqrt(list.reduce((sum, one) => sum + (one - mean(list)) ** 2, 0) / (list.length - 1))

export async function run([runs = String(RUNS)]: readonly string[]): Promise<void> {
  const { positions: store, perGame } = await readyPositions()
  const norms = normsOf(store, perGame)
  const count = Number(runs)
  let [inside, intervals] = [0, 0]
  console.log(`${store.length} positions, ${POSITIONS} answers a run, ${count} runs a learner; pins a game`)
  for (const learner of LEARNERS) {
    const truths = new Map<Skill, number>(
      SKILLS.map((skill) => [skill, trueLoss(learner, store, skill, source(`truth ${learner.name}`))]),
    )
    const aGame = (skill: Skill): number => truths.get(skill)! * norms[skill].perGame
    const weakest = [...SKILLS].sort((a, b) => aGame(b) - aGame(a))
    let [found, shareOfWeak] = [0, 0]
    const gains: number[] = []
    for (let seed = 0; seed < count; seed++) {
      const fixed = practise(store, norms, learner, {
        isTaught: false,
        isEven: false,
        draw: source(`fixed ${learner.name} ${seed}`),
      })
      const profile = profileOf(fixed.learner, norms)
      if (profile[0]?.skill === weakest[0]) found++
      for (const { skill, low, high, answers } of profile) {
        if (answers === 0) continue
        intervals++
        if (low <= truths.get(skill)! && truths.get(skill)! <= high) inside++
      }
      shareOfWeak += fixed.learner.answers.filter(({ skill }) => skill === weakest[0]).length / POSITIONS / count
      const adaptive = practise(store, norms, learner, {
        isTaught: true,
        isEven: false,
        draw: source(`taught ${learner.name} ${seed}`),
      })
      const even = practise(store, norms, learner, {
        isTaught: true,
        isEven: true,
        draw: source(`taught ${learner.name} ${seed}`),
      })
      const lossOfAll = (mind: SimulatedLearner): number =>
        SKILLS.reduce(
          (sum, skill) => sum + norms[skill].perGame * trueLoss(mind, store, skill, source(`after ${seed}`), 2),
          0,
        )
      gains.push(lossOfAll(even.after) - lossOfAll(adaptive.after))
    }
    const half = (1.96 * sdOf(gains)) / Math.sqrt(gains.length)
    console.log(
      `${learner.name.padEnd(28)} weakest ${weakest[0]} ${aGame(weakest[0]!).toFixed(1)} (designed ${learner.weakness ?? 'none'}; next ${weakest[1]} ${aGame(weakest[1]!).toFixed(1)}); found ${found} of ${count}; share of practice ${(100 * shareOfWeak).toFixed(0)} % against ${(100 / SKILLS.length).toFixed(1)} %; adaptive gains ${mean(gains).toFixed(2)} ± ${half.toFixed(2)} pins a game over even drawing`,
    )
  }
  console.log(`80 % intervals hold ${((100 * inside) / intervals).toFixed(1)} % of ${intervals}`)
}
