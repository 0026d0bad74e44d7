import type { Scenario } from '../files/scenario/scenario.js'

const USUAL_SEED = '1'

/** The seed of a command that is to give the same each time: as asked for, else the scenario's own, else 1. */
export function seedOf(asked: string | undefined, scenario?: Pick<Scenario, 'data'>): string {
  return asked ?? scenario?.data.seed ?? USUAL_SEED
}
