import type { Appearance, ColourDepth } from '../terminal/colour.js'

/** What a piece of text is, never how it looks: the looks stand in the tables below. */
export type Ink =
  | 'plain'
  | 'faint'
  | 'strong'
  | 'accent'
  | 'last'
  | 'older'
  | 'oldest'
  | 'truth'
  | 'best'
  | 'known'
  | 'loss'
  | 'gain'

/** Levels of the oil ramp; 0 is dry. */
export const OIL_LEVELS = 7

interface Glyphs {
  readonly pinStanding: string
  readonly pinFelled: string
  readonly pointer: string
  readonly target: string
  readonly breakpoint: string
  readonly ball: string
  readonly arrow: string
  readonly dot: string
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

export interface Theme {
  readonly depth: ColourDepth
  readonly glyphs: Glyphs
  /** Sequence that switches an ink on over a ground (an oil level, or undefined for the terminal's own); empty for none. */
  style(ink: Ink, ground: number | undefined): string
  /** True when oil is shown as the ground's colour rather than by density. */
  readonly colouredGround: boolean
}

const UNICODE: Glyphs = {
  pinStanding: '●',
  pinFelled: '·',
  pointer: '▸',
  target: '◇',
  breakpoint: '◆',
  ball: '●',
  arrow: '›',
  dot: '·',
  foulLine: '│',
  edge: '─',
  bar: [' ', '▁', '▂', '▃', '▄', '▅', '▆', '▇', '█'],
  block: '█',
  left: '‹',
  right: '›',
  separator: '·',
  post: '│',
  ellipsis: '…',
  oil: [' ', '░', '░', '▒', '▒', '▓', '▓', '█'],
  braille: true,
}

const ASCII: Glyphs = {
  pinStanding: 'O',
  pinFelled: '.',
  pointer: '>',
  target: 'v',
  breakpoint: '#',
  ball: '@',
  arrow: '>',
  dot: '.',
  foulLine: '|',
  edge: '-',
  bar: [' ', '.', '.', ':', ':', '|', '|', '#', '#'],
  block: '#',
  left: '<',
  right: '>',
  separator: '-',
  post: '|',
  ellipsis: '...',
  oil: [' ', '.', ':', ';', 'i', 'x', '%', '&'],
  braille: false,
}

// Colours keep to the middle of the lightness scale, to be read on dark and on light terminals alike. Gain and loss are a
// blue and an orange, which stay apart for every kind of colour vision; words and signs say the same.
const TRUE_COLOUR: Readonly<Record<Ink, string>> = {
  plain: '',
  faint: '38;2;128;132;138',
  strong: '1',
  accent: '1;38;2;56;158;164',
  last: '1',
  older: '38;2;136;140;146',
  oldest: '38;2;104;108;114',
  truth: '1;38;2;214;132;52',
  best: '1;38;2;72;144;208',
  known: '1;38;2;160;120;200',
  loss: '38;2;214;132;52',
  gain: '38;2;72;144;208',
}
const PALETTE: Readonly<Record<Ink, string>> = {
  plain: '',
  faint: '38;5;244',
  strong: '1',
  accent: '1;38;5;37',
  last: '1',
  older: '38;5;246',
  oldest: '38;5;241',
  truth: '1;38;5;172',
  best: '1;38;5;68',
  known: '1;38;5;134',
  loss: '38;5;172',
  gain: '38;5;68',
}
const SIXTEEN: Readonly<Record<Ink, string>> = {
  plain: '',
  faint: '90',
  strong: '1',
  accent: '1;36',
  last: '1',
  older: '37',
  oldest: '90',
  truth: '1;33',
  best: '1;34',
  known: '1;35',
  loss: '33',
  gain: '34',
}
const WEIGHTS: Readonly<Record<Ink, string>> = {
  plain: '',
  faint: '2',
  strong: '1',
  accent: '1',
  last: '1',
  older: '',
  oldest: '2',
  truth: '1',
  best: '1',
  known: '1',
  loss: '',
  gain: '',
}
const INKS: Readonly<Record<ColourDepth, Readonly<Record<Ink, string>>>> = {
  none: WEIGHTS,
  sixteen: SIXTEEN,
  palette: PALETTE,
  true: TRUE_COLOUR,
}

// One hue, evenly spaced in lightness, dark enough at its top for a pale path to stand out on it.
const OIL_TRUE = ['16;26;36', '18;37;54', '21;49;72', '24;61;90', '28;73;107', '33;85;124', '39;97;140', '46;109;155']
const OIL_PALETTE = ['233', '234', '235', '17', '18', '24', '25', '31']
const PALE_TRUE: Partial<Record<Ink, string>> = {
  plain: '38;2;232;228;218',
  faint: '38;2;150;166;180',
  last: '1;38;2;250;246;236',
  truth: '1;38;2;255;204;138',
  best: '1;38;2;210;236;255',
  known: '1;38;2;226;202;255',
}
const PALE_PALETTE: Partial<Record<Ink, string>> = {
  plain: '38;5;254',
  faint: '38;5;109',
  last: '1;38;5;230',
  truth: '1;38;5;215',
  best: '1;38;5;195',
  known: '1;38;5;183',
}

/** The looks for what a terminal can show. */
export function themeFor(appearance: Appearance): Theme {
  const { depth } = appearance
  const colouredGround = depth === 'true' || depth === 'palette'
  const inks = INKS[depth]
  const pale = depth === 'true' ? PALE_TRUE : PALE_PALETTE
  const ground = (level: number) => (depth === 'true' ? `48;2;${OIL_TRUE[level]}` : `48;5;${OIL_PALETTE[level]}`)
  return {
    depth,
    glyphs: appearance.characters === 'unicode' ? UNICODE : ASCII,
    colouredGround,
    style(ink, level) {
      if (level === undefined || !colouredGround) return inks[ink] === '' ? '' : `\u001B[${inks[ink]}m`
      return `\u001B[${pale[ink] ?? inks[ink]};${ground(level)}m`
    },
  }
}
