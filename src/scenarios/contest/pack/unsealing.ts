import { PACK_VERSION, UNSEALING_FORMAT } from '../../files/schema/contest-formats.js'
import { type Pack, type Unsealing, unsealingSchema } from '../../files/schema/contest-pack.js'
import { problemSentences } from '../../files/text/problems.js'
import { ScenarioError } from '../../files/text/scenario-error.js'
import { readSourceText } from '../../files/text/source-text.js'
import { isSignedBy, type SigningKey, signatureOf } from '../../store/signing.js'
import { commitmentOf, type OpenedPack, packDigest } from './pack.js'

/** The organiser's word that a contest is over, with the seed for whoever wants to check it against the commitment. */
export function unsealingOf({ digest, seed }: OpenedPack, unsealedAt: string, key: SigningKey): Unsealing {
  const unsigned = { format: UNSEALING_FORMAT, version: PACK_VERSION, pack: digest, seed, unsealedAt } as const
  return { ...unsigned, signature: signatureOf(unsigned, key) }
}

/**
 * Reads an unsealing and checks that it is the organiser's, of this pack, and that its seed is the one committed to.
 *
 * @throws ScenarioError
 */
export function unsealingFromText(path: string, text: string, pack: Pack): Unsealing {
  const source = readSourceText(path, text)
  const checked = unsealingSchema.safeParse(source.data)
  if (!checked.success) throw new ScenarioError(problemSentences(source, checked.error.issues))
  const { signature, ...unsigned } = checked.data
  if (!isSignedBy(unsigned, signature, pack.organiser))
    throw new ScenarioError([`${path} signature: it is not the organiser's.`])
  if (unsigned.pack !== packDigest(pack)) throw new ScenarioError([`${path} pack: it is of another contest.`])
  if (commitmentOf(pack, unsigned.seed) !== pack.commitment)
    throw new ScenarioError([`${path} seed: it is not the one that was committed to.`])
  return checked.data
}
