import { contactWords, fellWords, lineWords } from '../../../scenarios/words/throw-words.js'
import { capital, costWords, moveWords, pinsWords, trimmed } from '../../../scenarios/words/words.js'
import type { ThrowAccount } from '../../../sim/analysis/debrief/throw-account.js'
import { metresPerSecondToMph, metresToBoard, radiansToDegrees } from '../../../sim/units.js'
import type { Decision, ThrowRecord } from '../../../sim/world/block/types.js'
import type { Hand } from '../../../sim/world/bowler/profile.js'
import { FULL_RACK, leaveName } from '../../../sim/world/pins/leaves.js'
import { LANE_FEET } from '../../draw/lane-scale.js'
import { spreadRow, textRow } from '../../draw/text-row.js'
import type { Theme } from '../../draw/theme.js'
import { callWords, placeWords } from '../../draw/words.js'
import { blockOf, counts, type PlayState, pinsGiven } from '../../state/play-state.js'
import { columnsOf } from '../../terminal/fit.js'

/** From this width on the choices are named in full. */
const LONG_COLUMNS = 98
/** Yours, the best from what you had seen, the best if you could see the oil: named in full, and short. */
const LONG_NAMES = ['Yours  ', 'Best from what you had seen  ', 'Best if you could see the oil  '] as const
const SHORT_NAMES = ['Yours          ', 'Best as seen   ', 'Best, oil seen '] as const

/** What became of a throw and why: its grade, the choices, and where the ball went. Six rows. */
export function factRows(play: PlayState, index: number, columns: number, theme: Theme): string[] {
  const block = blockOf(play)
  const { bag, bowler, games } = block.setup
  const record = block.throws[index]!
  const account = play.accounts[index]
  const { decision } = record
  const named = columns >= LONG_COLUMNS ? LONG_NAMES.map((name) => name.padEnd(LONG_NAMES[2].length)) : SHORT_NAMES
  const [yours, asSeen, onOil] = named as unknown as readonly [string, string, string]
  const best = (lead: string, other: typeof decision | undefined, ink: 'best' | 'known') => {
    if (!other) {
      return account ? '' : textRow(theme, [lead, ink], [`working it out${theme.glyphs.ellipsis}`, 'faint'])
    }
    const words = lineWords(other, bag)
    const move = ` (${moveFrom(decision, other, bowler.hand)})`
    const fits = lead.length + words.length + move.length <= columns
    return textRow(theme, [lead, ink], words, [fits ? move : '', 'faint'])
  }
  const given = textRow(theme, [`${placeWords(record.spot, games)}: `, 'strong'], ...givenSpans(play, index, columns))
  const room = columns - columnsOf(given) - 1
  const words = fellWords(record, bowler.hand)
  const fell = words.length <= room ? words : leaveName(record.standingAfter)
  return [
    spreadRow(given, textRow(theme, [fell, 'strong']), columns),
    textRow(theme, [yours, 'truth'], lineWords(decision, bag)),
    best(asSeen, account?.graded?.grade.best, 'best'),
    best(onOil, account?.graded?.bestKnown, 'known'),
    textRow(theme, entryWords(record), [meantWords(record, account), 'faint']),
    textRow(theme, [lastWords(play, index, record), 'faint']),
  ]
}

function givenSpans(play: PlayState, index: number, columns: number): [string, 'loss' | 'plain' | 'faint'][] {
  if (!counts(play, index)) return [['practice costs nothing', 'plain']]
  const grade = play.grades[index]
  if (grade === undefined) return [['not weighed yet', 'plain']]
  const pins = pinsGiven(grade)
  const known = play.accounts[index]?.graded?.knownLostPins ?? null
  const cost = costWords(pins)
  return [
    [cost.charAt(0).toLowerCase() + cost.slice(1), pins > 0 ? 'loss' : 'plain'],
    known === null || columns < LONG_COLUMNS
      ? ['', 'faint']
      : [
          `; ${pinsWords(Math.abs(known))} ${known < 0 ? 'above' : 'short of'} the best if you could see the oil`,
          'faint',
        ],
  ]
}

/** The way from one choice to another, ball and all; nothing where they are the same. */
function moveFrom(made: Decision, other: Decision, hand: Hand): string {
  const move = moveWords(made.aim, other.aim, hand)
  if (move !== 'same line') return move
  return made.ballId === other.ballId && made.aim.speedStep === other.aim.speedStep && made.release === other.release
    ? 'your own line'
    : 'the same boards'
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
  const { hand } = blockOf(play).setup.bowler
  const came =
    record.observation.contact === call.contact
      ? 'and so it was'
      : `but it was ${contactWords(record.observation.contact, hand)}`
  return `Called ${callWords(call, hand)}, ${came}`
}

function rollWords({ truth, decision }: ThrowRecord): string {
  const crossed = (metresToBoard(truth.path[29]!) + metresToBoard(truth.path[30]!)) / 2
  const arrows = Number.isNaN(crossed)
    ? []
    : [`target ${trimmed(decision.aim.targetBoard)}, crossed ${crossed.toFixed(1)}`]
  const hook = Number.isFinite(truth.hookStartFeet)
    ? [`the lane takes hold at ${truth.hookStartFeet.toFixed(0)} ft`]
    : []
  const roll = Number.isFinite(truth.rollStartFeet)
    ? `rolls from ${truth.rollStartFeet.toFixed(0)} ft`
    : 'skids to the pins'
  return capital([...arrows, ...hook, roll].join('; '))
}
