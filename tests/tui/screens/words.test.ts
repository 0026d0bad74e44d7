import { beforeAll, describe, expect, it } from 'vitest'
import { GLOSSARY } from '../../../src/scenarios/words/glossary.js'
import { notSaidIn } from '../../said/not-said.js'
import { bare, PLAIN } from '../fixtures.js'
import { type Drawn, drawnFrom, everyScreen } from './all-screens.js'

/** Written by a scenario's author about the lane, not by a screen; a sentence may use a plain English word of the list. */
const isAuthored = (name: string): boolean => /^(scenarios|bowler) /.test(name)

/** Trade words, common practice, no source: a screen that uses one owes its meaning. */
const TRADE_WORDS: readonly string[] = [
  'arrows',
  'bag',
  'best as seen',
  'best from what you had seen',
  'best if you could see the oil',
  'board',
  'boards',
  'breakpoint',
  'Brooklyn side',
  'carries',
  'carry',
  'cost',
  'cover',
  'deg',
  'degrees',
  'delivery',
  'differential',
  'difficulty',
  'entry',
  'entry angle',
  'entry board',
  'frame',
  'good as the best',
  'grit',
  'gutter',
  'headpin',
  'high',
  'hold',
  'hook',
  'house oil',
  'house-like',
  'laydown',
  'leave',
  'leaving',
  'ledger',
  'light',
  'line',
  'missed',
  'nose',
  'oil at this shot',
  'oil removed so far',
  'pocket',
  'rack',
  'ratio',
  'read',
  'real oil',
  'recovery',
  'release',
  'resume',
  'revolutions',
  'RG',
  'roll',
  'rolls',
  'rpm',
  'sheet',
  'skid',
  'skids',
  'slide',
  'spare',
  'split',
  'strike',
  'target',
  'unseen',
  'washout',
  'wear',
  '2 and 1',
]

let drawn: Drawn
let screens: readonly (readonly [name: string, text: string])[]
beforeAll(async () => {
  drawn = await drawnFrom()
  screens = [
    ...everyScreen(drawn, { columns: 80, rows: 24 }, PLAIN),
    ...everyScreen(drawn, { columns: 200, rows: 60 }, PLAIN),
  ].map(([name, rows]) => [name, rows.map(bare).join('\n')] as const)
}, 180_000)

describe('words on screen', () => {
  it('are none of those that are not said', () => {
    for (const [name, text] of screens) {
      if (isAuthored(name)) continue
      expect(notSaidIn(text), name).toEqual([])
    }
  })

  it('stand in the glossary, as far as they are words of the trade', () => {
    const said = screens.map(([, text]) => text.replace(/\s+/g, ' ').toLowerCase()).join(' ')
    const explained = new Set(
      GLOSSARY.flatMap(({ word, also = [] }) => [...word.split(', '), ...also]).map((word) => word.toLowerCase()),
    )
    const used = TRADE_WORDS.filter((word) => said.includes(word.toLowerCase()))
    expect(used.length).toBeGreaterThan(40)
    expect(used.filter((word) => !explained.has(word.toLowerCase()))).toEqual([])
  })
})

describe('the glossary', () => {
  it('says each word once, in a line that fits 80 columns, in the order of the alphabet', () => {
    const words = GLOSSARY.map(({ word }) => word)
    expect(new Set(words).size).toBe(words.length)
    expect([...words].sort((a, b) => a.toLowerCase().localeCompare(b.toLowerCase(), 'en'))).toEqual(words)
    for (const { word, means } of GLOSSARY) {
      expect(word.length, word).toBeLessThan(30)
      expect(means.length, word).toBeLessThanOrEqual(47)
    }
  })

  it('is all there to be read on the second page of the help', () => {
    const text = screens
      .filter(([name]) => name.startsWith('words'))
      .map(([, page]) => page)
      .join('\n')
    for (const { word, means } of GLOSSARY)
      expect(text).toMatch(new RegExp(`${word} +${means.slice(0, 20).replace(/[()?.]/g, '.')}`))
  })
})
