export interface Glyphs {
  readonly pinStanding: string
  readonly pinFelled: string
  readonly pointer: string
  readonly target: string
  readonly breakpoint: string
  readonly ball: string
  readonly arrow: string
  readonly dot: string
  /** Points at the pocket from beside the lane. */
  readonly pocket: string
  /** A list's entry that has been played, and the best of them. */
  readonly played: string
  readonly foulLine: string
  readonly edge: string
  readonly bar: readonly string[]
  readonly block: string
  readonly left: string
  readonly right: string
  readonly separator: string
  readonly post: string
  readonly ellipsis: string
  /** Film by density, dry first; used wherever the ground cannot be coloured. */
  readonly oil: readonly string[]
  /** True where a cell can hold eight dots. */
  readonly braille: boolean
}

export const UNICODE: Glyphs = {
  pinStanding: '●',
  pinFelled: '·',
  pointer: '▸',
  target: '◇',
  breakpoint: '◆',
  ball: '●',
  arrow: '›',
  dot: '·',
  pocket: '◂',
  played: '•',
  foulLine: '│',
  edge: '─',
  bar: [' ', '▁', '▂', '▃', '▄', '▅', '▆', '▇', '█'],
  block: '█',
  left: '‹',
  right: '›',
  separator: '·',
  post: '│',
  ellipsis: '…',
  oil: [' ', '░', '░', '▒', '▒', '▓', '█'],
  braille: true,
}

export const ASCII: Glyphs = {
  pinStanding: 'O',
  pinFelled: '.',
  pointer: '>',
  target: 'v',
  breakpoint: '#',
  ball: '@',
  arrow: '>',
  dot: '.',
  pocket: '<',
  played: '*',
  foulLine: '|',
  edge: '-',
  bar: [' ', '.', '.', ':', ':', '|', '|', '#', '#'],
  block: '#',
  left: '<',
  right: '>',
  separator: '-',
  post: '|',
  ellipsis: '...',
  oil: [' ', '.', ':', ';', 'i', 'x', '&'],
  braille: false,
}
