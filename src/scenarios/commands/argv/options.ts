import { InvalidArgumentError } from 'commander'
import { isLine, lineWords } from '../../files/text/one-line.js'
import { ALLOWED_NAME, isPlayerName } from '../../store/player-name.js'
import type { FramePlace } from '../../words/frame-place.js'

/** A reader of an option that must be a number from `least` to `most`. */
export function numberOption(least: number, most: number, unit = ''): (text: string) => number {
  return (text) => {
    const value = text.trim() === '' ? Number.NaN : Number(text)
    if (!(value >= least && value <= most)) {
      throw new InvalidArgumentError(`allowed is a number from ${least} to ${most}${unit && ` ${unit}`}`)
    }
    return value
  }
}

/** A reader of an option that must be a whole number from `least` to `most`. */
export function wholeOption(least: number, most: number, unit = ''): (text: string) => number {
  return (text) => {
    const value = text.trim() === '' ? Number.NaN : Number(text)
    if (!(Number.isInteger(value) && value >= least && value <= most)) {
      throw new InvalidArgumentError(`allowed is a whole number from ${least} to ${most}${unit && ` ${unit}`}`)
    }
    return value
  }
}

/** A reader of a board given in whole or half boards. */
export function halfBoardOption(least: number, most: number): (text: string) => number {
  return (text) => {
    const value = text.trim() === '' ? Number.NaN : Number(text)
    if (!(value >= least && value <= most && Number.isInteger(value * 2))) {
      throw new InvalidArgumentError(`allowed is a whole or half board from ${least} to ${most}`)
    }
    return value
  }
}

/** A reader of the pins standing, such as 1,2,4 or 3-6-10: a mask with bit n − 1 set for pin n. */
export function standingOption(text: string): number {
  const pins = text.split(/[,\-\s]+/).map((part) => (part === '' ? Number.NaN : Number(part)))
  if (pins.some((pin) => !Number.isInteger(pin) || pin < 1 || pin > 10)) {
    throw new InvalidArgumentError('allowed are pins from 1 to 10 with commas between, such as 3,6,10')
  }
  return pins.reduce((mask, pin) => mask | (1 << (pin - 1)), 0)
}

/** A reader of a seed: any short text without control characters, as a record can hold it. */
export function seedOption(text: string): string {
  if (!isLine(text, LONGEST_SEED)) throw new InvalidArgumentError(`allowed is ${lineWords(LONGEST_SEED)}`)
  return text
}

/** A reader of a player's name. */
export function playerOption(text: string): string {
  if (!isPlayerName(text)) throw new InvalidArgumentError(`allowed is ${ALLOWED_NAME}`)
  return text
}

/** A reader of a frame, such as 7 or, in a later game, 2-7. */
export function frameOption(text: string): FramePlace {
  const [, game = '1', frame] = /^(?:(\d{1,2})-)?(\d{1,2})$/.exec(text.trim()) ?? []
  const place = { game: Number(game), frame: Number(frame) }
  if (!(place.game >= 1 && place.game <= 12 && place.frame >= 1 && place.frame <= 10)) {
    throw new InvalidArgumentError('allowed is a frame from 1 to 10, or game and frame such as 2-7')
  }
  return place
}

/** A reader of some frames with commas between, such as 3,7 or 1-3,2-7. */
export function framesOption(text: string): readonly FramePlace[] {
  return text.split(',').map(frameOption)
}

const LONGEST_PASSPHRASE = 200

/** A reader of a passphrase. */
export function passphraseOption(text: string): string {
  if (!isLine(text, LONGEST_PASSPHRASE) || text.trim() === '')
    throw new InvalidArgumentError(`allowed is ${lineWords(LONGEST_PASSPHRASE)}`)
  return text
}

const LONGEST_TITLE = 80
const LONGEST_SEED = 80

/** A reader of a folder's name. */
export function folderOption(text: string): string {
  if (text.trim() === '' || text.includes('\0')) throw new InvalidArgumentError('allowed is the name of a folder')
  return text
}

/** A reader of a title. */
export function titleOption(text: string): string {
  if (!isLine(text, LONGEST_TITLE)) throw new InvalidArgumentError(`allowed is ${lineWords(LONGEST_TITLE)}`)
  return text
}

/** A reader of a note: text of at most 2000 characters. */
export function noteOption(text: string): string {
  if (!/^[\n\u0020-\u007e\u00a0-\uffff]{1,2000}$/.test(text))
    throw new InvalidArgumentError('allowed is text of 1 to 2000 characters')
  return text
}
