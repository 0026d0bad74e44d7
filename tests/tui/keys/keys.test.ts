import { describe, expect, it } from 'vitest'
import { commandFor, KEY_BINDINGS, keyName } from '../../../src/tui/keys/keys.js'
import { contextKeyLine } from '../../../src/tui/parts/key-hints.js'
import { helpScreen } from '../../../src/tui/screens/menus/help-screen.js'
import { columnsOf } from '../../../src/tui/terminal/fit.js'
import { bare, PLAIN, THEMES } from '../fixtures.js'

const contexts = [...new Set(KEY_BINDINGS.flatMap((binding) => binding.contexts))]

describe('the table of keys', () => {
  it('says what each key does in a column of the help page', () => {
    for (const { does, shown } of KEY_BINDINGS) {
      expect(does.length, does).toBeLessThanOrEqual(29)
      expect(shown.length, does).toBeLessThanOrEqual(7)
    }
  })

  it.each(contexts)('gives a key one meaning only (%s)', (context) => {
    const keys = KEY_BINDINGS.filter((binding) => binding.contexts.includes(context)).flatMap((binding) => binding.keys)
    expect(new Set(keys).size).toBe(keys.length)
  })

  it('means the same everywhere by Esc, q and ?', () => {
    const everywhere: Record<string, string> = { escape: 'back', q: 'quit', '?': 'help' }
    for (const context of contexts.filter((one) => !['form', 'filter', 'naming', 'rolling'].includes(one))) {
      for (const [key, command] of Object.entries(everywhere)) {
        expect([command, null], `${key} in ${context}`).toContain(commandFor(context, key))
      }
    }
  })

  it('types letters into a form, where only Esc keeps its meaning', () => {
    for (const letter of ['q', '?', 'h', 'x']) expect(commandFor('form', letter)).toEqual({ type: letter })
    expect(commandFor('form', 'space')).toEqual({ type: ' ' })
    expect(commandFor('form', 'escape')).toBe('back')
  })

  it('has a way back from every place but the first', () => {
    for (const context of contexts.filter((one) => one !== 'home' && one !== 'rolling'))
      expect(commandFor(context, 'escape'), context).toBe('back')
  })

  it('types digits only while deciding, and lets a rolling ball be skipped by Enter, space and Esc only', () => {
    expect(commandFor('play', '3')).toEqual({ type: '3' })
    expect(commandFor('typing', '.')).toEqual({ type: '.' })
    expect(commandFor('play', '.')).toBe('half-right')
    expect(commandFor('debrief', '3')).toBeNull()
    expect(['enter', 'space', 'escape'].map((key) => commandFor('rolling', key))).toEqual(['skip', 'skip', 'skip'])
    for (const key of ['x', '3', 'up', '?', 'q']) expect(commandFor('rolling', key)).toBeNull()
  })

  it('uses no function key, no Alt and none of the keys terminals keep for themselves', () => {
    for (const { keys } of KEY_BINDINGS) for (const key of keys) expect(key).not.toMatch(/^f\d|ctrl|alt|meta/i)
    const press = {
      upArrow: false,
      downArrow: false,
      leftArrow: false,
      rightArrow: false,
      return: false,
      escape: false,
      tab: false,
      backspace: false,
      ctrl: true,
      pageUp: false,
      pageDown: false,
      home: false,
      end: false,
    }
    for (const letter of ['s', 'q', 'z']) expect(keyName(letter, press)).toBe('')
  })

  it.each(THEMES)(
    'is all on the first help page of each place, its own keys first, within 80 by 22 (%s)',
    (_, theme) => {
      for (const context of contexts.filter((one) => one !== 'help' && commandFor(one, '?') === 'help')) {
        const rows = helpScreen(context, { page: 'keys', scroll: 0 }, { columns: 80, rows: 22 }, theme)
        expect(rows).toHaveLength(22)
        for (const row of rows) expect(columnsOf(row), bare(row)).toBeLessThanOrEqual(80)
        const text = rows.map(bare).join('\n')
        for (const binding of KEY_BINDINGS.filter((one) => one.contexts.includes(context)))
          expect(text, context).toContain(binding.does)
      }
    },
  )

  it.each([
    [80, 2],
    [120, 3],
    [200, 5],
  ])('stands in as many columns as fit into %i', (columns, sections) => {
    const rows = helpScreen('play', { page: 'keys', scroll: 0 }, { columns, rows: 40 }, PLAIN).map(bare)
    for (const row of rows) expect(columnsOf(row)).toBeLessThanOrEqual(columns)
    const titles = rows[2]!.trimEnd().split(/ {2,}/)
    expect(titles).toHaveLength(sections)
  })

  it.each(contexts.filter((one) => one !== 'rolling'))(
    'shows the way out or the help on the bottom line (%s)',
    (context) => {
      const line = contextKeyLine(context, 80, PLAIN)
      expect(columnsOf(line)).toBeLessThanOrEqual(80)
      expect(bare(line)).toMatch(/Esc|\?/)
    },
  )
})
