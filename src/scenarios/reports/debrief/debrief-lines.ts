import { radiansToDegrees } from '../../../sim/units.js'
import type { BlockSetup, BlockState } from '../../../sim/world/block/types.js'
import { leaveName } from '../../../sim/world/pins/leaves.js'
import { CAUTIONS } from '../../words/cautions.js'
import { findingParagraph, findingWords } from '../../words/finding-words.js'
import { ledgerLines } from '../../words/ledger-lines.js'
import { SHORT_OF_THE_BEST } from '../../words/ledger-words.js'
import { luckWords } from '../../words/luck-words.js'
import { oilPicture, thickestMicrons } from '../../words/oil-picture.js'
import { scoreLines } from '../../words/score-lines.js'
import { pinsWords, shortDecision } from '../../words/words.js'
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
    'Choices are ball, slide/target. Cost is in pins against the best from what you had seen, which is your grade;',
    'oil is pins short of the best if you could see it; - is as good as the best. Best is from what you had seen.',
    ...bag.map((ball, index) => `  ball ${index + 1} is the ${ball.name}`),
    '',
    columns('where', 'thrown', 'entered', 'left', 'cost', 'oil', 'best'),
    ...throws.map((one) => throwLine(one, bag)),
    '',
    ...(isCounted
      ? [
          `Cost of the choices: first balls ${firstBalls.chargedPins.toFixed(1)}, spares ${spares.chargedPins.toFixed(1)} pins.`,
          `Pins ${SHORT_OF_THE_BEST}: first balls ${firstBallPins.toFixed(1)}, spares ${sparePins.toFixed(1)}.`,
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
  cost: string,
  oil: string,
  best: string,
): string {
  return `${where.padEnd(9)}${thrown.padEnd(18)}${entered.padEnd(11)}${left.padEnd(17)}${cost.padStart(5)}${oil.padStart(6)}  ${best}`.trimEnd()
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

function findingLines({ account: { tags, untoldPins, luck }, ended: { setup, throws } }: Debrief): string[] {
  const findings = tags.flatMap((tag) => {
    const words = findingWords(tag, { setup, throws })
    return [
      ...wrapped(findingParagraph(words), '- '),
      ...wrapped(words.figures, '  '),
      ...wrapped(`To practise: ${words.practise}`, '  '),
      `  As a drill: dryboard drill new RECORD --at ${tag.game}-${throws[tag.at].spot.frame}`,
    ]
  })
  const lucky = luck.map((note) => luckWords(note, throws, setup.games, setup.bowler.hand))
  return [
    '',
    'Findings, costliest first',
    ...(findings.length > 0 ? findings : ['- Nothing that cost enough to name.']),
    ...untoldLines(untoldPins),
    ...(lucky.length > 0 ? ['', 'Luck, which grades nothing; + won, - lost'] : []),
    ...lucky.flatMap((words) => wrapped(words, '- ')),
    ...(findings.length > 0 ? ['', ...CAUTIONS.flatMap((words) => wrapped(words))] : []),
  ]
}

/** With it the findings add up to what the choices cost. */
function untoldLines(pins: number): string[] {
  return pins < 0.05 ? [] : wrapped(`Besides, ${pinsWords(pins)} in smaller or less certain pieces.`, '- ')
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
    `and after the last; the balls carried off ${wiped} mL`,
    ...oilPicture(after.film, thickest),
  ]
}
