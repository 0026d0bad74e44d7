import type { ChargePart, Claim, PricedClaim } from './tag.js'

/**
 * Divides the charge for one choice among what could be said of it. Each part of the charge goes evenly to the claims that
 * explain it: the Shapley value of the game in which a set of claims is worth the parts that one of them explains. Claims that
 * say why a choice was made come first; those that only say what was wrong share what they leave. Nothing is counted twice,
 * so the pieces add up to the charge as far as something explains it.
 *
 * @param shares the parts of the charge, in pins
 * @param whys claims that say why; @param whats claims that say what
 */
export function sharedOut(
  shares: Readonly<Partial<Record<ChargePart, number>>>,
  whys: readonly Claim[],
  whats: readonly Claim[],
): PricedClaim[] {
  const pins = new Map<Claim, number>()
  const give = (claim: Claim, more: number): void => {
    pins.set(claim, (pins.get(claim) ?? 0) + more)
  }
  for (const [part, share] of Object.entries(shares) as [ChargePart, number][]) {
    if (share === 0) continue
    const explained = whys.reduce((sum, { explains }) => sum + (explains[part] ?? 0), 0)
    const scale = explained > 1 ? 1 / explained : 1
    for (const why of whys) if (why.explains[part]) give(why, share * why.explains[part] * scale)
    const left = share * (1 - Math.min(1, explained))
    const fitting = whats.filter(({ explains }) => explains[part])
    for (const what of fitting) give(what, left / fitting.length)
  }
  return [...pins].filter(([, own]) => own > 0).map(([claim, own]) => ({ claim, pins: own }))
}
