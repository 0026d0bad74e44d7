import { Ajv } from 'ajv'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { scenarioJsonSchema } from '../../../../src/scenarios/files/schema/json-schema.js'
import { scenarioSchema } from '../../../../src/scenarios/files/schema/scenario.js'
import { builtInNames, builtInScenario } from '../../../../src/scenarios/library/library.js'
import { mutated } from '../text/mutations.js'

// Judged by ajv, a general validator of JSON Schema (draft 7).
const accepts = new Ajv({ strict: false, allErrors: true }).compile(scenarioJsonSchema())

describe('the JSON Schema of scenarios', () => {
  it.each(builtInNames().map((name) => [name]))('takes %s', (name) => {
    accepts(JSON.parse(JSON.stringify(builtInScenario(name))))
    expect(accepts.errors ?? []).toEqual([])
  })

  it('takes all that the loader takes, and refuses every slip of structure that the loader refuses', () => {
    const slips = { taken: 0, refused: 0 }
    fc.assert(
      fc.property(
        fc
          .constantFrom('crankers-ahead', 'three-of-six', 'unseen-draw')
          .chain((name) => mutated(builtInScenario(name))),
        (data) => {
          const loaded = scenarioSchema.safeParse(data)
          if (loaded.success) {
            slips.taken++
            return accepts(data)
          }
          // What only code can check (rules for balls, order of two numbers) a schema cannot say.
          const structural = loaded.error.issues.some(({ code }) => code !== 'custom')
          if (!structural) return true
          slips.refused++
          return !accepts(data)
        },
      ),
      { numRuns: 1500 },
    )
    expect(slips.taken).toBeGreaterThan(50)
    expect(slips.refused).toBeGreaterThan(500)
  })
})
