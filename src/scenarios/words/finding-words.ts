import { nearestThrown } from '../../sim/analysis/debrief/findings/nearest-thrown.js'
import type { Evidence, Tag, TagKind } from '../../sim/analysis/debrief/findings/tag.js'
import type { BlockSetup, ThrowRecord } from '../../sim/world/block/types.js'
import { countPins, FULL_RACK, leaveName } from '../../sim/world/pins/leaves.js'
import { ballName, boardsWords, changeWords, framesWords } from './change-words.js'
import { evidenceWords, tellingEvidence } from './evidence-words.js'
import { FINDING_KIND_WORDS, PRACTISE_WORDS } from './finding-kinds.js'
import { contactWords, fellWords, lineWords, seenParts } from './throw-words.js'
import { boardWords, moveWords, pinsWords } from './words.js'

/** What findings are told from, of a block. */
export interface ToldBlock {
  readonly setup: Pick<BlockSetup, 'bag' | 'bowler' | 'games'>
  readonly throws: readonly ThrowRecord[]
}

/** A finding, sentence by sentence. */
interface FindingWords {
  /** What it was, where, and what it cost. */
  readonly title: string
  /** What was on show: arrows, breakpoint, contact, and how often. */
  readonly seen: string
  readonly meant: string
  /** The smallest change from something already thrown that would have mended it. */
  readonly mend: string
  /** The figures it stands on. */
  readonly figures: string
  readonly practise: string
}

export function findingWords(tag: Tag, block: ToldBlock): FindingWords {
  const { hand } = block.setup.bowler
  const game = block.setup.games > 1 ? `Game ${tag.game}, ` : ''
  const frames = framesWords(tag.frames)
  return {
    title: `${FINDING_KIND_WORDS[tag.kind]}: cost ${pinsWords(tag.pins)}. ${game}${game ? frames.toLowerCase() : frames}.`,
    seen: seenWords(tag, block),
    meant: meantWords(tag, block),
    mend: mendWords(tag, block),
    figures: `Figures: ${tellingEvidence(tag.evidence)
      .map((one) => evidenceWords(one, hand))
      .join('; ')}.`,
    practise: PRACTISE_WORDS[tag.kind],
  }
}

/** All but the figures and what to practise, as one paragraph. */
export const findingParagraph = ({ title, seen, meant, mend }: FindingWords): string =>
  [title, seen, meant, mend].filter((words) => words !== '').join(' ')

function seenWords({ throws: told, before, at }: Tag, { setup, throws }: ToldBlock): string {
  const { hand } = setup.bowler
  const after = told.flatMap((index) => throws[index] ?? [])
  const shown = before === null ? undefined : throws[before]
  const first = shown ?? throws[at]
  if (!first) return ''
  const seen = seenParts(first, hand).slice(0, -1).join(', ')
  if (first.standingBefore !== FULL_RACK) {
    const made = after.filter(({ standingAfter }) => standingAfter === 0).length
    const often = after.length > 1 ? ` ${made === 0 ? 'None' : made} of the ${after.length} were made.` : ''
    return `Seen${after.length > 1 ? ` in ${placeOf(first)}` : ''}: ${seen}. ${fellWords(first, hand)}${often}`
  }
  return shown
    ? `Seen in ${placeOf(shown)}: ${seen}. ${after.length > 1 ? 'These balls' : 'This ball'}: ${oftenWords(after, hand)}.`
    : `Seen: ${after.length > 1 ? `in ${placeOf(first)} ` : ''}${seen}${after.length > 1 ? `; ${oftenWords(after, hand)}` : ''}.`
}

/** How the throws of a finding came in: the one, or the commonest call and how often it came. */
function oftenWords(throws: readonly ThrowRecord[], hand: ToldBlock['setup']['bowler']['hand']): string {
  const calls = throws.map(({ observation }) => contactWords(observation.contact, hand))
  const count = (call: string): number => calls.filter((one) => one === call).length
  const most = calls.reduce((best, call) => (count(call) > count(best) ? call : best), calls[0] ?? '')
  const times = count(most)
  if (calls.length === 1) return most
  if (times === calls.length) return `${most} ${times === 2 ? 'both times' : `all ${times} times`}`
  return times === 1 ? calls.join(', ') : `${most} ${times} times in ${calls.length}`
}

