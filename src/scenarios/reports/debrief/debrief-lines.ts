import { KNOWN_LABEL } from '../../../sim/analysis/debrief/throw-account.js'
import { radiansToDegrees } from '../../../sim/units.js'
import type { BlockSetup, BlockState } from '../../../sim/world/block/types.js'
import { leaveName } from '../../../sim/world/pins/leaves.js'
import { ledgerLines } from '../../words/ledger-lines.js'
import { oilPicture, thickestMicrons } from '../../words/oil-picture.js'
import { scoreLines } from '../../words/score-lines.js'
import { shortDecision } from '../../words/words.js'
import { wrapped } from '../../words/wrapped.js'
import type { Debrief, DebriefedThrow } from './debrief.js'
import { roadLines } from './road-lines.js'

/** The debrief as text: the sheet, every choice with its price and the best one, where the rest went, and the oil before and after. */
export function debriefLines(debrief: Debrief): string[] {
  const { throws, account, firstBallPins, sparePins, ended } = debrief
  const { bag, scoring } = ended.setup
  const isCounted = throws.some(({ fair }) => fair !== null)
  const { firstBalls, spares } = account.sums
  return [
    ...ended.balls.flatMap((balls, index) => ['', `Game ${index + 1}`, ...scoreLines(scoring, balls)]),
    '',
    'Choices are ball, feet/target. Pins given away: fair by what could be known, which is the grade; oil against the',
    'best with the oil in sight; - nothing worth calling. Best is the best by what could be known.',
    ...bag.map((ball, index) => `  ball ${index + 1} is the ${ball.name}`),
    '',
    columns('where', 'thrown', 'entered', 'left', 'fair', 'oil', 'best'),
    ...throws.map((one) => throwLine(one, bag)),
    '',
    ...(isCounted
      ? [
          `Given away by what could be known: first balls ${firstBalls.chargedPins.toFixed(1)}, spares ${spares.chargedPins.toFixed(1)} pins.`,
          `Given away ${KNOWN_LABEL}: first balls ${firstBallPins.toFixed(1)}, spares ${sparePins.toFixed(1)} pins.`,
          ...ledgerLines(account),
          ...findingLines(debrief),
          ...roadLines(
            throws.filter(({ counted }) => counted),
            bag,
          ),
        ]
      : ['Nothing was thrown that counts.']),
    ...ended.lanes.flatMap((_, lane) => laneLines(debrief.begun, ended, lane)),
  ]
}

function columns(
  where: string,
  thrown: string,
  entered: string,
  left: string,
  fair: string,
  oil: string,
  best: string,
): string {
  return `${where.padEnd(9)}${thrown.padEnd(18)}${entered.padEnd(11)}${left.padEnd(17)}${fair.padStart(5)}${oil.padStart(6)}  ${best}`.trimEnd()
}

function throwLine({ record, fair, account: { graded }, counted }: DebriefedThrow, bag: BlockSetup['bag']): string {
  const { spot, decision, standingAfter, truth } = record
  const angle = radiansToDegrees(truth.entryAngleRadians).toFixed(1)
  return columns(
    spot.phase === 'practice' ? 'practice' : `${spot.game}-${spot.frame}.${spot.ball}`,
    shortDecision(decision, bag),
    Number.isFinite(truth.leftLaneFeet) ? 'gutter' : `${truth.entryBoard.toFixed(1)} ${angle}°`,
    standingAfter === 0 ? 'all down' : leaveName(standingAfter),
    !counted ? 'given' : fair ? pinsOrDash(fair.givenAwayPins) : '',
    graded && counted ? pinsOrDash(graded.knownLostPins) : '',
    counted && fair && fair.givenAwayPins > 0 ? shortDecision(fair.best, bag) : '',
  )
}

const pinsOrDash = (pins: number): string => (pins < 0.05 ? '-' : pins.toFixed(1))

function findingLines({ account: { tags, untoldPins, luck, cautions } }: Debrief): string[] {
  const findings = tags.flatMap(({ words, evidence, practise }) => [
    ...wrapped(words, '- '),
    ...wrapped(
      `It stands on: ${evidence.map((one) => `${one.words} ${valueWords(one.value, one.unit)}`).join('; ')}.`,
      '  ',
    ),
    ...wrapped(`To practise: ${practise}`, '  '),
  ])
  return [
    '',
    'Findings, the costliest first',
    ...(findings.length > 0 ? findings : ['- Nothing that cost enough to name.']),
    ...untoldLines(untoldPins),
    ...luck.flatMap(({ words }) => wrapped(words, '- ')),
    ...(findings.length > 0 ? cautions.flatMap((words) => wrapped(words)) : []),
  ]
}

/** With it the findings add up to what the choices cost. */
function untoldLines(pins: number): string[] {
  return pins < 0.05
    ? []
    : wrapped(`Beside these ${pins.toFixed(1)} pins, in pieces too small or too unsure to name.`, '- ')
}

function valueWords(value: number, unit: 'pins' | 'boards' | 'share' | 'throws'): string {
  if (unit === 'share') return `${Math.round(value * 100)} %`
  return `${unit === 'throws' ? value : value.toFixed(1)} ${unit}`
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
