import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { stringify } from 'yaml'
import { scenarioFrom } from '../../../src/scenarios/files/scenario/scenario.js'
import { locateNowhere, readSourceText } from '../../../src/scenarios/files/text/source-text.js'
import { commentedScenario } from '../../../src/scenarios/library/commented.js'
import { builtInNames, builtInScenario } from '../../../src/scenarios/library/library.js'
import { MAKERS, UNKNOWN_ORIGIN } from '../../../src/scenarios/store/origin.js'
import { blockNames, recordFromText, recordText } from '../../../src/scenarios/store/record.js'
import { RECORD_FORMAT, RECORD_VERSION } from '../../../src/scenarios/store/record-schema.js'

const text = fc
  .string({ unit: 'grapheme', minLength: 1, maxLength: 60 })
  .filter((one) => /^[\u0020-\u007e\u00a0-\uffff]*$/.test(one))
const half = (least: number, most: number) => fc.integer({ min: 2 * least, max: 2 * most }).map((halves) => halves / 2)

/** Any built-in scenario with other words and figures in it, all of them allowed. */
const scenario = fc
  .record({
    name: fc.constantFrom(...builtInNames()),
    title: text,
    notes: fc
      .string({ unit: 'grapheme', maxLength: 80 })
      .filter((one) => /^[\n\u0020-\u007e\u00a0-\uffff]*$/.test(one)),
    games: fc.integer({ min: 1, max: 12 }),
    practiceThrows: fc.integer({ min: 0, max: 30 }),
    speedMph: fc.double({ min: 0.01, max: 2, noNaN: true }),
    posted: fc.constantFrom('sheet' as const, 'length' as const, 'nothing' as const),
  })
  .map(({ name, speedMph, ...rest }) => ({ ...builtInScenario(name)!, ...rest, seeing: { speedMph } }))

const decision = fc.record({
  ball: fc.constantFrom('weak-pearl', 'urethane'),
  feet: half(8, 46),
  target: half(2, 30),
  speed: fc.constantFrom('softer' as const, 'usual' as const, 'firmer' as const),
  release: fc.constantFrom('strike' as const, 'spare' as const),
  standing: fc.integer({ min: 0, max: 1023 }),
})

describe('round trips', () => {
  it('scenario to YAML, JSON and commented YAML and back', () => {
    fc.assert(
      fc.property(scenario, (data) => {
        const straight = scenarioFrom('any', locateNowhere('any', data))
        for (const written of [
          stringify(straight.data),
          JSON.stringify(straight.data),
          commentedScenario(straight.data),
        ]) {
          expect(scenarioFrom('any', readSourceText('any.yaml', written))).toEqual(straight)
        }
      }),
      { numRuns: 60 },
    )
  })

  it('record to text and back', () => {
    fc.assert(
      fc.property(scenario, text, fc.array(decision, { maxLength: 8 }), (data, seed, decisions) => {
        const played = scenarioFrom('any', locateNowhere('any', data))
        const known = { format: RECORD_FORMAT, version: RECORD_VERSION, block: null, origin: UNKNOWN_ORIGIN } as const
        const by = decisions.map((one, index) => ({ ...one, by: MAKERS[index % MAKERS.length]! }))
        const record = { ...known, ...blockNames(played, seed), decisions: by }
        expect(recordFromText('any.json', recordText(record))).toEqual(record)
      }),
      { numRuns: 60 },
    )
  })
})
