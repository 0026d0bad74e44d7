/** What can be typed. */
export const HELP_LINES: readonly string[] = [
  'Name what changes, in any order; the rest stays. Enter alone throws what stands.',
  '  ball 3            or a ball by its id',
  '  slide 22          board your sliding foot ends on, counted from your own side',
  '  target 11.5       board at the arrows; half boards are fine',
  '  2 and 1 left      move: feet 2 boards left, target 1',
  '  speed softer      softer, usual or firmer',
  '  release spare     the straighter release kept for spares, or strike',
  '  seen, score, bag  what you have seen on this lane, the score, your balls',
  '  ?, quit           this help; stop here and keep what stands',
]
