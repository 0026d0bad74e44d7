import type { BallSpecification } from '../../sim/world/ball/specification.js'
import type { Decision } from '../../sim/world/block/types.js'
import type { Hand } from '../../sim/world/bowler/profile.js'
import { SPEED_WORDS } from '../words/words.js'

/** What a typed line asks for. */
export type TypedLine =
  | { readonly kind: 'throw'; readonly decision: Decision }
  | { readonly kind: 'help' | 'score' | 'seen' | 'bag' | 'quit' }
  | { readonly kind: 'unclear'; readonly sentence: string }

const QUESTIONS: ReadonlyMap<string | undefined, 'help' | 'score' | 'seen' | 'bag' | 'quit'> = new Map([
  ['?', 'help'],
  ['help', 'help'],
  ['score', 'score'],
  ['seen', 'seen'],
  ['bag', 'bag'],
  ['quit', 'quit'],
  ['q', 'quit'],
])

const FIELDS: ReadonlyMap<string, 'ball' | 'feet' | 'target' | 'speed' | 'release'> = new Map([
  ['b', 'ball'],
  ['ball', 'ball'],
  ['slide', 'feet'],
  ['f', 'feet'],
  ['feet', 'feet'],
  ['t', 'target'],
  ['target', 'target'],
  ['s', 'speed'],
  ['speed', 'speed'],
  ['r', 'release'],
  ['release', 'release'],
])

/**
 * Reads one typed line against the decision that stands. An empty line throws what stands; fields not named stay as
 * they are. Whether the boards are possible is the block's to say.
 */
export function readDecision(
  typed: string,
  standing: Decision,
  bag: readonly BallSpecification[],
  hand: Hand,
): TypedLine {
  const words = typed.toLowerCase().replaceAll(',', ' ').split(/\s+/).filter(Boolean)
  const question = QUESTIONS.get(words[0])
  if (words.length === 1 && question) return { kind: question }
  let decision = standing
  for (let place = 0; place < words.length; ) {
    const isMove = words[place + 1] === 'and'
    const changed = isMove
      ? makeMove(decision, words.slice(place, place + 4), hand)
      : changeField(decision, words[place], words[place + 1], bag)
    if (typeof changed === 'string') return { kind: 'unclear', sentence: changed }
    decision = changed
    place += isMove ? 4 : 2
  }
  return { kind: 'throw', decision }
}

/** "2 and 1 left": feet two boards and target one. */
function makeMove(decision: Decision, words: readonly string[], hand: Hand): Decision | string {
  const [feet, , target, side] = words
  const unclear = [feet, target].find((word) => !Number.isFinite(Number(word ?? Number.NaN)))
  if (unclear !== undefined) return `"${unclear}" is not a count of boards.`
  if (target === undefined || (side !== 'left' && side !== 'right'))
    return 'A move ends with left or right, as in 2 and 1 left.'
  const away = (side === 'left') === (hand === 'right') ? 1 : -1
  const aim = {
    ...decision.aim,
    feetBoard: decision.aim.feetBoard + away * Number(feet),
    targetBoard: decision.aim.targetBoard + away * Number(target),
  }
  return { ...decision, aim }
}

function changeField(
  decision: Decision,
  name: string,
  value: string | undefined,
  bag: readonly BallSpecification[],
): Decision | string {
  const field = FIELDS.get(name)
  if (!field) return `"${name}" is not something to decide; say ball, slide, target, speed or release, or ? for help.`
  if (value === undefined) return `What should ${name} be?`
  switch (field) {
    case 'ball': {
      const ball = bag.find((one, index) => one.id === value || String(index + 1) === value)
      if (!ball) return `There is no ball "${value}"; the bag has 1 to ${bag.length}.`
      return { ...decision, ballId: ball.id }
    }
    case 'feet':
    case 'target': {
      const board = Number(value)
      if (!Number.isFinite(board)) return `"${value}" is not a board.`
      const place = field === 'feet' ? { feetBoard: board } : { targetBoard: board }
      return { ...decision, aim: { ...decision.aim, ...place } }
    }
    case 'speed': {
      const step = ([-1, 0, 1] as const).find((one) => SPEED_WORDS[one] === value || SPEED_WORDS[one][0] === value)
      if (step === undefined) return `Speed is softer, usual or firmer, not "${value}".`
      return { ...decision, aim: { ...decision.aim, speedStep: step } }
    }
    case 'release': {
      const release = (['strike', 'spare'] as const).find((one) => one === value)
      if (!release) return `Release is strike or spare, not "${value}".`
      return { ...decision, release }
    }
  }
}
