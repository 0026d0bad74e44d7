import type { ColourDepth } from '../terminal/colour.js'

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

/** What the colours are made for: a terminal of either ground, a dark one, a light one, or eyes that need strong contrast. */
const LOOKS = ['auto', 'dark', 'light', 'contrast'] as const
export type Look = (typeof LOOKS)[number]

/** Levels of the oil ramp; 0 is dry. */
export const OIL_LEVELS = 6

type Rgb = readonly [red: number, green: number, blue: number]
/** A colour, none, or either in bold. */
interface Tint {
  readonly rgb?: Rgb
  readonly bold?: true
}
type Tints = Readonly<Record<Ink, Tint>>

const bold = (...rgb: Rgb): Tint => ({ rgb, bold: true })
const tint = (...rgb: Rgb): Tint => ({ rgb })
const BOLD: Tint = { bold: true }

// Gain and loss are a blue and an orange, which stay apart for every kind of colour vision; words and signs say the same.
// Without a ground to count on, colours keep to the middle of the lightness scale.
const MIDDLE: Tints = {
  plain: {},
  faint: tint(128, 132, 138),
  strong: BOLD,
  accent: bold(56, 158, 164),
  last: BOLD,
  older: tint(136, 140, 146),
  oldest: tint(104, 108, 114),
  truth: bold(214, 132, 52),
  best: bold(72, 144, 208),
  known: bold(160, 120, 200),
  loss: tint(214, 132, 52),
  gain: tint(72, 144, 208),
}
const FOR_DARK: Tints = {
  ...MIDDLE,
  faint: tint(154, 158, 164),
  accent: bold(92, 206, 210),
  older: tint(170, 174, 180),
  oldest: tint(128, 132, 138),
  truth: bold(244, 166, 88),
  best: bold(120, 184, 240),
  known: bold(196, 160, 232),
  loss: tint(244, 166, 88),
  gain: tint(120, 184, 240),
}
const FOR_LIGHT: Tints = {
  ...MIDDLE,
  faint: tint(98, 102, 108),
  accent: bold(0, 108, 116),
  older: tint(98, 102, 108),
  oldest: tint(134, 138, 144),
  truth: bold(160, 80, 0),
  best: bold(16, 84, 156),
  known: bold(110, 60, 160),
  loss: tint(160, 80, 0),
  gain: tint(16, 84, 156),
}
const FOR_CONTRAST: Tints = {
  ...MIDDLE,
  faint: {},
  accent: bold(0, 175, 175),
  older: {},
  oldest: {},
  truth: bold(215, 95, 0),
  best: bold(0, 135, 255),
  known: bold(175, 95, 255),
  loss: bold(215, 95, 0),
  gain: bold(0, 135, 255),
}
const TINTS: Readonly<Record<Look, Tints>> = {
  auto: MIDDLE,
  dark: FOR_DARK,
  light: FOR_LIGHT,
  contrast: FOR_CONTRAST,
}

/** Inks on the oil, which brings its own ground; the legend shows them on that ground too, so that they stay the same. */
const ON_DEEP_OIL: Tints = {
  ...MIDDLE,
  plain: tint(232, 228, 218),
  faint: tint(150, 166, 180),
  strong: bold(250, 246, 236),
  accent: bold(160, 240, 240),
  last: bold(250, 246, 236),
  older: tint(190, 198, 206),
  oldest: tint(150, 160, 170),
  truth: bold(255, 205, 95),
  best: bold(130, 235, 255),
  known: bold(255, 170, 240),
}
const ON_PALE_OIL: Tints = {
  ...MIDDLE,
  plain: tint(24, 26, 30),
  faint: tint(84, 96, 110),
  strong: bold(10, 12, 16),
  accent: bold(0, 80, 86),
  last: bold(10, 12, 16),
  older: tint(60, 68, 76),
  oldest: tint(84, 96, 110),
  truth: bold(122, 54, 0),
  best: bold(0, 46, 110),
  known: bold(88, 24, 132),
}

