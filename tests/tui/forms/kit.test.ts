import { beforeAll, describe, expect, it } from 'vitest'
import { type Scenario, scenarioFrom } from '../../../src/scenarios/files/scenario/scenario.js'
import { locateNowhere } from '../../../src/scenarios/files/text/source-text.js'
import { loadScenario } from '../../../src/scenarios/library/load.js'
import {
  type BowlerData,
  ballFaults,
  bowlerFaults,
  EMPTY_KIT,
  freeBallId,
  kitText,
  readKit,
} from '../../../src/scenarios/store/own-kit.js'
import { LEVELS, levelProfile, STYLES } from '../../../src/sim/world/bowler/levels.js'
import { fitScenario } from '../../../src/tui/app/fit.js'
import { BALL_FIELDS, newBall, startingBag } from '../../../src/tui/forms/ball-form.js'
import { bowlerFields, startingBowler } from '../../../src/tui/forms/bowler-form.js'
import {
  type FormKey,
  type FormState,
  openForm,
  pasteInto,
  reduceForm,
  settleTyping,
} from '../../../src/tui/forms/form.js'

const fill = <Draft>(form: FormState<Draft>, fields: Parameters<typeof reduceForm<Draft>>[1], ...keys: FormKey[]) =>
  keys.reduce((now, key) => reduceForm(now, fields, key), form)
const typed = (text: string): FormKey[] => [...text].map((type) => ({ type }))
const line = (label: RegExp) => BALL_FIELDS.findIndex((field) => label.test(field.label))

describe('the form of a ball', () => {
  const ball = { ...newBall(), id: 'mine' }

  it('sands by the usual grits, polishes by a step, and takes figures typed', () => {
    const grit = { ...openForm(ball), cursor: line(/^Sanded/) }
    expect(fill(grit, BALL_FIELDS, 'right').draft.surfaceGrit).toBe(3000)
    expect(fill(grit, BALL_FIELDS, 'left').draft.surfaceGrit).toBe(1500)
    expect(fill(grit, BALL_FIELDS, ...typed('1234'), 'down').draft.surfaceGrit).toBe(1234)
    expect(fill(grit, BALL_FIELDS, ...typed('1239'), 'erase', ...typed('5'), 'down').draft.surfaceGrit).toBe(1235)
    const polish = { ...openForm(ball), cursor: line(/^Polished/) }
    expect(fill(polish, BALL_FIELDS, 'right').draft.polished).toBe(true)
  })

  it('drops what says nothing, and lets no letter into a figure', () => {
    const weight = { ...openForm(ball), cursor: line(/^Weight/) }
    expect(fill(weight, BALL_FIELDS, ...typed('x'))).toEqual(weight)
    expect(settleTyping(fill(weight, BALL_FIELDS, ...typed('.-.')), BALL_FIELDS).draft).toEqual(ball)
  })

  it('takes pasted text into a line: one line of printable characters, no longer than a line is', () => {
    const name = { ...openForm(ball), cursor: line(/^Name/) }
    const control = `Old${String.fromCharCode(7)} faith\r\nful\t`
    expect(settleTyping(pasteInto(name, BALL_FIELDS, control), BALL_FIELDS).draft.name).toBe('Old faithful')
    expect(pasteInto(name, BALL_FIELDS, 'x'.repeat(500)).typing).toBe('x'.repeat(40))
    expect(pasteInto(name, BALL_FIELDS, '\r\n\u001B')).toEqual(name)
  })

  it('takes a pasted figure whole or not at all', () => {
    const weight = { ...openForm(ball), cursor: line(/^Weight/) }
    expect(settleTyping(pasteInto(weight, BALL_FIELDS, ' 14\n'), BALL_FIELDS).draft.weightPounds).toBe(14)
    const refused = pasteInto(weight, BALL_FIELDS, '14,5 lb')
    expect(refused.typing).toBeNull()
    expect(refused.faults).toEqual(['"14,5 lb" was pasted; this line takes digits, a point and a minus sign.'])
  })

  // Limits of the equipment specifications: 16 lb, differential 0.060 in, RG 2.46 to 2.80 in.
  it.each([
    [{ ...ball, weightPounds: 16.5 }, /16/],
    [{ ...ball, differentialInches: 0.07 }, /differential.*0\.060/i],
    [{ ...ball, radiusOfGyrationInches: 2.4 }, /gyration.*2\.460 to 2\.800/i],
    [{ ...ball, intermediateDifferentialInches: 0.055 }, /intermediate/i],
  ])('refuses an illegal ball in a sentence', (illegal, sentence) => {
    const faults = ballFaults(illegal, [])
    expect(faults.join(' ')).toMatch(sentence)
    for (const fault of faults) expect(fault).toMatch(/^[A-Za-z].*\.$/)
  })

  it('finds the library bag legal', () => {
    const bag = startingBag()
    bag.forEach((one, place) => {
      expect(ballFaults(one, bag.toSpliced(place, 1))).toEqual([])
    })
  })

  it('gives every ball a short name of its own', () => {
    expect(freeBallId('My Ball!', [])).toBe('my-ball')
    expect(freeBallId('My Ball', [{ ...ball, id: 'my-ball' }])).toBe('my-ball-2')
    expect(freeBallId('***', [])).toBe('ball')
  })
})

