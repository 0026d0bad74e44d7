import { describe, expect, it } from 'vitest'
import { type Ink, OIL_LEVELS, themeFor } from '../../../src/tui/draw/theme.js'

const INKS: readonly Ink[] = [
  'plain',
  'faint',
  'strong',
  'accent',
  'last',
  'older',
  'oldest',
  'truth',
  'best',
  'loss',
  'gain',
]

/** Relative luminance by WCAG 2.2, "relative luminance". */
function luminance([red, green, blue]: readonly number[]): number {
  const linear = (value: number) =>
    value / 255 <= 0.04045 ? value / 255 / 12.92 : ((value / 255 + 0.055) / 1.055) ** 2.4
  return 0.2126 * linear(red!) + 0.7152 * linear(green!) + 0.0722 * linear(blue!)
}
const contrast = (one: readonly number[], other: readonly number[]): number => {
  const [dark, light] = [luminance(one), luminance(other)].sort((a, b) => a - b)
  return (light! + 0.05) / (dark! + 0.05)
}
const rgbAfter = (style: string, code: '38' | '48'): number[] =>
  style
    .match(new RegExp(`${code};2;(\\d+);(\\d+);(\\d+)`))!
    .slice(1)
    .map(Number)

describe('theme', () => {
  // NO_COLOR (no-color.org) is about colour: weight and dimness may stay.
  it('sends no colour at all when there is to be none', () => {
    const theme = themeFor({ depth: 'none', characters: 'unicode' })
    for (const ink of INKS) expect(['', '\u001B[1m', '\u001B[2m'], ink).toContain(theme.style(ink, 3))
  })

  it('uses nothing but ASCII where asked to', () => {
    const { glyphs } = themeFor({ depth: 'none', characters: 'ascii' })
    const all = Object.values(glyphs)
      .flat()
      .filter((value) => typeof value === 'string')
    for (const glyph of all) expect(glyph).toMatch(/^[ -~]*$/)
    expect(new Set(glyphs.oil).size).toBe(OIL_LEVELS + 1)
  })

  it('raises the oil ramp in lightness at every level', () => {
    const theme = themeFor({ depth: 'true', characters: 'unicode' })
    const lights = Array.from({ length: OIL_LEVELS + 1 }, (_, level) =>
      luminance(rgbAfter(theme.style('plain', level), '48')),
    )
    for (let level = 1; level <= OIL_LEVELS; level++) expect(lights[level]!).toBeGreaterThan(lights[level - 1]!)
  })

  // WCAG 2.2, success criterion 1.4.11: graphics need 3:1 against what they lie on.
  it.each(['last', 'best', 'truth'] as const)('keeps the %s path readable on the thickest oil', (ink) => {
    const style = themeFor({ depth: 'true', characters: 'unicode' }).style(ink, OIL_LEVELS)
    expect(contrast(rgbAfter(style, '38'), rgbAfter(style, '48'))).toBeGreaterThanOrEqual(3)
  })
})
