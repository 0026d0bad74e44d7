import type { BallSpecification } from '../../../world/ball/specification.js'
import type { Decision } from '../../../world/block/types.js'
import type { Hand } from '../../../world/bowler/profile.js'

const SPEEDS = ['softer', 'the usual speed', 'firmer'] as const

/** Half boards as they are said. */
export function boards(count: number): string {
  const size = Math.abs(Math.round(count * 2) / 2)
  return `${size} board${size === 1 ? '' : 's'}`
}

/** Which way more boards are, as the bowler faces the pins. */
export function sideOf(change: number, hand: Hand): 'left' | 'right' {
  return change > 0 === (hand === 'right') ? 'left' : 'right'
}

/** What to change to get from one choice to another, as one would say it on the approach. */
export function changeWords(from: Decision, to: Decision, bag: readonly BallSpecification[], hand: Hand): string {
  const feet = to.aim.feetBoard - from.aim.feetBoard
  const target = to.aim.targetBoard - from.aim.targetBoard
  const parts: string[] = []
  if (to.ballId !== from.ballId) parts.push(`the ${ballName(to.ballId, bag)}`)
  if (to.release !== from.release) parts.push(`the ${to.release} release`)
  if (feet !== 0) parts.push(`feet ${boards(feet)} ${sideOf(feet, hand)}`)
  if (target !== 0) parts.push(`target ${boards(target)} ${sideOf(target, hand)}`)
  if (to.aim.speedStep !== from.aim.speedStep) parts.push(SPEEDS[to.aim.speedStep + 1])
  return parts.length > 0 ? listed(parts) : 'the same again'
}

export function ballName(ballId: string, bag: readonly BallSpecification[]): string {
  return bag.find((ball) => ball.id === ballId)?.name ?? ballId
}

/** Feet and target, where nothing else is in question. */
export function lineWords({ aim }: Decision): string {
  return `feet ${aim.feetBoard}, target ${aim.targetBoard}`
}

export function listed(parts: readonly string[]): string {
  return parts.length < 2 ? parts.join('') : `${parts.slice(0, -1).join(', ')} and ${parts[parts.length - 1]}`
}

/** "Frame 4", "Frames 4 to 6", "Frames 4, 6 and 9". */
export function framesWords(frames: readonly number[]): string {
  const distinct = [...new Set(frames)]
  if (distinct.length === 1) return `Frame ${distinct[0]}`
  const inRow = distinct.every((frame, at) => at === 0 || frame === distinct[at - 1] + 1)
  if (inRow && distinct.length > 2) return `Frames ${distinct[0]} to ${distinct[distinct.length - 1]}`
  return `Frames ${listed(distinct.map(String))}`
}

export function pinsWords(pins: number): string {
  return `${pins.toFixed(1)} pins`
}
