import { kilogramsToPounds, metresToInches } from '../../sim/units.js'
import type { BallSpecification } from '../../sim/world/ball/specification.js'
import type { Decision, Spot } from '../../sim/world/block/types.js'
import type { Hand } from '../../sim/world/bowler/profile.js'
import type { Aim } from '../../sim/world/bowler/release.js'

/** The words for what a player reads; the screen and the plain mode both take them from here. */

export const SPEED_WORDS: Readonly<Record<Aim['speedStep'], string>> = { [-1]: 'softer', 0: 'usual', 1: 'firmer' }

/** So many of something: `1 block`, `2 blocks`. */
export const counted = (count: number, word: string): string => `${count} ${word}${count === 1 ? '' : 's'}`

export const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1)

/** A board or a distance as it is said: whole, or with its half. */
export function boardWords(board: number): string {
  return Number.isInteger(board) ? String(board) : board.toFixed(1)
}

/** What was decided, for a column: ball by its place in the bag, slide, target, and what is not usual. */
export function shortDecision({ ballId, aim, release }: Decision, bag: readonly BallSpecification[]): string {
  const ball = bag.findIndex((one) => one.id === ballId) + 1
  const speed = aim.speedStep === 0 ? '' : ` ${SPEED_WORDS[aim.speedStep]}`
  return `${ball} ${boardWords(aim.feetBoard)}/${boardWords(aim.targetBoard)}${speed}${release === 'spare' ? ' spare' : ''}`
}

/**
 * The move between two aims as it is said: "2 and 1 left" is two boards with the feet and one with the target.
 * Boards count from the bowler's own side, so more boards is left for a right-hander and right for a left-hander.
 */
export function moveWords(from: Aim, to: Aim, hand: Hand): string {
  const feet = to.feetBoard - from.feetBoard
  const target = to.targetBoard - from.targetBoard
  const side = (boards: number): string => (boards > 0 === (hand === 'right') ? 'left' : 'right')
  if (feet === 0 && target === 0) return 'same line'
  if (target === 0) return `feet ${boardWords(Math.abs(feet))} ${side(feet)}`
  if (feet === 0) return `target ${boardWords(Math.abs(target))} ${side(target)}`
  const counts = `${boardWords(Math.abs(feet))} and ${boardWords(Math.abs(target))}`
  if (feet > 0 === target > 0) return `${counts} ${side(feet)}`
  return `feet ${boardWords(Math.abs(feet))} ${side(feet)}, target ${boardWords(Math.abs(target))} ${side(target)}`
}

/** Where a throw stands in the block. */
export function spotWords(spot: Spot, laneName: string): string {
  if (spot.phase === 'practice') return `Practice throw ${spot.frame}, ${laneName}`
  return `Game ${spot.game}, frame ${spot.frame}, ball ${spot.ball}, ${laneName}`
}

/** A ball on one line: what it is and the figures a bowler would read off it. */
export function ballWords(ball: BallSpecification): string {
  const surface = `${ball.surfaceGrit} grit${ball.polished ? ', polished' : ''}`
  const inches = (metres: number): string => metresToInches(metres).toFixed(3)
  const core = `RG ${metresToInches(ball.radiusOfGyrationMetres).toFixed(2)}, differential ${inches(ball.differentialMetres)}`
  const asymmetry =
    ball.intermediateDifferentialMetres > 0 ? `, intermediate ${inches(ball.intermediateDifferentialMetres)}` : ''
  return `${ball.name}: ${ball.cover} cover, ${surface}; ${core}${asymmetry}; ${kilogramsToPounds(ball.massKilograms).toFixed(0)} lb`
}

/** A figure without the zeros that only rounding put there. */
export function trimmed(value: number, decimals = 2): string {
  return String(Number(value.toFixed(decimals)))
}

/** Pins gained or lost, with their sign where there is anything to it. */
export function signedPins(pins: number): string {
  if (Math.abs(pins) < 0.05) return '0.0'
  return `${pins < 0 ? '-' : '+'}${Math.abs(pins).toFixed(1)}`
}

/** What a choice cost; one that costs nothing is as good as the best. */
export const costWords = (pins: number): string => (pins > 0 ? `Cost ${pinsWords(pins)}` : 'Good as the best')

export function pinsWords(pins: number): string {
  return `${pins.toFixed(1)} ${pins.toFixed(1) === '1.0' ? 'pin' : 'pins'}`
}
