import { z } from 'zod'
import { scenarioSchema } from './scenario.js'

/** The scenario format as JSON Schema (draft 7): whatever the loader accepts, this accepts. */
export function scenarioJsonSchema(): z.core.JSONSchema.BaseSchema {
  return z.toJSONSchema(scenarioSchema, { target: 'draft-07', io: 'input' })
}
