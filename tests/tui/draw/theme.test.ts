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

/** Hue in degrees, by the usual hexagon (CSS Color 4, "rgbToHsl"). */
function hueOf([red, green, blue]: readonly number[]): number {
  const most = Math.max(red!, green!, blue!)
  const span = most - Math.min(red!, green!, blue!)
  const sector =
    most === red ? (green! - blue!) / span : most === green ? 2 + (blue! - red!) / span : 4 + (red! - green!) / span
  return (60 * sector + 360) % 360
}

/** A colour of xterm's 256: the cube of six steps, 0, 95, 135, 175, 215 and 255 (xterm's 256colres). */
function paletteRgb(place: number): number[] {
  const steps = [0, 95, 135, 175, 215, 255]
  const at = place - 16
  return [steps[Math.floor(at / 36)]!, steps[Math.floor(at / 6) % 6]!, steps[at % 6]!]
}

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
    expect(glyphs.oil).toHaveLength(OIL_LEVELS + 1)
  })

  it('raises the oil ramp in lightness at every level', () => {
    const theme = themeFor({ depth: 'true', characters: 'unicode' })
    const lights = Array.from({ length: OIL_LEVELS + 1 }, (_, level) =>
      luminance(rgbAfter(theme.style('plain', level), '48')),
    )
    for (let level = 1; level <= OIL_LEVELS; level++) expect(lights[level]!).toBeGreaterThan(lights[level - 1]!)
  })

  it.each(['auto', 'dark', 'light', 'contrast'] as const)(
    'keeps the oil to one hue from thin to thick (%s)',
    (look) => {
      for (const depth of ['true', 'palette'] as const) {
        const theme = themeFor({ depth, characters: 'unicode' }, look)
        const hues = Array.from({ length: OIL_LEVELS }, (_, level) => {
          const style = theme.style('plain', level + 1)
          return hueOf(depth === 'true' ? rgbAfter(style, '48') : paletteRgb(Number(/48;5;(\d+)/.exec(style)![1])))
        })
        expect(Math.max(...hues) - Math.min(...hues), depth).toBeLessThan(6)
      }
    },
  )

  it.each(['auto', 'dark', 'light', 'contrast'] as const)(
    'keeps a path its colour at every level of the oil (%s)',
    (look) => {
      for (const depth of ['true', 'palette'] as const) {
        const theme = themeFor({ depth, characters: 'unicode' }, look)
        for (const ink of ['truth', 'best', 'known', 'last'] as const) {
          const inks = Array.from({ length: OIL_LEVELS + 1 }, (_, level) =>
            theme.style(ink, level).replace(/;48;.*/, ''),
          )
          expect(new Set(inks).size, ink).toBe(1)
        }
      }
    },
  )

  // WCAG 2.2, success criterion 1.4.3: text needs 4.5:1, large and bold text and graphics 3:1.
  it.each([
    ['dark', [16, 16, 16], 4.5],
    ['light', [255, 255, 255], 4.5],
    ['contrast', [0, 0, 0], 4.5],
    ['contrast', [255, 255, 255], 2],
  ] as const)('can be read in the %s theme on %j', (look, ground, least) => {
    const theme = themeFor({ depth: 'true', characters: 'unicode' }, look)
    for (const ink of ['faint', 'accent', 'truth', 'best', 'loss', 'gain'] as const) {
      const style = theme.style(ink, undefined)
      if (style.includes('38;2')) expect(contrast(rgbAfter(style, '38'), ground), ink).toBeGreaterThanOrEqual(least)
    }
  })

  // WCAG 2.2, success criterion 1.4.11: graphics need 3:1 against what they lie on.
  it.each(['last', 'best', 'truth'] as const)('keeps the %s path readable on the thickest oil', (ink) => {
    const style = themeFor({ depth: 'true', characters: 'unicode' }).style(ink, OIL_LEVELS)
    expect(contrast(rgbAfter(style, '38'), rgbAfter(style, '48'))).toBeGreaterThanOrEqual(3)
  })
})
