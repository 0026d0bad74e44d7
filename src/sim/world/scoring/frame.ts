/** Ten-pin: a mark earns the next balls. Current-frame: a strike is 30, a spare 10 plus its own first ball, no fill balls. */
export type Scoring = 'ten-pin' | 'current-frame'

/** A ball whose delivery may have been a foul: what it felled then does not count. */
export interface BallCount {
  readonly felled: number
  readonly foul: boolean
}

/** Pins felled by one legal ball, or a full account of it. */
export type Ball = number | BallCount

export const FRAMES = 10
export const PINS = 10

/** One frame as far as it has been bowled. */
export interface FrameReading {
  /** Pins that count, ball by ball; 0 for a foul. */
  readonly counted: readonly number[]
  /** X strike, / spare, - nothing felled, F foul, else the digit. */
  readonly symbols: readonly string[]
  /** How the first rack fell; null while that is open. */
  readonly result: 'strike' | 'spare' | 'open' | null
  readonly complete: boolean
  /** Pins the next ball of this frame faces; 10 at a new rack. */
  readonly standing: number
  /** Whether the next ball of this frame is the first on its rack. */
  readonly newRack: boolean
}

const isFoul = (ball: Ball): boolean => typeof ball !== 'number' && ball.foul
const felledBy = (ball: Ball): number => (typeof ball === 'number' ? ball : ball.felled)

function symbolOf(felled: number, standing: number, first: boolean): string {
  if (felled === standing) return first ? 'X' : '/'
  return felled === 0 ? '-' : String(felled)
}

/**
 * Reads the balls of one frame by the rules of play: two balls to a rack, a foul on the first ball respots all ten
 * (ten on the second is then a spare), a foul on the second leaves only the first, and under ten-pin scoring a mark in
 * the tenth earns fill balls on fresh racks up to three balls in all.
 *
 * @param frame number of the frame, 1 to 10
 * @throws RangeError when a ball fells more than stood, or follows the end of its frame
 */
export function readFrame(scoring: Scoring, frame: number, balls: readonly Ball[]): FrameReading {
  const filled = frame === FRAMES && scoring === 'ten-pin'
  const counted: number[] = []
  const symbols: string[] = []
  let result: FrameReading['result'] = null
  let complete = false
  let standing = PINS
  let newRack = true
  balls.forEach((ball, index) => {
    const where = `frame ${frame}, ball ${index + 1}`
    if (complete) throw new RangeError(`${where}: the frame was over after ball ${index}.`)
    const felled = felledBy(ball)
    if (!Number.isInteger(felled) || felled < 0 || felled > standing)
      throw new RangeError(
        `${where}: ${felled} pins felled, but it must be a whole number from 0 to the ${standing} that stood.`,
      )
    const foul = isFoul(ball)
    const clears = !foul && felled === standing
    counted.push(foul ? 0 : felled)
    symbols.push(foul ? 'F' : symbolOf(felled, standing, newRack))
    if (result === null && (clears || !newRack)) result = clears ? (newRack ? 'strike' : 'spare') : 'open'
    if (clears || (foul && newRack)) standing = PINS
    else standing -= felled
    newRack = clears
    const earned = filled && (result === 'strike' || result === 'spare') ? 3 : 2
    complete = counted.length === earned || (result === 'strike' && !filled)
  })
  return { counted, symbols, result, complete, standing, newRack }
}
