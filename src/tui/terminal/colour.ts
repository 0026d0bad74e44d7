/** How many colours the terminal may be sent. */
export type ColourDepth = 'none' | 'sixteen' | 'palette' | 'true'
type Characters = 'unicode' | 'ascii'

export interface Appearance {
  readonly depth: ColourDepth
  readonly characters: Characters
}

type Environment = Readonly<Record<string, string | undefined>>

/**
 * What the terminal can show, from its environment. NO_COLOR (any non-empty value) wins over FORCE_COLOR; a terminal
 * that calls itself dumb gets neither colour nor Unicode.
 */
export function readAppearance(environment: Environment): Appearance {
  return { depth: readDepth(environment), characters: readCharacters(environment) }
}

function readDepth(environment: Environment): ColourDepth {
  const { NO_COLOR, FORCE_COLOR, TERM = '', COLORTERM = '' } = environment
  if (NO_COLOR) return 'none'
  if (FORCE_COLOR === '0') return 'none'
  if (FORCE_COLOR === '3') return 'true'
  if (FORCE_COLOR === '2') return 'palette'
  if (FORCE_COLOR) return 'sixteen'
  if (TERM === 'dumb') return 'none'
  if (COLORTERM === 'truecolor' || COLORTERM === '24bit') return 'true'
  if (TERM.includes('256color') || TERM.includes('direct')) return 'palette'
  return 'sixteen'
}

function readCharacters(environment: Environment): Characters {
  if (environment.DRYBOARD_ASCII) return 'ascii'
  if (environment.TERM === 'dumb' || environment.TERM === 'linux') return 'ascii'
  const locale = environment.LC_ALL || environment.LC_CTYPE || environment.LANG || ''
  return locale !== '' && !/utf-?8/i.test(locale) ? 'ascii' : 'unicode'
}
