import { evidenceOf, type OpenPosition, thrownAt } from '../../../scenarios/practice/open-position.js'
import { vanishesAt } from '../../../scenarios/practice/shown-lines.js'
import { idealAnswerOf } from '../../../sim/analysis/practice/scoring.js'
import { SIGHT_MARKS_FEET, type SightMark, seenMarks } from '../../../sim/analysis/practice/vanishing.js'
import { metresToBoard } from '../../../sim/units.js'
import type { Decision, ThrowRecord } from '../../../sim/world/block/types.js'
import type { BowlerProfile } from '../../../sim/world/bowler/profile.js'
import { FULL_RACK } from '../../../sim/world/pins/leaves.js'
import { type LanePicture, pathTrace, type Trace } from '../../draw/lane-picture.js'
import { laydownBoard, sketchTrace } from '../../parts/sketches.js'
import type { PracticeState } from '../../state/practice-state.js'

const LOOKS = ['last', 'older', 'oldest'] as const

/** The lane as it is shown before an answer: the latest balls as seen, and the line that is being thought of. */
function askedPicture(open: OpenPosition, line: Decision | null): LanePicture {
  const { setup } = open.scenario
  const { bowler } = setup
  const vanishes = vanishesAt(open)
  const traces = evidenceOf(open)
    .slice(-LOOKS.length)
    .reverse()
    .map((record, age) =>
      age === 0 && vanishes !== null
        ? vanishedTrace(record, bowler, vanishes)
        : sketchTrace(record, bowler, LOOKS[age]!),
    )
    .reverse()
  return {
    hand: bowler.hand,
    standing: vanishes === null ? open.state.standing : FULL_RACK,
    traces,
    ...(line
      ? { aim: { laydownBoard: laydownBoard(bowler, line.aim.feetBoard), targetBoard: line.aim.targetBoard } }
      : {}),
  }
}

/** A path as far as it was seen: straight from mark to mark. */
function vanishedTrace(record: ThrowRecord, bowler: BowlerProfile, vanishes: SightMark): Trace {
  const marks = seenMarks(record, vanishes)
  const places = [0, ...SIGHT_MARKS_FEET.slice(0, marks.length)]
  const boards = [laydownBoard(bowler, record.decision.aim.feetBoard), ...marks]
  return {
    boards: Array.from({ length: vanishes + 1 }, (_, feet) => {
      const at = Math.max(
        1,
        places.findIndex((place) => place >= feet),
      )
      const share = (feet - places[at - 1]!) / (places[at]! - places[at - 1]!)
      return boards[at - 1]! + share * (boards[at]! - boards[at - 1]!)
    }),
    firstFeet: 0,
    stepFeet: 1,
    look: 'last',
  }
}

/** The lane once an answer is told: the oil at this shot, and over it the ball that was thrown or the last one. */
function toldPicture(open: OpenPosition, place: number | null): LanePicture {
  const { position, state, scenario } = open
  const film = state.lanes[state.spot!.lane]!.film
  const base = { hand: scenario.setup.bowler.hand, oil: film }
  const truth = ({ truth: { path } }: ThrowRecord, look: 'truth' | 'best') => pathTrace(path.map(metresToBoard), look)
  if (position.kind === 'decide') {
    const record = thrownAt(open, position.answers[place ?? bestPlace(open)]!.decision)
    return { ...base, standing: record.standingAfter, traces: [truth(record, 'truth')] }
  }
  if (position.kind === 'call') {
    const record = thrownAt(open, position.decision)
    return { ...base, standing: record.standingAfter, traces: [truth(record, 'truth')] }
  }
  const last = evidenceOf(open).at(-1)!
  return { ...base, standing: last.standingAfter, traces: [truth(last, 'truth')] }
}

function bestPlace({ position }: OpenPosition): number {
  const ideal = idealAnswerOf(position)
  return ideal.kind === 'choice' ? ideal.place : 0
}

const kept = new WeakMap<OpenPosition, Map<string, LanePicture>>()

/** What the lane shows just now; a ball is thrown once for it, not for every picture. */
export function practicePicture({ stage, open }: PracticeState): LanePicture | null {
  if (!open) return null
  const { position } = open
  const draft = stage.kind === 'asking' || stage.kind === 'sure' ? stage.draft : null
  const place = draft
    ? draft.cursor
    : stage.kind === 'told' && stage.said?.answer.kind === 'choice'
      ? stage.said.answer.place
      : null
  const key = `${stage.kind === 'told'} ${place}`
  const known = kept.get(open) ?? new Map<string, LanePicture>()
  kept.set(open, known)
  const line =
    position.kind === 'call'
      ? position.decision
      : position.kind === 'decide' && place !== null
        ? position.answers[place]!.decision
        : null
  const picture = known.get(key) ?? (stage.kind === 'told' ? toldPicture(open, place) : askedPicture(open, line))
  known.set(key, picture)
  return picture
}
