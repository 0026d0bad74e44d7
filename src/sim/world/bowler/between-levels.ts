import { type Level, levelProfile, type Style } from './levels.js'
import type { BowlerProfile, ErrorSpread, Hand, ReleaseNumbers } from './profile.js'

/** Levels named by their average, lowest first. */
const NAMED = [160, 180, 200, 220] as const
export const LEAST_AVERAGE: number = NAMED[0]
export const MOST_AVERAGE: number = NAMED[NAMED.length - 1]!

/**
 * A typical bowler of an average between two levels: each figure lies as far between theirs as the average does.
 *
 * @param average pins a game on house oil, from LEAST_AVERAGE to MOST_AVERAGE
 * @throws RangeError for an average outside
 */
export function profileOfAverage(average: number, style: Style, hand: Hand): BowlerProfile {
  if (!(average >= LEAST_AVERAGE && average <= MOST_AVERAGE)) {
    throw new RangeError(`An average is from ${LEAST_AVERAGE} to ${MOST_AVERAGE}, not ${average}.`)
  }
  const above = NAMED.find((named) => named >= average)!
  const below = NAMED.findLast((named) => named <= average)!
  const low = levelProfile(String(below) as Level, style, hand)
  const high = levelProfile(String(above) as Level, style, hand)
  const share = above === below ? 0 : (average - below) / (above - below)
  const blend = <Figures extends ReleaseNumbers | ErrorSpread>(one: Figures, other: Figures): Figures =>
    Object.fromEntries(
      Object.entries(one).map(([name, figure]) => {
        const next = other[name as keyof Figures] as number
        return [name, figure + share * (next - figure)]
      }),
    ) as unknown as Figures
  return {
    ...low,
    id: `${average}-${style}-${hand}`,
    name: `${average} ${style === 'two-handed' ? 'two-hander' : style}`,
    strike: blend(low.strike, high.strike),
    spare: blend(low.spare, high.spare),
    error: blend(low.error, high.error),
    spareError: blend(low.spareError, high.spareError),
  }
}
