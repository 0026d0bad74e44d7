import { soundRecord } from '../cli/spoiled-sources.js'
import { answersToTampered, FORGERIES } from '../cli/tampered-records.js'

const RECORDS = 2000

/**
 * Changes 2,000 records and gives them to `verify`, a third of them as they are, a third with the scenario's hash made anew, a third with
 * every digest made anew. Each must be refused or told by other lines than the record it was made from. Argument: how many.
 *
 *     made anew (`npm run study tampered-records 2000`; 138 changes left the record as it was)
 *     nothing                621 records, refused 621, told  0, silent 0
 *     the scenario's hash    623 records, refused 623, told  0, silent 0
 *     every digest           618 records, refused 600, told 18, silent 0
 */
export async function run([records]: readonly string[] = []): Promise<void> {
  const answers = await answersToTampered(await soundRecord(), Number(records ?? RECORDS), 1)
  for (const forgery of FORGERIES) {
    const of = answers.filter((one) => one.forgery === forgery)
    const count = (answer: string): number => of.filter((one) => one.answer === answer).length
    process.stdout.write(
      `made anew: ${forgery.padEnd(19)} ${of.length} records, refused ${count('refused')}, told ${count('told')}, silent ${count('silent')}\n`,
    )
  }
  for (const { record } of answers.filter(({ answer }) => answer === 'silent')) process.stdout.write(`${record}\n`)
}
