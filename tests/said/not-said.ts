/** What is not said to a player, of the project's list of words. A sentence may use a plain English word in its plain sense. */
const NOT_SAID: readonly RegExp[] = [
  /\b(gave|gives?|giv(en|ing)) (\d|nothing|anything|away)/i,
  /\bgiven away\b/i,
  /what could be known/i,
  /\bfair\b/i,
  /\bknown\b/i,
  /\bin sight\b/i,
  /oil as it was/i,
  /\bhidden\b(?! in dark)/i,
  /\bswing\b/i,
  /pins gave/i,
  /\blift(s|ed)?\b/i,
  /oil it met/i,
  /oil gone/i,
  /\bfeet:? \d\d/i,
  /\d feet\b/i,
  /(past|wide of) the headpin/i,
  /a spare to make/i,
  /it leaves the/i,
  /nothing worth calling|too close to call/i,
  /how hard\b/i,
  /\btake(n|s)? up\b(?! )/i,
  /the road not taken/i,
  /\bworth calling\b/i,
]

/** Keys of JSON from before the list, which stay so that what reads them goes on working. */
const OLD_KEYS: ReadonlySet<string> = new Set([
  'givenAway',
  'givenAwayPins',
  'givenAwayPerGame',
  'givenAwayFirstBalls',
  'givenAwaySpares',
  'patternSwingPins',
  'hiddenPins',
  'tooCloseToCallPins',
  'fair',
  'known',
  'fairGainPins',
  'knownGainPins',
  'roadNotTaken',
])

/** Names of properties, however deep. */
function keysOf(value: unknown): string[] {
  if (typeof value !== 'object' || value === null) return []
  const own = Array.isArray(value) ? [] : Object.keys(value)
  return [...own, ...Object.values(value).flatMap(keysOf)]
}

/** What of a text is not said: each word of the list that is found, with what stands around it. */
export function notSaidIn(text: string): string[] {
  return NOT_SAID.flatMap((word) => {
    const found = word.exec(text)
    return found ? [`${word}: ...${text.slice(Math.max(0, found.index - 30), found.index + 40)}...`] : []
  })
}

/** Keys that are new and say what is not said, read as words. */
export const notSaidKeys = (value: unknown): string[] =>
  [...new Set(keysOf(value))].filter((key) => {
    if (OLD_KEYS.has(key)) return false
    const words = key.replace(/([A-Z])/g, ' $1').toLowerCase()
    return NOT_SAID.some((word) => word.test(words))
  })