/** One hue each, even in lightness, from dry to thick; both far enough from the inks above at every level. */
const DEEP_OIL: readonly Rgb[] = [
  [13, 20, 30],
  [18, 37, 62],
  [22, 50, 86],
  [27, 63, 110],
  [32, 76, 134],
  [37, 89, 158],
  [42, 102, 182],
]
const PALE_OIL: readonly Rgb[] = [
  [248, 251, 255],
  [225, 237, 253],
  [203, 223, 250],
  [181, 210, 248],
  [158, 196, 245],
  [136, 182, 243],
  [113, 168, 240],
]
// The 256 colours have one blue from black to white that keeps its hue: these, and no grey but for the dry lane.
const DEEP_OIL_PALETTE = [233, 17, 18, 19, 20, 21, 63]
const PALE_OIL_PALETTE = [231, 189, 189, 147, 147, 105, 63]

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
const SIXTEEN_LOOKS: Readonly<Record<Look, Readonly<Record<Ink, string>>>> = {
  auto: SIXTEEN,
  dark: { ...SIXTEEN, faint: '37', best: '1;94', gain: '94' },
  light: { ...SIXTEEN, older: '90', truth: '1;31', loss: '31' },
  contrast: { ...SIXTEEN, faint: '', older: '', oldest: '', loss: '1;33', gain: '1;34' },
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

/** SGR parameters of every ink over every ground. */
export interface InkTable {
  /** On the terminal's own ground. */
  readonly bare: Readonly<Record<Ink, string>>
  /** On the oil; null where the ground cannot be coloured. */
  readonly onOil: Readonly<Record<Ink, string>> | null
  /** The oil's ground, by level. */
  readonly oil: readonly string[]
}

/** The inks of a look as far as a terminal can show them. */
export function inksFor(depth: ColourDepth, look: Look): InkTable {
  if (depth === 'none') return { bare: WEIGHTS, onOil: null, oil: [] }
  if (depth === 'sixteen') return { bare: SIXTEEN_LOOKS[look], onOil: null, oil: [] }
  const isPale = look === 'light'
  const told = (tints: Tints) =>
    Object.fromEntries(Object.entries(tints).map(([ink, one]) => [ink, parameters(one, depth)])) as Record<Ink, string>
  const ramp = isPale ? PALE_OIL : DEEP_OIL
  const palette = isPale ? PALE_OIL_PALETTE : DEEP_OIL_PALETTE
  return {
    bare: told(TINTS[look]),
    onOil: told(isPale ? ON_PALE_OIL : ON_DEEP_OIL),
    oil: depth === 'true' ? ramp.map((rgb) => `48;2;${rgb.join(';')}`) : palette.map((place) => `48;5;${place}`),
  }
}

function parameters({ rgb, bold: isBold }: Tint, depth: 'palette' | 'true'): string {
  const colour = rgb ? (depth === 'true' ? `38;2;${rgb.join(';')}` : `38;5;${nearest(rgb)}`) : ''
  return [isBold ? '1' : '', colour].filter(Boolean).join(';')
}

const CUBE_STEPS = [0, 95, 135, 175, 215, 255]

/** The nearest of the 256 colours: of the cube of six steps a side, or of the greys beside it. */
function nearest(rgb: Rgb): number {
  const steps = rgb.map((part) => closest(CUBE_STEPS, part))
  const cube = steps.map((step) => CUBE_STEPS[step]!)
  const grey = Math.min(23, Math.max(0, Math.round(((rgb[0] + rgb[1] + rgb[2]) / 3 - 8) / 10)))
  const greys = rgb.map(() => 8 + 10 * grey)
  const distance = (other: readonly number[]) => rgb.reduce((sum, part, place) => sum + (part - other[place]!) ** 2, 0)
  return distance(greys) < distance(cube) ? 232 + grey : 16 + 36 * steps[0]! + 6 * steps[1]! + steps[2]!
}

const closest = (steps: readonly number[], part: number): number =>
  steps.reduce((best, step, place) => (Math.abs(step - part) < Math.abs(steps[best]! - part) ? place : best), 0)
