import type { BlockSetup, BlockState, Decision } from '../../sim/block/types.js'
import { leaveName } from '../../sim/pins/leaves.js'
import { radiansToDegrees } from '../../sim/units.js'
import type { Debrief, DebriefedThrow } from '../debrief.js'
import { oilPicture, thickestMicrons } from './oil-picture.js'
import { scoreLines } from './score-lines.js'
import { boardWords, SPEED_WORDS } from './words.js'

/** The debrief as text: the sheet, every choice with its price and the best one, and the oil before and after. */
export function debriefLines(debrief: Debrief): string[] {
  const { throws, firstBallPins, sparePins, ended } = debrief
  const { bag, scoring } = ended.setup
  const label = throws.find((one) => one.grade)?.grade?.label
  return [
    ...ended.balls.flatMap((balls, index) => ['', `Game ${index + 1}`, ...scoreLines(scoring, balls)]),
    '',
    'Choices are ball, feet/target; pins is what a choice gave away, - too close to call.',
    ...bag.map((ball, index) => `  ball ${index + 1} is the ${ball.name}`),
    '',
    columns('where', 'thrown', 'entered', 'left', 'pins', 'best'),
    ...throws.map((one) => throwLine(one, bag)),
    '',
    label
      ? `Given away ${label}: first balls ${firstBallPins.toFixed(1)}, spares ${sparePins.toFixed(1)} pins.`
      : 'Nothing was thrown that counts.',
    ...ended.lanes.flatMap((_, lane) => laneLines(debrief.begun, ended, lane)),
  ]
}

function columns(where: string, thrown: string, entered: string, left: string, pins: string, best: string): string {
  return `${where.padEnd(9)}${thrown.padEnd(18)}${entered.padEnd(11)}${left.padEnd(17)}${pins.padStart(5)}  ${best}`.trimEnd()
}

function throwLine({ record, grade, calledPins }: DebriefedThrow, bag: BlockSetup['bag']): string {
  const { spot, decision, standingAfter, truth } = record
  const angle = radiansToDegrees(truth.entryAngleRadians).toFixed(1)
  return columns(
    spot.phase === 'practice' ? 'practice' : `${spot.game}-${spot.frame}.${spot.ball}`,
    shortDecision(decision, bag),
    Number.isFinite(truth.leftLaneFeet) ? 'gutter' : `${truth.entryBoard.toFixed(1)} ${angle}°`,
    standingAfter === 0 ? 'all down' : leaveName(standingAfter),
    grade ? (calledPins === 0 ? '-' : calledPins.toFixed(1)) : '',
    grade && calledPins > 0 ? shortDecision(grade.best, bag) : '',
  )
}

/** Ball by its place in the bag, feet, target, and what is not usual. */
function shortDecision({ ballId, aim, release }: Decision, bag: BlockSetup['bag']): string {
  const ball = bag.findIndex((one) => one.id === ballId) + 1
  const speed = aim.speedStep === 0 ? '' : ` ${SPEED_WORDS[aim.speedStep]}`
  return `${ball} ${boardWords(aim.feetBoard)}/${boardWords(aim.targetBoard)}${speed}${release === 'spare' ? ' spare' : ''}`
}

function laneLines(begun: BlockState, ended: BlockState, lane: number): string[] {
  const [before, after] = [begun.lanes[lane], ended.lanes[lane]]
  const thickest = thickestMicrons(before.film)
  const wiped = ((after.wipedMicrolitres - before.wipedMicrolitres) / 1000).toFixed(2)
  return [
    '',
    `Oil on ${ended.setup.lanes[lane].name} before the first throw`,
    ...oilPicture(before.film, thickest),
    '',
    `and after the last; ${wiped} mL went off with the balls`,
    ...oilPicture(after.film, thickest),
  ]
}
