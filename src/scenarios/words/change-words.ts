import type { BallSpecification } from '../../sim/world/ball/specification.js'
import type { Decision } from '../../sim/world/block/types.js'
import type { Hand } from '../../sim/world/bowler/profile.js'
import { moveWords, SPEED_WORDS } from './words.js'

/** Half boards as they are said. */
export function boardsWords(count: number): string {
  const size = Math.abs(Math.round(count * 2) / 2)
  return size === 0.5 ? 'half a board' : `${size} board${size === 1 ? '' : 's'}`
}

/** Which way more boards are, as the bowler faces the pins. */
export const sideOf = (change: number, hand: Hand): 'left' | 'right' =>
  change > 0 === (hand === 'right') ? 'left' : 'right'

export const ballName = (ballId: string, bag: readonly BallSpecification[]): string =>
  bag.find((ball) => ball.id === ballId)?.name ?? ballId

/** What to change to get from one choice to another, as one would say it on the approach; empty where they are the same. */
export function changeWords(from: Decision, to: Decision, bag: readonly BallSpecification[], hand: Hand): string {
  const move = moveWords(from.aim, to.aim, hand)
  return [
    to.ballId === from.ballId ? '' : `the ${ballName(to.ballId, bag)}`,
    to.release === from.release ? '' : `the ${to.release} release`,
    move === 'same line' ? '' : move,
    to.aim.speedStep === from.aim.speedStep ? '' : speedWords(to.aim.speedStep),
  ]
    .filter((words) => words !== '')
    .join(', ')
}

/** The same against the line thrown last: where slide and target stay, it says so. */
export function sinceLastWords(last: Decision, now: Decision, bag: readonly BallSpecification[], hand: Hand): string {
  const change = changeWords(last, now, bag, hand)
  const isSameLine = moveWords(last.aim, now.aim, hand) === 'same line'
  return [change, isSameLine ? 'same line' : ''].filter((words) => words !== '').join(', ')
}

/** A step of speed, the usual one named. */
export const speedWords = (step: Decision['aim']['speedStep']): string =>
  step === 0 ? 'usual speed' : SPEED_WORDS[step]

/** "Frame 4", "Frames 4 to 6", "Frames 4, 6 and 9". */
export function framesWords(frames: readonly number[]): string {
  const distinct = [...new Set(frames)]
  if (distinct.length === 1) return `Frame ${distinct[0]}`
  const last = distinct[distinct.length - 1]
  const inRow = distinct.every((frame, at) => at === 0 || frame === distinct[at - 1] + 1)
  if (inRow && distinct.length > 2) return `Frames ${distinct[0]} to ${last}`
  return `Frames ${distinct.slice(0, -1).join(', ')} and ${last}`
}
