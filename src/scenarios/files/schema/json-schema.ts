import { z } from 'zod'
import { packSchema } from './contest-pack.js'
import { contestRulesSchema, entrantsSchema } from './contest-rules.js'
import { scenarioSchema } from './scenario.js'

/** The scenario format as JSON Schema (draft 7): whatever the loader accepts, this accepts. */
export function scenarioJsonSchema(): z.core.JSONSchema.BaseSchema {
  return z.toJSONSchema(scenarioSchema, { target: 'draft-07', io: 'input' })
}

/** The same of contest rules, of packs and of a list of entrants. */
export function contestJsonSchema(of: 'rules' | 'pack' | 'entrants'): z.core.JSONSchema.BaseSchema {
  const schema = { rules: contestRulesSchema, pack: packSchema, entrants: entrantsSchema }[of]
  return z.toJSONSchema(schema, { target: 'draft-07', io: 'input' })
}
