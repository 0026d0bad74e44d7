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
/** Looks at a debrief before it is left. */
const LOOKS = 12

/** A player who reads the screen and presses keys by it: the same screens in the same order lead to the same keys. */
export function sessionPlayer(seed: string): (screen: string) => Move {
  const random = seedrandom.alea(seed)
  const oneOf = <Value>(values: readonly Value[]): Value => values[Math.floor(random() * values.length)]!
  const chance = (share: number) => random() < share
  let looks = 0
  return (screen) => {
    if (screen.includes('Words of the trade')) return [ESCAPE]
    if (screen.includes('on its way') || screen.includes('weighed…') || screen.includes('Weighing')) return []
    if (screen.includes('Your account first')) return chance(0.3) ? [ESCAPE] : [oneOf([DOWN, UP]), ENTER]
    if (screen.includes('choose the lanes')) return [...new Array<string>(Math.floor(random() * 6)).fill(DOWN), ENTER]
    if (screen.includes('choose who bowls')) return [...oneOf([[], [DOWN], [LEFT], ['m']]), ENTER]
    if (screen.includes('Past blocks  ')) return [...oneOf([[], [DOWN]]), ENTER]
    if (screen.includes('show the oil? The rest')) return [ENTER]
    if (screen.includes('The block is over') || screen.includes('The frame is over')) return [ENTER]
    if (screen.includes('The bag')) return [oneOf([DOWN, UP]), ENTER]
    if (screen.includes('Findings')) {
      looks++
      if (looks <= LOOKS) return oneOf(LOOKING)
      looks = 0
      return [ESCAPE]
    }
    if (/Enter throw/.test(screen)) {
      if (chance(0.03)) return ['b']
      if (chance(0.03)) return ['?']
      if (chance(0.03)) return ['o']
      if (chance(0.02)) return [ESCAPE]
      if (chance(0.015)) return ['e']
      const call = chance(0.2) ? ['c', oneOf([LEFT, RIGHT]), ENTER] : []
      return [...call, ...oneOf(CHANGES), ENTER]
    }
    if (/[▸>] Practice/.test(screen)) return [DOWN]
    if (/[▸>] Quit/.test(screen)) return [UP, UP, UP]
    if (screen.includes('New block')) return oneOf([[ENTER], [ENTER], [ENTER], [DOWN]])
    return [ESCAPE]
  }
}
