import { basename } from 'node:path'
import { Document, isMap } from 'yaml'
import type { Scenario } from '../files/scenario/scenario.js'
import type { DrillInput } from '../files/schema/drill.js'
import { DRILL_VERSION } from '../files/schema/drill.js'
import type { ScenarioInput } from '../files/schema/scenario.js'
import { ScenarioError } from '../files/text/scenario-error.js'
import { flowRows } from '../library/commented.js'
import type { DebriefReport } from '../reports/debrief/debrief-report.js'
import type { BlockRecord } from '../store/record.js'
import type { Replay } from '../store/replay.js'
import { type FramePlace, noSuchFrame } from '../words/frame-place.js'
import { LOOK_FOR_TO_WRITE } from './load-drill.js'

type Position = DrillInput['positions'][number]

/** Positions with the scenarios they are played on, which a drill carries in itself. */
export interface DrillPart {
  readonly positions: readonly Position[]
  readonly scenarios: Readonly<Record<string, ScenarioInput>>
}

/** A block as it was read from its record, and where that lies. */
interface ReadBlock {
  readonly record: BlockRecord
  readonly replay: Replay
  readonly path: string
}

const DEAREST = 3

/** How many throws are the player's, and what to look for, where the coach has said. */
export interface DrillWords {
  readonly throws: number
  readonly lookFor?: string
}

/** The start of a scenario; one that is built in is named and not carried along. */
export function startOf(scenario: Scenario, isBuiltIn: boolean, seed: string, words: DrillWords): DrillPart {
  const { throws, lookFor = LOOK_FOR_TO_WRITE } = words
  const position = { scenario: scenario.name, seed, throws, lookFor }
  return { positions: [position], scenarios: isBuiltIn ? {} : { [scenario.name]: scenario.data } }
}

/** Where a block stood before the first ball of each of some frames. @throws ScenarioError */
export function framesOf(
  { record, replay, path }: ReadBlock,
  frames: readonly FramePlace[],
  { throws, lookFor }: DrillWords,
): DrillPart {
  const ended = replay.states[replay.states.length - 1]
  const places = frames.map((at) => {
    const { game, frame } = at
    const place = ended.throws.findIndex(({ spot }) => spot.game === game && spot.frame === frame)
    if (place < 0) throw noSuchFrame(path, at)
    return { place, lookFor: lookFor ?? `Frame ${game}-${frame}. ${LOOK_FOR_TO_WRITE}` }
  })
  return partOf(record, path, places, throws)
}

/**
 * Where a block stood before the choices of the player's own that cost most. What was best stays out of the file, which the player
 * gets: `dryboard drill key` and `dryboard drill results` work it out for the coach.
 */
export function dearestOf(
  { record, replay, path }: ReadBlock,
  report: DebriefReport,
  { throws, lookFor = LOOK_FOR_ASKED }: DrillWords,
): DrillPart {
  const ended = replay.states[replay.states.length - 1]!
  const places = report.throws
    .flatMap(({ fair, counted }, place) => (fair && counted && fair.givenAwayPins > 0 ? [{ place, fair }] : []))
    .sort((a, b) => b.fair.givenAwayPins - a.fair.givenAwayPins)
    .slice(0, DEAREST)
    .map(({ place }) => {
      const { game, frame } = ended.throws[place]!.spot
      return { place, lookFor: `Frame ${game}-${frame}. ${lookFor}` }
    })
  if (places.length === 0) throw new ScenarioError([`${path}: no choice in it cost anything; say frames with --at.`])
  return partOf(record, path, places, throws)
}

/** What is asked of a choice that cost much, for whoever does not word it better. */
const LOOK_FOR_ASKED = 'What had the throws so far shown of the lane, and what does that ask for?'

function partOf(
  record: BlockRecord,
  path: string,
  places: readonly { readonly place: number; readonly lookFor: string }[],
  throws: number,
): DrillPart {
  const name = basename(path, '.json')
  return {
    positions: places.map(({ place, lookFor }) => ({
      scenario: name,
      seed: record.seed,
      decisions: record.decisions.slice(0, place).map(({ standing: _standing, by: _by, ...decision }) => decision),
      throws,
      lookFor,
    })),
    scenarios: { [name]: record.scenario },
  }
}

/** A drill as YAML with comments, to be worded and sent. */
export function drillText(title: string, parts: readonly DrillPart[]): string {
  const scenarios = Object.assign({}, ...parts.map((part) => part.scenarios)) as Record<string, ScenarioInput>
  const document = new Document(
    {
      version: DRILL_VERSION,
      title,
      positions: parts.flatMap(({ positions }) => positions),
      ...(Object.keys(scenarios).length > 0 ? { scenarios } : {}),
    },
    { aliasDuplicateObjects: false },
  )
  document.commentBefore =
    " A Dryboard drill: moments to decide, one after the other. Check it with: dryboard drill FILE --check. Play it with: dryboard drill FILE.\n Each position names a scenario (one of scenarios below, a file beside this one, or a built-in one), the seed, what was thrown before,\n how many throws are the player's, and what is told after the last of them."
  flowRows(document.get('positions'), 'decisions')
  const carried = document.get('scenarios')
  if (isMap(carried))
    for (const { value } of carried.items) if (isMap(value)) flowRows(value.get('lanes', true), 'passes')
  return document.toString({ lineWidth: 0 }).trimEnd()
}
