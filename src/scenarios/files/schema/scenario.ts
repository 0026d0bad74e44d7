import { z } from 'zod'
import { checkAcross } from './across-fields.js'
import { bag, fieldBag } from './ball.js'
import { bowler, fieldBowlers } from './bowler.js'
import { line, numberFrom, oneOf, prose, table, wholeFrom } from './fields.js'
import { lanes } from './lane.js'

const seeing = table(
  {
    arrowsBoards: numberFrom(0.1, 5, 'boards').default(1),
    breakpointBoards: numberFrom(0.1, 5, 'boards').default(1),
    breakpointFeet: numberFrom(0.5, 10, 'feet').default(2),
    speedMph: numberFrom(0.01, 2, 'mph').default(0.1),
  },
  'how finely the eye sees',
)

/** The only version of the file format so far. */
export const SCENARIO_VERSION = 1

/** A scenario file, in the trade's units. The version is the file format's, so that old files stay readable. */
export const scenarioSchema = table(
  {
    /** Where an editor finds the schema of this file; not read. */
    $schema: z.string({ error: () => 'the address of a schema' }).optional(),
    version: z.literal(SCENARIO_VERSION, { error: () => String(SCENARIO_VERSION) }),
    title: line(80),
    purpose: prose(1000).default(''),
    notes: prose(4000).default(''),
    /** Where the luck and the drawn oil are to be the same for all. */
    seed: line(80).optional(),
    lanes,
    posted: oneOf('sheet', 'length', 'nothing').default('nothing'),
    bag,
    takeBalls: wholeFrom(1, 8, 'balls').optional(),
    bowler,
    field: fieldBowlers.default([]),
    fieldBag: fieldBag.default([]),
    fieldFramesBefore: wholeFrom(0, 30, 'frames on each lane').default(0),
    practiceThrows: wholeFrom(0, 30, 'throws on each lane').default(4),
    games: wholeFrom(1, 12),
    scoring: oneOf('ten-pin', 'current-frame').default('ten-pin'),
    seeing: seeing.default({ arrowsBoards: 1, breakpointBoards: 1, breakpointFeet: 2, speedMph: 0.1 }),
  },
  'a scenario',
).superRefine(checkAcross, { when: ({ value }) => typeof value === 'object' && value !== null })

/** A checked scenario as written, defaults filled in; what records and the library hold. */
export type ScenarioData = z.output<typeof scenarioSchema>
/** A scenario as a person writes it, defaults left out. */
export type ScenarioInput = z.input<typeof scenarioSchema>