describe('the form of a bowler', () => {
  const own = (from: BowlerData): BowlerData => bowlerFields(from)[0]!.step(from, 1)

  it('starts own figures from the typical bowler that stood there, within what the check allows', () => {
    for (const typical of LEVELS) {
      for (const style of STYLES) {
        const figures = own({ level: typical, hand: 'left', style })
        expect(bowlerFaults(figures), `${typical} ${style}`).toEqual([])
        if (figures.level !== 'own') throw new Error('not own')
        const profile = levelProfile(typical, style, 'left')
        expect(figures.hand).toBe('left')
        expect(figures.strike.speedMph * 0.44704).toBeCloseTo(profile.strike.speedMetresPerSecond, 1)
      }
    }
  })

  it('steps through levels and styles, and goes back to a typical bowler', () => {
    const start = startingBowler('left')
    const [, , level, style] = bowlerFields(start)
    expect(level!.step(start, -1).level).toBe('220')
    const cranker = style!.step(start, 1)
    expect(cranker.level !== 'own' && cranker.style).toBe('cranker')
    expect(own(own(start))).toEqual(start)
  })

  it('says what is wrong with impossible figures', () => {
    const figures = own(startingBowler('right'))
    if (figures.level !== 'own') throw new Error('not own')
    const faults = bowlerFaults({ ...figures, strike: { ...figures.strike, speedMph: 40 } })
    expect(faults.join(' ')).toMatch(/speed.*8 to 28 mph/i)
  })
})

describe('the kit as kept', () => {
  it('comes back as it was', () => {
    const kit = { bag: startingBag(), bowler: startingBowler('left') }
    expect(readKit('kit.json', kitText(kit))).toEqual({ kit })
    expect(readKit('kit.json', kitText(EMPTY_KIT))).toEqual({ kit: EMPTY_KIT })
  })

  it('is refused in one sentence that names the place', () => {
    const [first] = startingBag()
    const heavy = kitText({ bag: [{ ...first!, weightPounds: 20 }], bowler: null })
    for (const text of ['{', '{}', heavy]) {
      const read = readKit('kit.json', text)
      expect('problem' in read && read.problem).toMatch(/^kit\.json.*\.$/)
    }
  })
})

describe('a scenario with the kit in it', () => {
  let scenario: Scenario
  beforeAll(async () => {
    const house = await loadScenario('house-forty')
    const other = { name: 'A', hand: 'right', level: '180', style: 'tweener', ball: 'urethane', feet: 20, target: 10 }
    scenario = scenarioFrom('house', locateNowhere('house', { ...house.data, field: [other] }))
  })

  it('plays own balls and bowler, and leaves the others theirs', () => {
    const [strong, , , , urethane] = startingBag()
    const mine = [
      { ...strong!, surfaceGrit: 500 },
      { ...urethane!, surfaceGrit: 500 },
    ]
    const fitted = fitScenario(scenario, { bag: mine, bowler: startingBowler('left'), seeing: 'finer' })
    expect(fitted.setup.bag.map(({ surfaceGrit }) => surfaceGrit)).toEqual([500, 500])
    expect(fitted.setup.bowler.hand).toBe('left')
    expect(fitted.setup.field[0]!.ball.surfaceGrit).toBe(2000)
    expect(fitted.setup.seeing.arrowsBoardStep).toBe(0.5)
    expect(fitted.setup.lanes).toEqual(scenario.setup.lanes)
  })

  it('is the same scenario where nothing is chosen', () => {
    expect(fitScenario(scenario, { seeing: 'scenario' })).toBe(scenario)
  })
})
