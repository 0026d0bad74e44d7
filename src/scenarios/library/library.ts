import type { ScenarioInput } from '../schema/scenario.js'
import { flatFortyFive } from './flat-forty-five.js'
import { houseForty } from './house-forty.js'
import { shortThirtyFive } from './short-thirty-five.js'
import { unseenDraw } from './unseen-draw.js'

/** The scenarios that come with the program: the lanes of an invented club. The same ones lie in scenarios-demo as files. */
const BUILT_IN: Readonly<Record<string, ScenarioInput>> = {
  'house-forty': houseForty,
  'flat-forty-five': flatFortyFive,
  'short-thirty-five': shortThirtyFive,
  'unseen-draw': unseenDraw,
}

export function builtInNames(): readonly string[] {
  return Object.keys(BUILT_IN)
}

/** A built-in scenario as written, or undefined where there is none of that name. */
export function builtInScenario(name: string): ScenarioInput | undefined {
  return Object.hasOwn(BUILT_IN, name) ? BUILT_IN[name] : undefined
}
