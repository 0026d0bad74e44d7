import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { themeFor } from '../../../src/tui/draw/theme.js'
import {
  DEFAULT_SETTINGS,
  SETTING_ROWS,
  type Settings,
  settingsFrom,
  stepSetting,
  themeWith,
} from '../../../src/tui/settings/settings.js'
import { readSettings, writeSettings } from '../../../src/tui/settings/settings-file.js'

describe('settings', () => {
  it('step through every value and come round, either way', () => {
    SETTING_ROWS.forEach((row, place) => {
      const count = Object.keys(row.values).length
      let settings: Settings = DEFAULT_SETTINGS
      const seen = new Set<string>()
      for (let i = 0; i < count; i++) {
        settings = stepSetting(settings, place, 1)
        seen.add(settings[row.key])
      }
      expect(seen.size).toBe(count)
      expect(settings).toEqual(DEFAULT_SETTINGS)
      expect(stepSetting(stepSetting(settings, place, -1), place, 1)).toEqual(settings)
    })
  })

  it('take from a file what they know and nothing else', () => {
    expect(settingsFrom({ motion: 'off', colour: 'purple', hand: 3, toString: 'x', more: 1 })).toEqual({
      ...DEFAULT_SETTINGS,
      motion: 'off',
    })
    for (const data of [null, 3, 'text', []]) expect(settingsFrom(data)).toEqual(DEFAULT_SETTINGS)
  })

  it('put colours and characters over what the terminal has, and never letters it cannot show', () => {
    const rich = themeFor({ depth: 'true', characters: 'unicode' })
    const poor = themeFor({ depth: 'sixteen', characters: 'ascii' })
    expect(themeWith(rich, { colour: 'auto', characters: 'auto', theme: 'auto' })).toBe(rich)
    expect(themeWith(rich, { colour: 'none', characters: 'auto', theme: 'auto' }).depth).toBe('none')
    expect(themeWith(rich, { colour: 'auto', characters: 'ascii', theme: 'auto' }).glyphs.braille).toBe(false)
    expect(themeWith(poor, { colour: 'true', characters: 'auto', theme: 'auto' }).glyphs.braille).toBe(false)
  })
})

describe('the settings file', () => {
  let folder: string
  let path: string
  let environment: { DRYBOARD_CONFIG: string }
  beforeEach(async () => {
    folder = await mkdtemp(join(tmpdir(), 'dryboard-settings-'))
    path = join(folder, 'settings.json')
    environment = { DRYBOARD_CONFIG: folder }
  })
  afterEach(() => rm(folder, { recursive: true, force: true }))

  it('gives back what was kept, and leaves alone what a later program set', async () => {
    expect(await readSettings(environment)).toEqual({ settings: DEFAULT_SETTINGS, problem: '' })
    const changed: Settings = { ...DEFAULT_SETTINGS, mode: 'test', tour: 'seen', colour: 'palette' }
    expect(await writeSettings(environment, changed)).toBeNull()
    expect(await readSettings(environment)).toEqual({ settings: changed, problem: '' })
    expect(JSON.parse(await readFile(path, 'utf8'))).toEqual(changed)
    await writeFile(path, '{ "motion": "off", "of a later program": 1 }')
    const { settings } = await readSettings(environment)
    expect(settings).toEqual({ ...DEFAULT_SETTINGS, motion: 'off' })
    await writeSettings(environment, { ...settings, motion: 'on' })
    expect(JSON.parse(await readFile(path, 'utf8'))).toMatchObject({ motion: 'on', 'of a later program': 1 })
  })

  it('is left as it is where it is spoiled, said so in a sentence, and kept aside when a new one is written', async () => {
    const spoils = [
      ['{ half', /settings\.json: this is not JSON\.$/],
      ['[]', /settings\.json: this is not a table of settings\.$/],
      ['{ "colour": "purple" }', /colour: found "purple"; allowed is one of auto, none, sixteen, palette, true\.$/],
    ] as const
    for (const [index, [spoiled, sentence]] of spoils.entries()) {
      await writeFile(path, spoiled)
      const { settings, problem } = await readSettings(environment)
      expect(settings).toEqual(DEFAULT_SETTINGS)
      expect(problem).toMatch(sentence)
      expect(await readFile(path, 'utf8')).toBe(spoiled)
      const aside = `${path}.unreadable-${index + 1}`
      expect(await writeSettings(environment, { ...settings, tour: 'seen' })).toBe(aside)
      expect(await readFile(aside, 'utf8')).toBe(spoiled)
      expect((await readSettings(environment)).settings.tour).toBe('seen')
    }
  })
})
