import { z } from 'zod'
import { line, listOf, oneOf, prose, table, wholeFrom } from './fields.js'
import { scenarioSchema } from './scenario.js'

export const DRILL_VERSION = 1

const decision = table(
  {
    ball: line(40),
    feet: z.number({ error: () => 'a whole or half board' }),
    target: z.number({ error: () => 'a whole or half board' }),
    speed: oneOf('softer', 'usual', 'firmer').default('usual'),
    release: oneOf('strike', 'spare').default('strike'),
  },
  'a decision',
)

const position = table(
  {
    /** One of the drill's own scenarios, a scenario file beside the drill, or a built-in name. */
    scenario: line(200),
    seed: line(80),
    /** What was thrown before the player comes to it. */
    decisions: listOf(decision, 0, 500, 'decisions').default([]),
    /** How many throws the player decides. */
    throws: wholeFrom(1, 60, 'throws').default(1),
    /** What the coach wants seen, told after the last of them. */
    lookFor: prose(2000),
  },
  'a position',
)

/** A drill: moments to decide, one after the other, each with what to look for. */
export const drillSchema = table(
  {
    version: z.literal(DRILL_VERSION, { error: () => String(DRILL_VERSION) }),
    title: line(80),
    positions: listOf(position, 1, 100, 'positions'),
    /** Scenarios by their names, so that a drill can be sent as one file. */
    scenarios: z.record(line(200), scenarioSchema, { error: () => 'scenarios by their names' }).default({}),
  },
  'a drill',
)

export type DrillData = z.output<typeof drillSchema>
export type PositionData = DrillData['positions'][number]
/** A drill as a person writes it. */
export type DrillInput = z.input<typeof drillSchema>
