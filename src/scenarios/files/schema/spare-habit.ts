import { type BowlerProfile, SPARE_SYSTEMS, type SpareSystem } from '../../../sim/world/bowler/profile.js'
import { identifier, oneOf } from './fields.js'

/** How a bowler shoots at spares by habit; both may be left out. */
export const spareHabitFields = {
  spareBall: identifier().optional(),
  spareSystem: oneOf(...SPARE_SYSTEMS).optional(),
}

interface SpareHabitData {
  readonly spareBall?: string | undefined
  readonly spareSystem?: SpareSystem | undefined
}

export function spareHabitFromData({ spareBall, spareSystem }: SpareHabitData): Pick<BowlerProfile, 'spareHabit'> {
  if (spareBall === undefined && spareSystem === undefined) return {}
  return {
    spareHabit: {
      ...(spareBall === undefined ? {} : { ballId: spareBall }),
      ...(spareSystem === undefined ? {} : { system: spareSystem }),
    },
  }
}
