import type { ScenarioInput } from '../files/schema/scenario.js'
import { flatFortyFive } from './flat-forty-five.js'
import { houseForty } from './house-forty.js'
import { freshSide, leaningOil, leftFlat, leftHouse } from './left-lanes.js'
import { eliteFlat, longChallenge, longFlat, longHouse, longUnseen, threeGames } from './long-lanes.js'
import {
  challengeFortyOne,
  currentFrameSport,
  firstLeague,
  flatForty,
  heavyHouse,
  lightHouse,
  sportThirtyNine,
} from './medium-lanes.js'
import { busyPair, threeForAnything, threeOfSix, unlikePair, wetAndDry } from './pairs-and-bags.js'
import { shortFlat, shortHouse, shortUnseen, shortWorn } from './short-lanes.js'
import { shortThirtyFive } from './short-thirty-five.js'
import { unseenDraw } from './unseen-draw.js'
import { carrydown, crankersAhead, fullLane, wornHouse, wornLong } from './worn-lanes.js'

/** The scenarios that come with the program: the lanes of an invented club. Made when asked for. */
const BUILT_IN: Readonly<Record<string, () => ScenarioInput>> = {
  'house-forty': () => houseForty,
  'flat-forty-five': () => flatFortyFive,
  'short-thirty-five': () => shortThirtyFive,
  'unseen-draw': () => unseenDraw,
  'first-league': firstLeague,
  'light-house': lightHouse,
  'heavy-house': heavyHouse,
  'short-house': shortHouse,
  'long-house': longHouse,
  'challenge-forty-one': challengeFortyOne,
  'long-challenge': longChallenge,
  'sport-thirty-nine': sportThirtyNine,
  'flat-forty': flatForty,
  'short-flat': shortFlat,
  'long-flat': longFlat,
  'elite-flat': eliteFlat,
  'short-unseen': shortUnseen,
  'long-unseen': longUnseen,
  'worn-house': wornHouse,
  'worn-long': wornLong,
  'short-worn': shortWorn,
  carrydown: carrydown,
  'crankers-ahead': crankersAhead,
  'full-lane': fullLane,
  'left-house': leftHouse,
  'left-flat': leftFlat,
  'leaning-oil': leaningOil,
  'fresh-side': freshSide,
  'unlike-pair': unlikePair,
  'wet-and-dry': wetAndDry,
  'busy-pair': busyPair,
  'three-of-six': threeOfSix,
  'three-for-anything': threeForAnything,
  'three-games': threeGames,
  'current-frame-sport': currentFrameSport,
}

/** Scenarios that also lie in scenarios-demo as files to copy from. */
export const DEMO_NAMES = ['house-forty', 'flat-forty-five', 'short-thirty-five', 'unseen-draw'] as const

export function builtInNames(): readonly string[] {
  return Object.keys(BUILT_IN)
}

const made = new Map<string, ScenarioInput>()

/** A built-in scenario as written, or undefined where there is none of that name. */
export function builtInScenario(name: string): ScenarioInput | undefined {
  if (!Object.hasOwn(BUILT_IN, name)) return undefined
  const known = made.get(name) ?? BUILT_IN[name]()
  made.set(name, known)
  return known
}
