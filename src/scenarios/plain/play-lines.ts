import { isSame } from '../../sim/analysis/debrief/ledger/throw-worths.js'
import type { PricedFairGrade } from '../../sim/analysis/grade/grade-types.js'
import { playerView } from '../../sim/analysis/view/player-view.js'
import { advance, checkDecision } from '../../sim/world/block/advance.js'
import type { BlockState, Decision, ThrowRecord } from '../../sim/world/block/types.js'
import { FULL_RACK, leaveName } from '../../sim/world/pins/leaves.js'
import { WriteError } from '../files/text/atomic-write.js'
import { sinceLastWords } from '../words/change-words.js'
import { sameLineWarning } from '../words/grade-words.js'
import { scoreLines } from '../words/score-lines.js'
import { lineWords, seenParts } from '../words/throw-words.js'
import { spotWords } from '../words/words.js'
import { afterThrowLines } from './after-throw-lines.js'
import { gradeLine, gradeOf } from './grade-line.js'
import { HELP_LINES } from './help-lines.js'
import { bagLines } from './opening-lines.js'
import { readDecision } from './read-decision.js'
import { rivalLines } from './rival-lines.js'

export interface LinePlay {
  /** What is typed, or a script's lines. */
  readonly lines: AsyncIterable<string>
  readonly say: (text: string) => void
  /** Called for a line that cannot be thrown; says it and goes on, or throws to stop the block. */
  readonly object: (sentence: string) => void
  /** Puts a throw where it is safe before its result is said. */
  readonly keep: (thrown: ThrowRecord) => Promise<void>
  /** Called for a throw that could not be kept, and so is not made; says it and goes on, or throws to stop the block. */
  readonly notKept: (fault: WriteError) => void
  /** Whether each choice is priced before it is thrown, and whether that is said. */
  readonly grade: boolean | 'quietly'
  /** Told the grade of each throw, that it need not be worked out again: null where there is none, undefined where nobody asked. */
  readonly graded?: (grade: PricedFairGrade | null | undefined) => void
  /** Throws somewhere else than here; the simulator's own where it is left out. */
  readonly advance?: (state: BlockState, decision: Decision) => Promise<BlockState>
  /** A block bowled before on the same luck: each of its throws is said once the player has made theirs. */
  readonly rival?: BlockState
  /** Told of each throw once it is made. */
  readonly thrown?: (before: BlockState, after: BlockState) => void
  /** Whether play ends here although the block goes on; never where left out. */
  readonly enough?: (state: BlockState) => boolean
}

/** Plays a block line by line until it is done, the player quits or the lines end; returns what then stands. */
export async function playLines(begun: BlockState, play: LinePlay): Promise<BlockState> {
  const { lines, say, object } = play
  let state = begun
  const costs = new Map<number, number>()
  const noting: LinePlay = {
    ...play,
    graded: (price) => {
      costs.set(state.throws.length, price?.givenAwayPins ?? 0)
      play.graded?.(price)
    },
  }
  const warningOf = (decision: Decision): string =>
    play.grade === 'quietly' ? '' : sameLineWarning(state, decision, (index) => costs.get(index) ?? 0)
  announce(state, say)
  offer(state, say)
  for await (const typed of lines) {
    if (typed.trimStart().startsWith('#')) continue
    const suggestion = playerView(state)?.suggestion
    if (!suggestion) break
    const read = readDecision(typed, suggestion, state.setup.bag, state.setup.bowler.hand)
    if (read.kind === 'quit') break
    if (read.kind === 'throw') {
      const problem = checkDecision(state, read.decision)
      if (problem !== null) {
        object(problem)
        continue
      }
      if (!isSame(read.decision, suggestion) && warningOf(read.decision) !== '') say(warningOf(read.decision))
      try {
        const next = await throwOne(state, read.decision, noting)
        if (play.rival) for (const line of rivalLines(state, next, play.rival)) say(line)
        play.thrown?.(state, next)
        state = next
      } catch (fault) {
        if (!(fault instanceof WriteError)) throw fault
        play.notKept(fault)
        continue
      }
      if (!state.spot || play.enough?.(state)) break
      announce(state, say)
      offer(state, say, warningOf)
    } else if (read.kind === 'unclear') object(read.sentence)
    else for (const line of answerLines(state, read.kind)) say(line)
  }
  return state
}

/** Throws a decision and says the move, its grade, and then what came of it: in that order, so that the result cannot colour the grade. */
export async function throwOne(
  state: BlockState,
  decision: Decision,
  { say, keep, grade, graded, advance: elsewhere }: Pick<LinePlay, 'say' | 'keep' | 'grade' | 'graded' | 'advance'>,
): Promise<BlockState> {
  say(`You throw: ${lineWords(decision, state.setup.bag)}${sinceLast(state, decision)}.`)
  const price = grade ? gradeOf(state, decision) : undefined
  if (price && grade !== 'quietly') say(gradeLine(price, decision, state))
  graded?.(price)
  const next = elsewhere ? await elsewhere(state, decision) : advance(state, decision)
  await keep(next.throws[next.throws.length - 1])
  for (const line of afterThrowLines(next, next.events.slice(state.events.length))) say(line)
  return next
}

/** How a first ball's choice differs from the player's own last line on this lane; nothing at a spare or before one. */
function sinceLast({ throws, spot, standing, setup: { bag, bowler } }: BlockState, decision: Decision): string {
  const last = throws.findLast((one) => one.spot.lane === spot?.lane && one.standingBefore === FULL_RACK)
  if (!last || standing !== FULL_RACK) return ''
  return ` (${sinceLastWords(last.decision, decision, bag, bowler.hand)})`
}

/** Says where the block stands. */
export function announce(state: BlockState, say: (text: string) => void): void {
  const view = playerView(state)
  if (!state.spot || !view) return
  const standing = state.standing === FULL_RACK ? 'Full rack.' : `Spare: ${leaveName(state.standing)}.`
  say('')
  say(`${spotWords(state.spot, view.laneName)}. ${standing}`)
  if (view.posted && view.onThisLane.length === 0) {
    const { lengthFeet, volumeMillilitres, ratio } = view.posted
    const sheet = [`${lengthFeet} ft`]
    if (volumeMillilitres !== undefined) sheet.push(`${volumeMillilitres} mL`)
    if (ratio !== undefined) sheet.push(`${ratio}:1`)
    say(`Posted for this lane: ${sheet.join(', ')}.`)
  }
}

/** The line that Enter throws; of one that has just cost much, that it has. */
function offer(
  state: BlockState,
  say: (text: string) => void,
  warningOf: (decision: Decision) => string = () => '',
): void {
  const view = playerView(state)
  if (!view) return
  const warning = warningOf(view.suggestion)
  if (warning !== '') say(warning)
  say(`Enter throws: ${lineWords(view.suggestion, state.setup.bag)}`)
}

/** The answer to a question about where the block stands. */
function answerLines(state: BlockState, question: 'help' | 'score' | 'seen' | 'bag'): readonly string[] {
  switch (question) {
    case 'help':
      return HELP_LINES
    case 'bag':
      return bagLines(state.setup)
    case 'score':
      return state.balls.length === 0
        ? ['No game has begun.']
        : state.balls.flatMap((balls) => scoreLines(state.setup.scoring, balls))
    case 'seen': {
      const view = playerView(state)
      if (!view || view.onThisLane.length === 0) return ['Nothing has been thrown on this lane yet.']
      return view.onThisLane
        .slice(-6)
        .map(
          (one) => `${lineWords(one.decision, state.setup.bag)}: ${seenParts(one, state.setup.bowler.hand).join(', ')}`,
        )
    }
  }
}
