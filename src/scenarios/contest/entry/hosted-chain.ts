import { createHash } from 'node:crypto'
import type { Pack } from '../../files/schema/contest-pack.js'
import type { ContestSection } from '../../store/contest-section.js'
import { canonicalText } from '../../store/hashes.js'
import type { KeptDecision } from '../../store/record-schema.js'

const sha256 = (text: string): string => createHash('sha256').update(text).digest('hex')

/** The chain before the first throw: bound to the contest's commitment and the entry. */
export const chainStart = ({ contest, commitment }: Pick<Pack, 'contest' | 'commitment'>, entry: string): string =>
  sha256(canonicalText(['dryboard hosted 1', contest, commitment, entry]))

/** The next link: h_k = SHA-256(h_(k−1), choice and what it left). Whoever holds two neighbouring links can check one throw. */
export const chainLink = (before: string, { by: _by, ...thrown }: KeptDecision): string =>
  sha256(canonicalText([before, thrown]))

/** What the organiser signs of a hosted entry. */
export function hostedPart(
  pack: Pick<Pack, 'contest' | 'commitment'>,
  { entry, key }: Pick<ContestSection, 'entry' | 'key'>,
  decisions: readonly KeptDecision[],
  chain: string,
): object {
  const last = decisions.reduce(chainLink, chainStart(pack, entry))
  return { hosted: pack.contest, entry, key, throws: decisions.length, chain: last === chain ? chain : 'broken' }
}
