import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { isDue, LADDER_DAYS, nextRung, type Rung } from '../../../../src/sim/analysis/practice/ladder.js'
import {
  type Answered,
  calibrationOf,
  learnerFrom,
  normsOf,
  profileOf,
} from '../../../../src/sim/analysis/practice/learner.js'
import { DECIDED_SKILLS, type DecidedSkill, type Position } from '../../../../src/sim/analysis/practice/position.js'
import { FIRST_RATINGS, rated, soundChance } from '../../../../src/sim/analysis/practice/rating.js'
import { answerKey, familyKey, skillShares } from '../../../../src/sim/analysis/practice/schedule.js'
import {
  answeredOn,
  beginPractice,
  drawnOn,
  isTest,
  sessionLength,
  supportFor,
} from '../../../../src/sim/analysis/practice/session.js'
import { stream } from '../../../../src/sim/random.js'
import { decide } from './positions-for-tests.js'

const draw = (seed: string) => stream({ seed, game: 0, frame: 0, ball: 0, purpose: 'study' })

describe('the ladder', () => {
  it('brings what goes well back after 1, 3, 7 and 21 days, and then every 21', () => {
    let rung: Rung | null = null
    let day = 0
    const waits: number[] = []
    for (let time = 0; time < 6; time++) {
      rung = nextRung(rung, day, true)
      waits.push(rung.dueDay - day)
      day = rung.dueDay
    }
    expect(waits).toEqual([...LADDER_DAYS, 21, 21])
  })

  it('begins anew after a lapse, and practice ahead of time climbs no rung', () => {
    const third = nextRung(nextRung(nextRung(null, 0, true), 1, true), 4, true)
    expect(third.dueDay - 4).toBe(7)
    expect(nextRung(third, 5, true).step).toBe(third.step)
    expect(nextRung(third, 11, false)).toEqual({ step: 0, dueDay: 12 })
    expect(isDue(third, 10)).toBe(false)
    expect(isDue(third, 11)).toBe(true)
  })
})

describe('ratings', () => {
  it('give even odds where rating and difficulty are equal, and ten to one at ln 10 (the logistic function)', () => {
    expect(soundChance(1.3, 1.3)).toBeCloseTo(0.5)
    expect(soundChance(Math.log(10), 0)).toBeCloseTo(10 / 11)
  })

  it('settle where a learner is sound as often as predicted', () => {
    const source = draw('elo')
    let ratings = FIRST_RATINGS
    for (let i = 0; i < 3000; i++) ratings = rated(ratings, 'ball', 0.5, source() < 0.8)
    // ln(0.8 / 0.2) above the difficulty; the last updates still move it a little
    expect(ratings.ball.rating).toBeCloseTo(0.5 + Math.log(4), 0)
  })
})

const answered = (skill: DecidedSkill, pins: number, more: Partial<Answered> = {}): Answered => ({
  id: `${skill} ${pins}`,
  kind: 'decide',
  skill,
  family: { length: 'short', shape: 'flat' },
  mode: 'practice',
  pins,
  blindPins: 2,
  difficulty: 0,
  isSound: pins <= 0.5,
  sureShare: null,
  day: 0,
  ...more,
})

const STORE: Position[] = DECIDED_SKILLS.flatMap((skill, s) =>
  Array.from({ length: 30 }, (_, i) =>
    decide(`${skill}${i}`, i % 2 === 0 ? [0, 2, 3, 1.5] : [2, 0, 3, 1.5], skill, {
      length: (['short', 'medium', 'long'] as const)[(i + s) % 3]!,
      shape: (['flat', 'between', 'houseLike'] as const)[i % 3]!,
    }),
  ),
)
const NORMS = normsOf(STORE, Object.fromEntries(DECIDED_SKILLS.map((skill) => [skill, 2])))

