import { z } from 'zod'
import { packSchema } from './contest-pack.js'
import { contestRulesSchema, entrantsSchema } from './contest-rules.js'
import { DRILL_FIELDS, SCENARIO_FIELDS } from './descriptions.js'
import { drillSchema } from './drill.js'
import { scenarioSchema } from './scenario.js'

type JsonSchema = z.core.JSONSchema.BaseSchema

/** The scenario format as JSON Schema (draft 7): whatever the loader accepts, this accepts. */
export function scenarioJsonSchema(): JsonSchema {
  const schema = z.toJSONSchema(scenarioSchema, { target: 'draft-07', io: 'input' })
  describe(schema, '', SCENARIO_FIELDS)
  return { title: 'A Dryboard scenario', ...schema }
}

/** The same of drills. */
export function drillJsonSchema(): JsonSchema {
  const schema = z.toJSONSchema(drillSchema, { target: 'draft-07', io: 'input' })
  describe(schema, '', DRILL_FIELDS)
  const { scenarios } = schema.properties ?? {}
  const carried = typeof scenarios === 'object' ? scenarios.additionalProperties : undefined
  if (typeof carried === 'object') describe(carried as JsonSchema, '', SCENARIO_FIELDS)
  return { title: 'A Dryboard drill', ...schema }
}

/** Puts to each field what editors show of it; fields of lists and of alternatives are those of the field itself. */
function describe(schema: JsonSchema, path: string, fields: Readonly<Record<string, string>>): void {
  const { properties = {}, items, anyOf = [], oneOf = [] } = schema
  for (const one of [items, ...anyOf, ...oneOf]) {
    if (typeof one === 'object' && !Array.isArray(one)) describe(one as JsonSchema, path, fields)
  }
  for (const [name, field] of Object.entries(properties)) {
    if (typeof field !== 'object') continue
    const own = path === '' ? name : `${path}.${name}`
    const description = fields[own]
    if (description !== undefined) field.description = description
    describe(field as JsonSchema, own, fields)
  }
}

/** The same of contest rules, of packs and of a list of entrants. */
export function contestJsonSchema(of: 'rules' | 'pack' | 'entrants'): z.core.JSONSchema.BaseSchema {
  const schema = { rules: contestRulesSchema, pack: packSchema, entrants: entrantsSchema }[of]
  return z.toJSONSchema(schema, { target: 'draft-07', io: 'input' })
}
