import type { TagKind } from '../../sim/analysis/debrief/findings/tag.js'

/** A kind of finding as a player would say it. */
export const FINDING_KIND_WORDS: Readonly<Record<TagKind, string>> = {
  'wrong-ball': 'The wrong ball',
  'wrong-target': 'The wrong target',
  'wrong-feet': 'The slide on the wrong board',
  'wrong-line': 'The wrong line, slide and target together',
  'wrong-speed': 'The wrong speed',
  'moved-too-late': 'Moved too late',
  'moved-too-early': 'Moved too early',
  'moved-the-wrong-way': 'Moved the wrong way',
  'move-too-small': 'The right move, too small',
  'move-too-far': 'The right move, too far',
  'blamed-the-lane': 'Blamed the lane for a bad throw',
  'missed-a-change': 'Missed that the lane had changed',
  'skipped-a-probe': 'Skipped a throw that would have taught more',
  'spare-ball': 'The wrong ball for the spare',
  'spare-line': 'The wrong line for the spare',
}

/** What to practise for each. Common practice of coaches, no source. */
export const PRACTISE_WORDS: Readonly<Record<TagKind, string>> = {
  'wrong-ball':
    'Before the first frame, say for each ball of the bag where it will turn and how it will come in, and throw the one that needs the least help from the oil. Ask again when a ball comes in lighter or higher than you called.',
  'wrong-target':
    'Keep the slide and change the target one board at a time over a few practice throws; note where the ball turns and where it comes in.',
  'wrong-feet':
    'Keep one target and move your feet one board at a time over a few practice throws; note where each ball comes in. By geometry alone a board of feet is three at the pins; what is missing from that is the oil.',
  'wrong-line':
    'Say where the ball should turn before you choose slide and target, then choose the pair that takes it there. Use the next throw to check which of the two was off.',
  'wrong-speed':
    'Call the entry before a softer and a firmer throw on the same line, and compare. Off your usual speed you also miss by more: weigh both.',
  'moved-too-late':
    'After each throw ask whether you would choose that line again. Set a limit beforehand: so many boards off at the pins on a good throw, and the feet move.',
  'moved-too-early':
    'Name the reason for a move before you make it: what the last ball did at the arrows, where it turned, how it came in. No reason, no move.',
  'moved-the-wrong-way':
    'Before you move, say where down the lane you want the ball to grip and on which side of your line that is; then say which way that takes your feet.',
  'move-too-small':
    'Turn boards at the pins into boards of feet before you move, and make the whole move at once; the next throw tells whether it was too much.',
  'move-too-far':
    'Turn boards at the pins into boards of feet before you move, and make that move only; add the rest when the next throw asks for it.',
  'blamed-the-lane':
    'After an off result, first say what left the hand: board at the arrows, speed, turn. If that was off, throw the same again before you move.',
  'missed-a-change':
    'Call the entry before every throw. When a ball that crossed its target comes in off the call, note by how much; twice the same way is a move.',
  'skipped-a-probe':
    'While you do not know the oil, choose among lines that cost about the same the one whose result would differ most from oil to oil.',
  'spare-ball':
    'Shoot single pins with your straightest ball and release, from across the lane; keep the hook for first balls.',
  'spare-line':
    'Write down for each single pin where to slide and what to look at, and check it in practice; the other spares are moves from those.',
}
