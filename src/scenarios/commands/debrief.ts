import type { Decision } from '../../sim/block/types.js'
import { listPins } from '../../sim/pins/leaves.js'
import { tally } from '../../sim/scoring/game.js'
import { radiansToDegrees } from '../../sim/units.js'
import { type Debrief, type DebriefedThrow, debriefOf } from '../debrief.js'
import { debriefLines } from '../plain/debrief-lines.js'
import { SPEED_WORDS } from '../plain/words.js'
import { type BlockRecord, readRecord } from '../record.js'
import { replayRecord } from '../replay.js'
import type { CommandConsole } from './console.js'
import { EXIT } from './exit-codes.js'
import { jsonText, rounded } from './json.js'

/** Replays a record and prices every choice in it. */
export async function debriefCommand(
  path: string,
  options: { readonly json?: boolean },
  console: CommandConsole,
): Promise<number> {
  const record = await readRecord(path)
  const replay = replayRecord(record, path)
  const debrief = debriefOf(replay)
  if (options.json) {
    console.print(jsonText(debriefReport(record, debrief)))
    return EXIT.fine
  }
  console.print(
    `${replay.scenario.title} (${record.name}), seed ${record.seed}${debrief.ended.spot ? ', unfinished' : ''}`,
  )
  for (const line of debriefLines(debrief)) console.print(line)
  return EXIT.fine
}

function debriefReport(record: BlockRecord, debrief: Debrief) {
  const { ended, throws, firstBallPins, sparePins } = debrief
  return {
    scenario: record.name,
    seed: record.seed,
    model: record.model,
    finished: ended.spot === null,
    games: ended.balls.map((balls) => tally(ended.setup.scoring, balls).total),
    givenAwayFirstBalls: rounded(firstBallPins, 2),
    givenAwaySpares: rounded(sparePins, 2),
    throws: throws.map(throwReport),
  }
}

function throwReport({ record, grade, calledPins }: DebriefedThrow) {
  const { spot, decision, standingBefore, standingAfter, truth } = record
  return {
    phase: spot.phase,
    lane: spot.lane + 1,
    game: spot.game,
    frame: spot.frame,
    ball: spot.ball,
    decision: decisionReport(decision),
    standingBefore: listPins(standingBefore),
    standingAfter: listPins(standingAfter),
    entryBoard: rounded(truth.entryBoard, 2),
    entryAngleDegrees: rounded(radiansToDegrees(truth.entryAngleRadians), 2),
    gutter: Number.isFinite(truth.leftLaneFeet),
    grade: grade && {
      against: grade.label,
      givenAwayPins: rounded(grade.givenAwayPins, 3),
      standardErrorPins: rounded(grade.standardErrorPins, 3),
      calledPins: rounded(calledPins, 3),
      best: decisionReport(grade.best),
    },
  }
}

function decisionReport({ ballId, aim, release }: Decision) {
  return { ball: ballId, feet: aim.feetBoard, target: aim.targetBoard, speed: SPEED_WORDS[aim.speedStep], release }
}
