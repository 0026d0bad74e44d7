import type { Estimate } from '../review/estimate.js'

/** A mean as a bar from 0, with its interval as a whisker over it; `most` pins fill the track. */
export function estimateBar({ mean, low, high }: Estimate, most: number): string {
  const share = (pins: number): number => Math.min(100, Math.max(0, (100 * pins) / Math.max(most, 0.01)))
  const percent = (value: number): string => `${value.toFixed(1)}%`
  const whisker =
    low === null || high === null
      ? ''
      : `<i style="left:${percent(share(low))};width:${percent(share(high) - share(low))}"></i>`
  return `<div class="track"><b style="width:${percent(share(mean))}"></b>${whisker}</div>`
}

export const intervalWords = ({ low, high }: Estimate): string =>
  low === null || high === null ? '' : `${low.toFixed(1)} to ${high.toFixed(1)}`