describe('the profile', () => {
  it('puts the dearest skill first and draws what is unsure towards the mean', () => {
    const dear = Array.from({ length: 12 }, (_, i) => answered('ball', i % 2 === 0 ? 2 : 3))
    const cheap = DECIDED_SKILLS.slice(2).flatMap((skill) =>
      Array.from({ length: 12 }, (_, i) => answered(skill, i % 3 === 0 ? 0.5 : 0)),
    )
    const profile = profileOf({ answers: [...dear, ...cheap, answered('line', 6)] }, NORMS)
    expect(profile[0]?.skill).toBe('ball')
    const line = profile.find(({ skill }) => skill === 'line')!
    expect(line.pins).toBeLessThan(6)
    expect(line.high - line.low).toBeGreaterThan(profile[0]!.high - profile[0]!.low)
    for (const one of profile) {
      expect(one.low).toBeLessThanOrEqual(one.pins)
      expect(one.pins).toBeLessThanOrEqual(one.high)
    }
  })

  it('does not take hard positions for a poor player', () => {
    const of = (blindPins: number) =>
      profileOf(
        { answers: Array.from({ length: 20 }, () => answered('ball', blindPins / 4, { blindPins })) },
        NORMS,
      ).find(({ skill }) => skill === 'ball')!.pins
    expect(of(4)).toBeCloseTo(of(1), 6)
  })

  it('counts no solved examples', () => {
    const shown = Array.from({ length: 30 }, () => answered('ball', 0, { mode: 'shown' }))
    expect(profileOf({ answers: shown }, NORMS).find(({ skill }) => skill === 'ball')?.answers).toBe(0)
  })

  it('draws a curve of confidence from fifty answers on', () => {
    const sure = Array.from({ length: 50 }, (_, i) => answered('ball', i % 5 === 0 ? 2 : 0, { sureShare: 0.8 }))
    expect(calibrationOf(sure.slice(0, 49))).toBeNull()
    expect(calibrationOf(sure)).toEqual([{ sureShare: 0.8, answers: 50, soundShare: 0.8 }])
  })
})

describe('a session', () => {
  const play = (seed: string, wanted: 5 | 10 | 20 = 20, before: readonly Answered[] = []) => {
    const source = draw(seed)
    let session = beginPractice(
      { store: STORE, perGame: {} },
      learnerFrom(before),
      10,
      { minutes: wanted, kinds: null },
      source,
    )
    const asked: Position[] = []
    const supports: string[] = []
    for (;;) {
      const drawn = drawnOn(session, source)
      if (!drawn) return { session, asked, supports }
      supports.push(supportFor(drawn.session, drawn.position))
      asked.push(drawn.position)
      const said =
        supports.at(-1) === 'worked' ? null : { answer: { kind: 'choice', place: 0 } as const, sureShare: 0.7 }
      session = answeredOn(drawn.session, drawn.position, said).session
    }
  }

  it('never asks for the same answer twice running, nor of the same family, nor the same position', () => {
    fc.assert(
      fc.property(fc.string(), (seed) => {
        const { asked } = play(seed)
        for (const [at, one] of asked.entries()) {
          const last = asked[at - 1]
          if (!last) continue
          expect(answerKey(one)).not.toBe(answerKey(last))
          expect(familyKey(one)).not.toBe(familyKey(last))
        }
        expect(new Set(asked.map(({ id }) => id)).size).toBe(asked.length)
      }),
      { numRuns: 20 },
    )
  })

  it('is as long as planned, its test at the end, without help and on other seeds', () => {
    const { session, asked, supports } = play('plan')
    expect(asked).toHaveLength(sessionLength(session.plan))
    const tested = session.answered.filter(({ mode }) => mode === 'test')
    expect(tested).toHaveLength(session.plan.test)
    expect(isTest(session.plan, session.plan.practice)).toBe(true)
    expect(supports.slice(session.plan.practice).every((support) => support === 'none')).toBe(true)
    const practised = new Set(asked.slice(0, session.plan.practice).map(({ moment }) => moment.seed))
    expect(asked.slice(session.plan.practice).some(({ moment }) => practised.has(moment.seed))).toBe(false)
  })

  it('solves the first of a new family, hints at the second and then asks', () => {
    const { asked, supports, session } = play('support')
    const of = (key: string) => supports.filter((_, at) => at < session.plan.practice && familyKey(asked[at]!) === key)
    const [first, second, ...rest] = of(session.plan.families[0]!)
    expect(first).toBe('worked')
    expect(second).toBe('hint')
    expect(rest.every((support) => support === 'none')).toBe(true)
  })

  it('brings back the families that are due', () => {
    const { session } = play('due', 10, [answered('ball', 0, { day: 3 })])
    expect(session.plan.comeBack).toEqual(['short flat'])
  })

  it('gives the dearest skill the largest part', () => {
    const dear = Array.from({ length: 20 }, (_, i) => answered('spare', i % 2 === 0 ? 2 : 1.5))
    const others = DECIDED_SKILLS.filter((skill) => skill !== 'spare').flatMap((skill) =>
      Array.from({ length: 20 }, () => answered(skill, 0.3)),
    )
    const shares = skillShares(profileOf({ answers: [...dear, ...others] }, NORMS))
    expect([...shares.values()].reduce((sum, one) => sum + one, 0)).toBeCloseTo(1)
    expect(shares.get('spare')!).toBeGreaterThan(0.25)
    expect(Math.min(...shares.values())).toBeGreaterThan(0)
  })
})
