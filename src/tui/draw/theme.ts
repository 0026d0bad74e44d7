import type { Appearance, ColourDepth } from '../terminal/colour.js'
import { ASCII, type Glyphs, UNICODE } from './glyphs.js'
import { type Ink, inksFor, type Look } from './inks.js'

export { type Ink, OIL_LEVELS } from './inks.js'

export interface Theme {
  readonly depth: ColourDepth
  readonly glyphs: Glyphs
  /** Sequence that switches an ink on over a ground (an oil level, or undefined for the terminal's own); empty for none. */
  style(ink: Ink, ground: number | undefined): string
  /** True when oil is shown as the ground's colour rather than by density. */
  readonly colouredGround: boolean
}

/** The looks for what a terminal can show. */
export function themeFor(appearance: Appearance, look: Look = 'auto'): Theme {
  const { depth } = appearance
  const { bare, onOil, oil } = inksFor(depth, look)
  return {
    depth,
    glyphs: appearance.characters === 'unicode' ? UNICODE : ASCII,
    colouredGround: onOil !== null,
    style(ink, level) {
      if (level === undefined || !onOil) return bare[ink] === '' ? '' : `\u001B[${bare[ink]}m`
      return `\u001B[${onOil[ink]};${oil[level]}m`
    },
  }
}
