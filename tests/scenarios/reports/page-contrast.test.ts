import { describe, expect, it } from 'vitest'
import { FULLEST_OIL } from '../../../src/scenarios/reports/html/lane-svg.js'
import { PAGE_STYLE } from '../../../src/scenarios/reports/html/page-style.js'

type Colour = readonly [number, number, number]

/** Colours of a page by day, by night and in print, in the order their rules stand in the style. */
const LOOKS = [...PAGE_STYLE.matchAll(/:root \{([^}]*)\}/g)].map(
  ([, rules]) =>
    new Map(
      [...rules!.matchAll(/--([a-z]+): #([0-9a-f]{3,6})/g)].map(([, name, hex]): [string, Colour] => [
        name!,
        rgb(hex!),
      ]),
    ),
)

function rgb(hex: string): Colour {
  const long = hex.length === 3 ? [...hex].map((digit) => digit + digit).join('') : hex
  return [0, 2, 4].map((at) => Number.parseInt(long.slice(at, at + 2), 16)) as unknown as Colour
}

const mixed = (over: Colour, under: Colour, share: number): Colour =>
  over.map((value, at) => share * value + (1 - share) * under[at]!) as unknown as Colour

// Relative luminance and contrast ratio as in WCAG 2.1; 3:1 is asked for graphics (success criterion 1.4.11), 4.5:1 for text (1.4.3).
function luminance(colour: Colour): number {
  const [red, green, blue] = colour.map((value) => {
    const share = value / 255
    return share <= 0.03928 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4
  })
  return 0.2126 * red! + 0.7152 * green! + 0.0722 * blue!
}

function contrast(one: Colour, other: Colour): number {
  const [light, dark] = [luminance(one), luminance(other)].sort((a, b) => b - a)
  return (light! + 0.05) / (dark! + 0.05)
}

describe.each([
  ['day', 0],
  ['night', 1],
  ['print', 2],
] as const)('a page by %s', (_name, at) => {
  const of = (name: string): Colour => LOOKS[at]!.get(name)!

  it('keeps paths at 3:1 over any oil and over none', () => {
    for (let shade = 0; shade <= 10; shade++) {
      const lane = mixed(of('oil'), of('wood'), (FULLEST_OIL * shade) / 10)
      for (const path of ['path', 'strike']) expect(contrast(of(path), lane), `${path}, ${shade}`).toBeGreaterThan(3)
    }
  })

  it('keeps text at 4.5:1', () => {
    for (const ground of ['paper', 'panel']) {
      for (const text of ['ink', 'soft'])
        expect(contrast(of(text), of(ground)), `${text} on ${ground}`).toBeGreaterThan(4.5)
    }
  })

  it('keeps bars and points at 3:1', () => {
    expect(contrast(of('cost'), of('panel'))).toBeGreaterThan(3)
    expect(contrast(of('cost'), of('paper'))).toBeGreaterThan(3)
  })
})
