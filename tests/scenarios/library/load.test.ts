import { mkdtempSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { stringify } from 'yaml'
import { scenarioFrom } from '../../../src/scenarios/files/scenario/scenario.js'
import { ScenarioError } from '../../../src/scenarios/files/text/scenario-error.js'
import { locateNowhere, readSourceText } from '../../../src/scenarios/files/text/source-text.js'
import { builtInScenario } from '../../../src/scenarios/library/library.js'
import { loadScenario } from '../../../src/scenarios/library/load.js'

type Loose = Record<string, unknown>
const house = (): Loose => JSON.parse(JSON.stringify(builtInScenario('house-forty')))

function sentencesOf(text: string): readonly string[] {
  try {
    scenarioFrom('lane', readSourceText('lane.yaml', text))
  } catch (fault) {
    if (fault instanceof ScenarioError) return fault.sentences
    throw fault
  }
  return []
}

describe('loading a scenario', () => {
  it('turns the trade’s units into SI', () => {
    const pass = {
      direction: 'reverse',
      boards: [3, 37],
      microlitresPerBoard: 62.5,
      fromFeet: 4,
      toFeet: 40,
      taperFeet: 2,
    }
    const { setup } = scenarioFrom(
      'house',
      locateNowhere('house', { ...house(), lanes: [{ name: 'lane 1', passes: [pass] }] }),
    )
    const [lane] = setup.lanes
    if (lane.oil.kind !== 'pattern') throw new Error('a written pattern was expected')
    expect(lane.oil.pattern.passes).toEqual([
      {
        direction: 'reverse',
        fromBoard: 3,
        toBoard: 37,
        microlitresPerBoard: 62.5,
        // 1 ft = 0.3048 m, 1 in = 0.0254 m, 1 lb = 0.45359237 kg, exactly (international yard and pound, 1959).
        fromMetres: 4 * 0.3048,
        toMetres: 40 * 0.3048,
        taperMetres: 2 * 0.3048,
        strokes: 1,
      },
    ])
    expect(setup.bag[0].massKilograms).toBeCloseTo(15 * 0.45359237, 12)
    expect(setup.bag[0].radiusOfGyrationMetres).toBeCloseTo(2.48 * 0.0254, 12)
  })

  it('names every fault at once, each with its line, what was found and what is allowed', () => {
    const text = [
      'version: 1',
      'title: Three faults',
      'gmaes: 3',
      'lanes:',
      '  - name: lane 1',
      '    passes:',
      '      - { direction: sideways, boards: [2, 38], microlitresPerBoard: 50, fromFeet: 0, toFeet: 40 }',
      `bag: ${JSON.stringify(house().bag)}`,
      `bowler: ${JSON.stringify(house().bowler)}`,
      'games: 40',
    ].join('\n')
    const sentences = sentencesOf(text)
    expect(sentences).toEqual([
      expect.stringMatching(/^lane\.yaml:3:1 gmaes: there is no such field; allowed is one of the fields .*games/),
      'lane.yaml:7:22 lanes 1 > passes 1 > direction: found "sideways"; allowed is one of forward, reverse.',
      'lane.yaml:10:8 games: found 40; allowed is a whole number from 1 to 12.',
    ])
  })

  it.each<[string, (scenario: Loose) => void, RegExp]>([
    ['a missing field', (s) => delete s.games, /games: missing; allowed is a whole number from 1 to 12\.$/],
    ['a bag without balls', (s) => (s.bag = []), /bag: found \[\]; allowed is a list of 1 to 8 balls\.$/],
    [
      'three lanes',
      (s) => (s.lanes = [1, 2, 3].map(() => (house().lanes as unknown[])[0])),
      /allowed is a list of 1 to 2 lanes/,
    ],
    ['a lane with neither kind of oil', (s) => (s.lanes = [{ name: 'lane 1' }]), /has neither\.$/],
    [
      'two balls of one name',
      (s) => (s.bag as unknown[]).push((s.bag as unknown[])[0]),
      /already called sanded-asymmetric/,
    ],
    // Limit of the governing bodies' equipment specifications: differential at most 0.060 in.
    [
      'a ball outside the rules',
      (s) => ((s.bag as Loose[])[0].differentialInches = 0.07),
      /The differential is 0\.070 in, allowed is 0\.000 to 0\.060 in\./,
    ],
    [
      'a field bowler with a ball nobody has',
      (s) =>
        (s.field = [
          { name: 'Ansa', hand: 'right', style: 'tweener', level: '200', ball: 'marble', feet: 24, target: 12 },
        ]),
      /There is no ball "marble"/,
    ],
    [
      'boards the wrong way round',
      (s) => ((s.lanes as { passes: Loose[] }[])[0].passes[0].boards = [38, 2]),
      /write \[2, 38\]/,
    ],
    ['text where a number should be', (s) => (s.games = 'three'), /games: found "three"; allowed is a whole number/],
    [
      'no bowler',
      (s) => delete s.bowler,
      /bowler: missing; allowed is a bowler with level, hand .* --own-bowler prints\.$/,
    ],
    [
      'a level nobody has',
      (s) => {
        s.bowler = { level: 'golden', hand: 'right' }
      },
      /bowler > level: found "golden"; allowed is one of elite, 220, 200, 180, 160, recreational, own\.$/,
    ],
    [
      'another version',
      (s) => (s.version = 2),
      /version: found 2, of a newer Dryboard; this one reads version 1 and leaves the file as it is\.$/,
    ],
  ])('answers %s with one sentence', (_what, spoil, sentence) => {
    const scenario = house()
    spoil(scenario)
    const sentences = sentencesOf(stringify(scenario))
    expect(sentences).toHaveLength(1)
    expect(sentences[0]).toMatch(sentence)
    expect(sentences[0]).toMatch(/^lane\.yaml:\d+:\d+ /)
  })

  it('answers broken notation with its line', () => {
    expect(sentencesOf('title: one\ntitle: two\n')[0]).toMatch(/^lane\.yaml:2:\d+: .*twice/)
    expect(sentencesOf('lanes: [1, 2\n')[0]).toMatch(/^lane\.yaml:\d+:\d+: /)
  })

  it.each([
    ['a bracket left open', 'a: [1, 2\nb: 3\n', 2, /not closed: \] is missing\.$/],
    ['a brace left open before a comment', 'a: { b: 1 #\nc: 2\n', 2, /not closed: \} is missing\.$/],
    ['a quote left open', 'a: "x\nb: 2\n', 3, /not closed: " is missing\.$/],
    ['a tab', 'a:\n\tb: 1\n', 2, /begins with a tab; lines are indented with spaces\.$/],
    ['two names on a line', 'a: b: c\n', 1, /two names with a colon on one line/],
    ['a line too far in', 'a: 1\n  b: 2\n', 1, /The line after this one is indented too far\.$/],
    ['an item without its dash', 'a:\n  - x: 1\n   y: 2\n', 3, /has no "- " before it\.$/],
  ])('answers %s with one sentence a writer understands, at its line', (_slip, text, line, sentence) => {
    const sentences = sentencesOf(text)
    expect(sentences).toHaveLength(1)
    expect(sentences[0]).toMatch(new RegExp(`^lane\\.yaml:${line}:\\d+: `))
    expect(sentences[0]).toMatch(sentence)
  })

  it('tells what only two fields together have wrong along with all else, and what was nearest', () => {
    const { bag, ...rest } = house() as { bag: { id: string }[] } & Record<string, unknown>
    const field = [{ name: 'Ansa', hand: 'right', level: '200', ball: 'symetric-solid', feet: 24, target: 13 }]
    const sentences = sentencesOf(stringify({ ...rest, bag, field, games: 0, practiseThrows: 3, takeBalls: 8 }))
    expect(sentences).toHaveLength(4)
    expect(sentences.join('\n')).toMatch(/games: found 0/)
    expect(sentences.join('\n')).toMatch(/practiseThrows: there is no such field; .*; nearest is practiceThrows\./)
    expect(sentences.join('\n')).toMatch(/takeBalls: A bag of 6 leaves no choice of 8/)
    expect(sentences.join('\n')).toMatch(
      /field 1 > ball: There is no ball "symetric-solid" .*; nearest is symmetric-solid\./,
    )
  })

  it('names the fields that a missing table needs', () => {
    const bowler = { level: 'own', name: 'Me', hand: 'right' }
    const sentences = sentencesOf(stringify({ ...house(), bowler }))
    expect(sentences[0]).toMatch(
      /bowler > strike: missing; allowed is a release with speedMph, spinRpm, rotationDegrees, tiltDegrees, loftFeet\.$/,
    )
  })

  it('answers any text at all with sentences or a scenario, never with another error', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 200 }), (text) => void sentencesOf(text)),
      { numRuns: 300 },
    )
    fc.assert(
      fc.property(fc.jsonValue(), (data) => void sentencesOf(JSON.stringify(data))),
      { numRuns: 300 },
    )
  })

  it('answers any single wrong value in a sound file with a sentence at that place', () => {
    const places = Object.keys(house())
    fc.assert(
      fc.property(
        fc.constantFrom(...places),
        fc.constantFrom<unknown>(null, -1, 1e9, true, 'x'.repeat(5000), [[]], { no: 1 }),
        (place, wrong) => {
          const scenario = { ...house(), [place]: wrong }
          const sentences = sentencesOf(stringify(scenario))
          expect(sentences.length).toBeGreaterThan(0)
          for (const sentence of sentences) expect(sentence).toContain(` ${place}`)
        },
      ),
      { numRuns: 200 },
    )
  })

  it('refuses a file that is not there, names the built-in ones near it and says where all are', async () => {
    await expect(loadScenario('house-fourty.yaml')).rejects.toMatchObject({
      missing: true,
      sentences: [expect.stringMatching(/near it: house-forty\); dryboard scenario list names them all\.$/)],
    })
    await expect(loadScenario('flat')).rejects.toThrow(/near it: flat-forty, flat-forty-five/)
  })

  it('does not mistake a name every object has for a built-in scenario', async () => {
    await expect(loadScenario('constructor')).rejects.toMatchObject({ missing: true })
  })

  it('reads JSON as it reads YAML', async () => {
    const path = join(mkdtempSync(join(tmpdir(), 'dryboard-')), 'mine.json')
    writeFileSync(path, JSON.stringify(house()))
    const loaded = await loadScenario(path)
    expect(loaded.name).toBe('mine')
    expect({ ...loaded.setup, name: 'house-forty' }).toEqual((await loadScenario('house-forty')).setup)
  })

  it('keeps a checked scenario as it is when it is checked again', () => {
    const once = scenarioFrom('house', locateNowhere('house', house()))
    expect(scenarioFrom('house', locateNowhere('house', JSON.parse(JSON.stringify(once.data))))).toEqual(once)
  })

  it('takes a bowler written figure by figure, and a level as number or word', () => {
    const own = {
      level: 'own',
      name: 'Dorrit',
      hand: 'left',
      strike: { speedMph: 16, spinRpm: 280, rotationDegrees: 45, tiltDegrees: 15, loftFeet: 1 },
      spare: { speedMph: 17, spinRpm: 200, rotationDegrees: 8, tiltDegrees: 15, loftFeet: 1 },
      error: { laydownBoards: 0.6, angleDegrees: 0.2, speedMph: 0.4, spinRpm: 12, rotationDegrees: 3 },
      spareError: { laydownBoards: 0.5, angleDegrees: 0.2, speedMph: 0.4, spinRpm: 12, rotationDegrees: 3 },
    }
    const bowlerOf = (bowler: unknown) => scenarioFrom('x', locateNowhere('x', { ...house(), bowler })).setup.bowler
    expect(bowlerOf(own)).toMatchObject({ level: 'own', name: 'Dorrit', hand: 'left' })
    // 1 mph = 0.44704 m/s exactly.
    expect(bowlerOf(own).strike.speedMetresPerSecond).toBeCloseTo(16 * 0.44704, 12)
    expect(bowlerOf({ level: 180, hand: 'right' })).toEqual(bowlerOf({ level: '180', hand: 'right' }))
    expect(() => bowlerOf({ ...own, strike: { ...own.strike, speedMph: 90 } })).toThrow(
      /bowler > strike > speedMph: found 90/,
    )
  })
})