const placeOf = ({ spot }: ThrowRecord): string =>
  spot.phase === 'practice' ? `practice throw ${spot.frame}` : `frame ${spot.frame}`

const figureIn = ({ evidence }: Tag, what: Evidence['what']): number =>
  evidence.find((one) => one.what === what)?.value ?? 0

function meantWords(tag: Tag, { setup, throws }: ToldBlock): string {
  const { bag, bowler } = setup
  const thrown = throws[tag.at]
  const before = tag.before === null ? undefined : throws[tag.before]
  if (!thrown) return ''
  const made = before ? changeWords(before.decision, thrown.decision, bag, bowler.hand) : ''
  const off = figureIn(tag, 'off-the-expected-entry')
  const came = `${before ? `The ball in ${placeOf(before)}` : 'It'} came in ${boardsWords(off)} ${off > 0 ? 'higher' : 'lighter'} than expected`
  const { aim, ballId } = thrown.decision
  const words: Readonly<Record<TagKind, string>> = {
    'wrong-ball':
      tag.mend.ballId === ballId
        ? ''
        : `The ${ballName(tag.mend.ballId, bag)} was the better ball, not the ${ballName(ballId, bag)}.`,
    'wrong-target': 'The target was the costly part.',
    'wrong-feet': 'The slide was the costly part.',
    'wrong-line': 'Slide and target together sent the ball off the good line.',
    'wrong-speed': 'The speed was the costly part.',
    'moved-too-late': `Slide ${boardWords(aim.feetBoard)}, target ${boardWords(aim.targetBoard)} had been good and no longer was.`,
    'missed-a-change': `${came}, and most of that was the lane.`,
    'moved-too-early': `The line before was still the better one; the change (${made}) was not called for.`,
    'blamed-the-lane': `${came}, but most of that was the throw: ${evidenceWords({ what: 'off-the-target', value: figureIn(tag, 'off-the-target'), unit: 'boards' }, bowler.hand)}. The move that answered it (${made}) left the better line.`,
    'move-too-small': `A move was called for, in this direction; ${made} was not enough.`,
    'move-too-far': `A move was called for, in this direction; ${made} was too much.`,
    'moved-the-wrong-way': `A move was called for, but ${made} went away from it.`,
    'skipped-a-probe':
      'Another throw would have told more about the oil, which is worth pins while throws are to come.',
    'spare-ball': `Another ball or release was surer for ${spareWords(thrown)}.`,
    'spare-line': `Another line was surer for ${spareWords(thrown)}.`,
  }
  return words[tag.kind]
}

/** From so many pins on, a leave is not told by its pins. */
const MANY_PINS = 5

const spareWords = ({ standingBefore }: ThrowRecord): string =>
  countPins(standingBefore) >= MANY_PINS ? 'what stood' : `the ${leaveName(standingBefore)}`

/** The change from whatever was thrown that is nearest to it; a spare's line is told as it is, since nothing like it was thrown. */
function mendWords({ at, mend, mendsAll }: Tag, { setup, throws }: ToldBlock): string {
  const thrown = throws[at]
  if (!thrown) return ''
  const { bag, bowler } = setup
  const lead = mendsAll ? 'What costs nothing' : 'What mends this part'
  if (thrown.standingBefore !== FULL_RACK) return `${lead}: the ${lineWords(mend, bag)}.`
  const near = nearestThrown(throws, at, mend)
  const from = throws[near] ?? thrown
  const change = changeWords(from.decision, mend, bag, bowler.hand)
  const line = near === at ? 'the same line' : `the line of ${placeOf(from)}`
  if (change === '') return `${lead}: ${line} again.`
  const isSameLine = moveWords(from.decision.aim, mend.aim, bowler.hand) === 'same line'
  if (isSameLine) return `${lead}: ${change}, on ${line}.`
  return near === at ? `${lead}: ${change}, from there.` : `${lead}: ${change}, from ${line}.`
}
