import { builtInNames } from '../../src/scenarios/library/library.js'
import type { Policy } from '../../src/sim/analysis/policies/policies.js'
import { notSaidIn } from '../said/not-said.js'
import { differing, figuresOf, printedBlock } from '../said/one-price.js'

/*
 * Whether every place prints one figure for one ball: grade line, header, screen, other choices, ledger, findings, plain text,
 * page and JSON, over the first throws of blocks on all built-in lanes by careful and careless policies.
 *
 *   npm run study one-price              50 blocks of 4 throws
 *   npm run study one-price 10 20        10 blocks from number 20 on
 *
 * The last run, of 50 blocks: 2,007 figures, none of them another than it should be, and no word that is not said.
 */
const POLICIES: readonly Policy[] = ['thumb', 'stay', 'random']
const THROWS = 4

export async function run([count = '50', first = '0']: readonly string[]): Promise<void> {
  const names = builtInNames()
  let figures = 0
  let wrong = 0
  for (let block = Number(first); block < Number(first) + Number(count); block++) {
    const name = names[block % names.length]!
    const all = await printedBlock(name, `one price ${block}`, POLICIES[block % POLICIES.length]!, THROWS)
    const printed = figuresOf(all)
    const off = differing(printed)
    const unsaid = [...notSaidIn(all.plain), ...notSaidIn(all.html.replace(/<style>.*?<\/style>/s, ''))]
    figures += printed.length
    wrong += off.length + unsaid.length
    console.log(
      `${block} ${name}: ${printed.length} figures, ${off.length} differ, cost ${all.report.givenAway.total.toFixed(1)}`,
    )
    for (const { where, printed: shown, is } of off) console.log(`  ${where}: ${shown}, not ${is}`)
    for (const words of unsaid) console.log(`  ${words}`)
  }
  console.log(`${figures} figures in all, ${wrong} wrong`)
  if (wrong > 0) process.exitCode = 1
}
