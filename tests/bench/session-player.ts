import seedrandom from 'seedrandom'

/** Keys a player presses one after the other without thinking in between; empty to wait. */
export type Move = readonly string[]

const ENTER = '\r'
const ESCAPE = '\u001B'
const UP = '\u001B[A'
const DOWN = '\u001B[B'
const RIGHT = '\u001B[C'
const LEFT = '\u001B[D'
const TAB = '\t'

/** Changes of a decision before a throw, the common ones more often. */
const CHANGES: readonly Move[] = [
  [],
  [],
  ['['],
  [']'],
  [UP],
  [DOWN, DOWN],
  ['t', UP],
  ['t', DOWN, DOWN],
  ['t', '.'],
  ['f', ','],
  ['['],
  ['u'],
  ['f', 'h', '3'],
  ['f', 'h', '1'],
  ['f', '2', '2', ENTER],
]
const LOOKING: readonly Move[] = [
  [RIGHT],
  [RIGHT],
  [RIGHT, RIGHT],
  [LEFT],
  ['n'],
  ['w'],
  [TAB],
  [DOWN],
  ['r'],
  ['p'],
  ['i'],
]
/** How somebody plays. */
interface Manner {
  /** Looks at a debrief before it is left. */
  readonly looks: number
  /** How often something else than a throw is done, against a curious player. */
  readonly aside: number
  /** Chance of leaving a debrief that is still being worked out, each time it is looked at. */
  readonly impatience: number
}
export const CURIOUS: Manner = { looks: 12, aside: 1, impatience: 0.02 }
/** Throws and throws, and looks back but shortly. */
export const HURRIED: Manner = { looks: 2, aside: 0.15, impatience: 0.3 }

/** On the main screen there is nothing but a way back while a choice is weighed. */
const WEIGHED = /│ {2}10 {2}│[\s\S]*\n ?Esc back {2}\? keys/

/** A player who reads the screen and presses keys by it: the same screens in the same order lead to the same keys. */
export function sessionPlayer(seed: string, { looks: most, aside, impatience }: Manner): (screen: string) => Move {
  const random = seedrandom.alea(seed)
  const oneOf = <Value>(values: readonly Value[]): Value => values[Math.floor(random() * values.length)]!
  const chance = (share: number) => random() < share
  let looks = 0
  return (screen) => {
    if (screen.includes('Words of the trade')) return [ESCAPE]
    if (screen.includes('Weighing your choices')) return chance(impatience) ? [ESCAPE] : []
    if (screen.includes('on its way') || WEIGHED.test(screen)) return []
    if (screen.includes('Your account first')) return chance(0.3) ? [ESCAPE] : [oneOf([DOWN, UP]), ENTER]
    if (screen.includes('choose the lanes')) return [...new Array<string>(Math.floor(random() * 6)).fill(DOWN), ENTER]
    if (screen.includes('choose who bowls')) return [...oneOf([[], [DOWN], [LEFT], ['m']]), ENTER]
    if (screen.includes('Past blocks  ')) return [...oneOf([[], [DOWN]]), ENTER]
    if (screen.includes('show the oil? The rest')) return [ENTER]
    if (screen.includes('The block is over') || screen.includes('The frame is over')) return [ENTER]
    if (screen.includes('The bag')) return [oneOf([DOWN, UP]), ENTER]
    if (screen.includes('Findings')) {
      looks++
      if (looks <= most) return oneOf(LOOKING)
      looks = 0
      return [ESCAPE]
    }
    if (/Enter throw/.test(screen)) {
      if (chance(0.03 * aside)) return ['b']
      if (chance(0.03 * aside)) return ['?']
      if (chance(0.03 * aside)) return ['o']
      if (chance(0.02 * aside)) return [ESCAPE]
      if (chance(0.015 * aside)) return ['e']
      const call = chance(0.2 * aside) ? ['c', oneOf([LEFT, RIGHT]), ENTER] : []
      return [...call, ...oneOf(CHANGES), ENTER]
    }
    if (screen.includes('New block')) {
      if (/[▸>] (Resume|Practice)/.test(screen)) return [DOWN]
      // One further down is the way out.
      if (/[▸>] (Keys|Quit)/.test(screen)) return [UP, UP]
      return oneOf([[ENTER], [ENTER], [ENTER], [DOWN]])
    }
    return [ESCAPE]
  }
}
