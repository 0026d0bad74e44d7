import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
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
    expect(themeWith(rich, { colour: 'auto', characters: 'auto' })).toBe(rich)
    expect(themeWith(rich, { colour: 'none', characters: 'auto' }).depth).toBe('none')
    expect(themeWith(rich, { colour: 'auto', characters: 'ascii' }).glyphs.braille).toBe(false)
    expect(themeWith(poor, { colour: 'true', characters: 'auto' }).glyphs.braille).toBe(false)
  })
})

describe('the settings file', () => {
  it('gives back what was kept, and is refused with a sentence and left as it is where it is spoiled', async () => {
    const folder = await mkdtemp(join(tmpdir(), 'dryboard-settings-'))
    const environment = { DRYBOARD_CONFIG: folder }
    try {
      expect(await readSettings(environment)).toEqual(DEFAULT_SETTINGS)
      const changed: Settings = { ...DEFAULT_SETTINGS, mode: 'test', tour: 'seen', colour: 'palette' }
      await writeSettings(environment, changed)
      expect(await readSettings(environment)).toEqual(changed)
      expect(JSON.parse(await readFile(join(folder, 'settings.json'), 'utf8'))).toEqual(changed)
      const path = join(folder, 'settings.json')
      for (const [spoiled, sentence] of [
        ['{ half', /settings\.json: this is not JSON; .*\.$/],
        ['[]', /settings\.json: this is not a table of settings; .*\.$/],
        [
          '{ "colour": "purple" }',
          /colour: found "purple"; allowed is one of auto, none, sixteen, palette, true; .*\.$/,
        ],
      ] as const) {
        await writeFile(path, spoiled)
        await expect(readSettings(environment)).rejects.toThrow(sentence)
        expect(await readFile(path, 'utf8')).toBe(spoiled)
      }
      await writeFile(path, '{ "motion": "off", "of a later program": 1 }')
      expect(await readSettings(environment)).toEqual({ ...DEFAULT_SETTINGS, motion: 'off' })
    } finally {
      await rm(folder, { recursive: true, force: true })
    }
  })
})
