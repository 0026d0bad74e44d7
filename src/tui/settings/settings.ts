import { MODES, type Mode } from '../../scenarios/store/block-notes.js'
import type { Hand } from '../../sim/world/bowler/profile.js'
import type { Theme } from '../draw/theme.js'
import { themeFor } from '../draw/theme.js'
import type { ColourDepth } from '../terminal/colour.js'

/** How finely the eye sees: as each scenario has it, or finer or coarser than any. */
export type Seeing = 'scenario' | 'finer' | 'coarser'

/** What the player has set once for all blocks. */
export interface Settings {
  readonly motion: 'on' | 'off'
  readonly colour: 'auto' | ColourDepth
  readonly characters: 'auto' | 'ascii'
  readonly hand: 'scenario' | Hand
  readonly mode: Mode
  readonly seeing: Seeing
  readonly tour: 'offered' | 'seen'
}

export const DEFAULT_SETTINGS: Settings = {
  motion: 'on',
  colour: 'auto',
  characters: 'auto',
  hand: 'scenario',
  mode: 'drill',
  seeing: 'scenario',
  tour: 'offered',
}

type Words<Key extends keyof Settings> = Readonly<Record<Settings[Key], string>>

interface SettingRow<Key extends keyof Settings> {
  readonly key: Key
  readonly label: string
  readonly about: string
  /** Every value there is, in order, with its words. */
  readonly values: Words<Key>
}

const row = <Key extends keyof Settings>(key: Key, label: string, values: Words<Key>, about: string) =>
  ({ key, label, values, about }) satisfies SettingRow<Key>

/** The settings screen, and what a settings file may hold. */
export const SETTING_ROWS = [
  row(
    'mode',
    'Grades',
    { drill: 'drill: at once', block: 'block: once it is over', test: 'test: in the debrief only' },
    'When you are told what a choice gave away. In a drill it is before the ball has shown its result, for a result says little about a choice.',
  ),
  row(
    'hand',
    'Hand',
    { scenario: "the scenario's", right: 'right', left: 'left' },
    'Which hand a new block starts with. It can still be changed when choosing who bowls.',
  ),
  row(
    'seeing',
    'Seeing',
    { scenario: "the scenario's", finer: 'finer', coarser: 'coarser' },
    'How finely the eye tells boards, feet and speed. Finer: half a board and a foot. Coarser: two boards and four feet. Grades go by what was shown.',
  ),
  row(
    'motion',
    'Motion',
    { on: 'the ball rolls', off: 'nothing moves' },
    'Without motion the grade stands alone for a moment, then the result follows. Any key skips.',
  ),
  row(
    'colour',
    'Colours',
    { auto: 'what the terminal has', none: 'none', sixteen: '16', palette: '256', true: '16 million' },
    'No meaning is carried by colour alone; without colours the oil is drawn by density.',
  ),
  row(
    'characters',
    'Characters',
    { auto: 'what the terminal has', ascii: 'ASCII only' },
    'ASCII letters instead of dots and blocks, for terminals and fonts that have none.',
  ),
] as const

/** The next or the previous value of a row; the last is followed by the first. */
export function stepSetting(settings: Settings, place: number, by: 1 | -1): Settings {
  const setting = SETTING_ROWS[place]
  if (!setting) return settings
  const values = Object.keys(setting.values)
  const at = values.indexOf(settings[setting.key])
  return { ...settings, [setting.key]: values[(at + by + values.length) % values.length] }
}

const ALLOWED: Readonly<Record<keyof Settings, readonly string[]>> = {
  ...(Object.fromEntries(SETTING_ROWS.map(({ key, values }) => [key, Object.keys(values)])) as Record<
    keyof Settings,
    string[]
  >),
  mode: MODES,
  tour: ['offered', 'seen'],
}

/** Settings out of whatever a file holds: what is missing or unknown stays as it comes. */
export function settingsFrom(data: unknown): Settings {
  if (typeof data !== 'object' || data === null) return DEFAULT_SETTINGS
  const found = Object.entries(data).filter(
    ([key, value]) => Object.hasOwn(ALLOWED, key) && ALLOWED[key as keyof Settings].includes(value as string),
  )
  return { ...DEFAULT_SETTINGS, ...Object.fromEntries(found) }
}

/** What a settings file holds that it may not, in words to follow its name; null where all is well. Unknown names are a newer program's. */
export function settingsFault(data: unknown): string | null {
  if (typeof data !== 'object' || data === null || Array.isArray(data)) return ': this is not a table of settings'
  for (const [key, value] of Object.entries(data)) {
    if (!Object.hasOwn(ALLOWED, key)) continue
    const allowed = ALLOWED[key as keyof Settings]
    if (allowed.includes(value as string)) continue
    return ` ${key}: found ${JSON.stringify(value).slice(0, 60)}; allowed is one of ${allowed.join(', ')}`
  }
  return null
}

/** The looks with the settings put over what the terminal has. */
export function themeWith(theme: Theme, { colour, characters }: Pick<Settings, 'colour' | 'characters'>): Theme {
  if (colour === 'auto' && characters === 'auto') return theme
  return themeFor({
    depth: colour === 'auto' ? theme.depth : colour,
    characters: characters === 'ascii' || !theme.glyphs.braille ? 'ascii' : 'unicode',
  })
}
