/** What can be typed. */
export const HELP_LINES: readonly string[] = [
  'Name what changes, in any order; the rest stays. Enter alone throws what stands.',
  '  ball 3            or a ball by its id',
  '  feet 22           board the slide foot ends on, counted from your own side',
  '  target 11.5       board at the arrows; half boards are fine',
  '  2 and 1 left      feet two boards left, target one',
  '  speed softer      softer, usual or firmer',
  '  release spare     the straighter release kept for spares, or strike',
  '  seen, score, bag  what you have seen on this lane, the sheet, your balls',
  '  ?, quit           this help; stop here and keep what stands',
]
