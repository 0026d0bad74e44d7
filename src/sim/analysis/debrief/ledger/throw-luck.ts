import type { BlockState, ThrowRecord } from '../../../world/block/types.js'
import { trueOilPrices } from './throw-worths.js'

/** Pins that a throw's delivery and the pins' play lost against their own means, as in the ledger; above 0 is lost. */
interface ThrowLuck {
  readonly deliveryPins: number
  readonly carryPins: number
}

/**
 * The luck of one throw of a game, priced on the oil as it was; nothing is searched for, so it takes a small part of a grade's time.
 * A score with this given back is the same in the mean and varies less (control variates).
 *
 * @param before the block as it stood then
 */
export function throwLuck(before: BlockState, record: ThrowRecord): ThrowLuck {
  const { ofChoice, ofDelivered, ofResult } = trueOilPrices(before)
  const delivered = ofDelivered(record)
  return { deliveryPins: ofChoice(record.decision) - delivered, carryPins: delivered - ofResult(record) }
}
