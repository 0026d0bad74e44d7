import { CONTACT_WORDS, moveWords, trimmed } from '../../../scenarios/words/words.js'
import type { ThrowAccount } from '../../../sim/analysis/debrief/throw-account.js'
import { KNOWN_LABEL } from '../../../sim/analysis/oracle/grade.js'
import { metresPerSecondToMph, metresToBoard, radiansToDegrees } from '../../../sim/units.js'
import type { ThrowRecord } from '../../../sim/world/block/types.js'
import { FULL_RACK, leaveName } from '../../../sim/world/pins/leaves.js'
import { spreadRow, textRow } from '../../draw/text-row.js'
import type { Theme } from '../../draw/theme.js'
import { callWords, choiceWords, fellWords, pinsGivenWords, placeWords } from '../../draw/words.js'
import { LANE_FEET } from '../../parts/lane.js'
import { blockOf, counts, type PlayState, pinsGiven } from '../../state/play-state.js'
import { columnsOf } from '../../terminal/fit.js'

/** From this width on there is room for the whole name of the price with the oil in sight. */
const LONG_COLUMNS = 98

/** What became of a throw and why: its grade, the choices, and where the ball went. Six rows. */
export function factRows(play: PlayState, index: number, columns: number, theme: Theme): string[] {
  const block = blockOf(play)
  const { bag, bowler, games } = block.setup
  const record = block.throws[index]!
  const account = play.accounts[index]
  const { decision } = record
  const awaited = account ? '' : textRow(theme, [`Working it out${theme.glyphs.ellipsis}`, 'faint'])
  const best = (lead: string, other: typeof decision | undefined, ink: 'best' | 'known') => {
    if (!other) return awaited
    const words = choiceWords(other, bag)
    const move = ` (${moveWords(decision.aim, other.aim, bowler.hand)})`
    const fits = lead.length + words.length + move.length <= columns
    return textRow(theme, [lead, ink], words, [fits ? move : '', 'faint'])
  }
  const given = textRow(theme, [`${placeWords(record.spot, games)}: `, 'strong'], ...givenSpans(play, index, columns))
  const room = columns - columnsOf(given) - 1
  const fell = fellWords(record).length <= room ? fellWords(record) : leaveName(record.standingAfter)
  return [
    spreadRow(given, textRow(theme, [fell, 'strong']), columns),
    textRow(theme, ['Yours  ', 'truth'], choiceWords(decision, bag)),
    best('Fair   ', account?.graded?.grade.best, 'best'),
    best('Oil    ', account?.graded?.bestKnown, 'known'),
    textRow(theme, entryWords(record), [meantWords(record, account), 'faint']),
    textRow(theme, [lastWords(play, index, record), 'faint']),
  ]
}

function givenSpans(play: PlayState, index: number, columns: number): [string, 'loss' | 'plain' | 'faint'][] {
  if (!counts(play, index)) return [['practice costs nothing', 'plain']]
  const grade = play.grades[index]
  if (grade === undefined) return [['not weighed yet', 'plain']]
  const pins = pinsGiven(grade)
  const ledger = play.accounts[index]?.graded?.ledger
  const known = ledger ? ledger.givenAwayPins + ledger.patternSwingPins + ledger.hiddenPins : null
  return [
    pins > 0 ? [`gave away ${pinsGivenWords(pins)}`, 'loss'] : ['nothing given away', 'plain'],
    known === null
      ? ['', 'faint']
      : [columns >= LONG_COLUMNS ? `, ${known.toFixed(1)} ${KNOWN_LABEL}` : ` (oil ${known.toFixed(1)})`, 'faint'],
  ]
}

function entryWords({ truth }: ThrowRecord): string {
  if (truth.leftLaneFeet < LANE_FEET) return `Off the lane at ${truth.leftLaneFeet.toFixed(0)} ft`
  const angle = radiansToDegrees(truth.entryAngleRadians).toFixed(1)
  const speed = metresPerSecondToMph(truth.entrySpeedMetresPerSecond).toFixed(1)
  return `Entry board ${truth.entryBoard.toFixed(1)} at ${angle} degrees, ${speed} mph`
}

/** The same choice without the bowler's miss. */
function meantWords({ truth }: ThrowRecord, account: ThrowAccount | undefined): string {
  if (!account || truth.leftLaneFeet < LANE_FEET) return ''
  const { entryBoard, entryAngleRadians } = account.paths.choice
  return `; as meant ${entryBoard.toFixed(1)} at ${radiansToDegrees(entryAngleRadians).toFixed(1)}`
}

/** What was called and what came of it; without a call, how the ball rolled. */
function lastWords(play: PlayState, index: number, record: ThrowRecord): string {
  const call = play.calls[index]
  if (!call || record.standingBefore !== FULL_RACK) return rollWords(record)
  const came =
    record.observation.contact === call.contact
      ? 'and so it was'
      : `but it was ${CONTACT_WORDS[record.observation.contact]}`
  return `Called ${callWords(call)}, ${came}`
}

function rollWords({ truth, decision }: ThrowRecord): string {
  const crossed = (metresToBoard(truth.path[29]!) + metresToBoard(truth.path[30]!)) / 2
  const arrows = Number.isNaN(crossed)
    ? []
    : [`target ${trimmed(decision.aim.targetBoard)}, crossed ${crossed.toFixed(1)}`]
  const hook = Number.isFinite(truth.hookStartFeet) ? [`hooks from ${truth.hookStartFeet.toFixed(0)} ft`] : []
  const roll = Number.isFinite(truth.rollStartFeet)
    ? `rolls from ${truth.rollStartFeet.toFixed(0)} ft`
    : 'still skids at the pins'
  const words = [...arrows, ...hook, roll].join('; ')
  return words.charAt(0).toUpperCase() + words.slice(1)
}
