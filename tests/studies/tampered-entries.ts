import { checkEntry } from '../../src/scenarios/contest/standings/check-entry.js'
import { movedBy, playEntry, sealed } from '../scenarios/contest/contest-for-tests.js'
import { answersToTampered, TAMPERINGS } from '../scenarios/contest/tampered-entries.js'

const ENTRIES = 1000

/**
 * Tampers with a contest's entry 1,000 times in thirteen ways and checks each beside two good ones, with a list of who entered. Each must
 * be refused or kept out with a reason, and no good one. Argument: how many.
 *
 * An edited choice signed by the player's own key is another block of the same player: it is refused unless every pin falls as before,
 * and is then kept out as another state of the same entry.
 *
 *     1,000 in all: refused, or out of the places, 1,000; believed 0; without a reason 0; good ones kept out 0 of 2
 */
export async function run([entries]: readonly string[] = []): Promise<void> {
  const { opened } = sealed()
  const good = await playEntry(opened, 'Ansa')
  const other = await playEntry(opened, 'Brono', movedBy(1))
  const answers = await answersToTampered({ opened, good, other }, Number(entries ?? ENTRIES))
  for (const tampering of TAMPERINGS) {
    const of = answers.filter((one) => one.tampering === tampering)
    const count = (status: string): number => of.filter(({ entry }) => entry.status === status).length
    process.stdout.write(
      `${tampering.padEnd(36)} ${String(of.length).padStart(4)}: refused ${count('refused')}, out ${count('out')}, unfinished ${count('unfinished')}, believed ${count('ranked')}\n`,
    )
  }
  for (const { tampering, text } of answers.filter(({ entry }) => entry.status === 'ranked'))
    process.stdout.write(`believed: ${tampering}\n${text}\n`)
  const silent = answers.filter(({ entry }) => entry.reasons.length === 0).length
  const sound = [good, other].map(({ path }) => checkEntry(path, opened, { luck: false, accounts: null }))
  const refused = (await Promise.all(sound)).filter(({ status }) => status !== 'ranked').length
  process.stdout.write(`${answers.length} in all; without a reason ${silent}; good ones kept out ${refused} of 2\n`)
}
