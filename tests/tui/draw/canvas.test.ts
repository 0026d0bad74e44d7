import { describe, expect, it } from 'vitest'
import { canvasRows, ground, newCanvas, put, putRight } from '../../../src/tui/draw/canvas.js'
import { drawDots, newDotLayer, stampDots } from '../../../src/tui/draw/dots.js'
import { themeFor } from '../../../src/tui/draw/theme.js'
import { PLAIN } from '../fixtures.js'

const colour = themeFor({ depth: 'true', characters: 'unicode' })
const runsIn = (row: string) => row.split('\u001B[').filter((part) => !part.startsWith('0m')).length - 1

describe('canvas', () => {
  it('changes style once a run of like cells, blanks included', () => {
    const canvas = newCanvas(30, 1)
    put(canvas, 0, 0, 'accent', 'accent')
    put(canvas, 10, 0, 'accent', 'accent')
    put(canvas, 20, 0, 'faint', 'faint')
    expect(runsIn(canvasRows(canvas, colour)[0]!)).toBe(2)
  })

  it('leaves out what falls outside, on every side', () => {
    const canvas = newCanvas(4, 2)
    put(canvas, -2, 0, 'abcdefgh')
    put(canvas, 0, 5, 'no')
    putRight(canvas, 4, 1, 'end')
    expect(canvasRows(canvas, PLAIN)).toEqual(['cdef', ' end'])
  })

  it('gives a coloured ground an end', () => {
    const canvas = newCanvas(3, 1)
    ground(canvas, 1, 0, 4)
    const [row] = canvasRows(canvas, colour)
    expect(row).toMatch(/^ .*48;2;.* .*\[0m $/)
  })
})

describe('dots', () => {
  // The numbering of braille dots is the Unicode standard's (block U+2800, "Braille Patterns").
  it.each([
    [0, 0, '⠁'],
    [0, 3, '⡀'],
    [1, 0, '⠈'],
    [1, 3, '⢀'],
  ])('puts dot (%i, %i) into its corner of the cell', (x, y, glyph) => {
    const canvas = newCanvas(1, 1)
    const layer = newDotLayer(1, 1)
    drawDots(layer, x, [y], { ink: 'plain', dash: 'solid', letter: '*' })
    stampDots(canvas, 0, 0, layer, PLAIN)
    expect(canvas.glyphs[0]).toBe(glyph)
  })

  it('keeps a steep line whole and leaves a gap where there is no value', () => {
    const layer = newDotLayer(2, 4)
    drawDots(layer, 0, [0, 12, Number.NaN, 5], { ink: 'plain', dash: 'solid', letter: '*' })
    const column = (x: number) =>
      Array.from({ length: 4 }, (_, row) => layer.bits[row * 2 + Math.floor(x / 2)]! & (x % 2 ? 0xb8 : 0x47))
    expect(column(1).every((bits) => bits > 0)).toBe(true)
    expect(column(2).every((bits) => bits === 0)).toBe(true)
    expect(column(3).filter((bits) => bits > 0)).toHaveLength(1)
  })

  it('draws lines that differ without colour', () => {
    const drawn = (dash: 'solid' | 'dashed' | 'dotted') => {
      const layer = newDotLayer(12, 1)
      drawDots(layer, 0, new Array(24).fill(2), { ink: 'plain', dash, letter: '*' })
      return [...layer.bits].join()
    }
    expect(new Set([drawn('solid'), drawn('dashed'), drawn('dotted')]).size).toBe(3)
  })
})
