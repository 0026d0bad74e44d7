import { beforeAll, describe, expect, it } from 'vitest'
import { HELP_LINES } from '../../src/scenarios/plain/help-lines.js'
import { openingLines } from '../../src/scenarios/plain/opening-lines.js'
import { gradeSentence, gradeWords } from '../../src/scenarios/words/grade-words.js'
import { runCommand } from '../cli/in-process.js'
import { notSaidIn, notSaidKeys } from './not-said.js'
import { differing, figuresOf, framesOf, type Printed, printedBlock, screensOf } from './one-price.js'

let blocks: readonly Printed[]
beforeAll(async () => {
  blocks = [
    await printedBlock('house-forty', 'said', 'random', 2),
    await printedBlock('short-thirty-five', 'said', 'thumb', 1),
  ]
}, 120_000)

describe('one ball', () => {
  it('has one price, wherever it is printed', () => {
    for (const block of blocks) {
      const figures = figuresOf(block)
      expect(figures.length).toBeGreaterThan(8)
      expect(differing(figures)).toEqual([])
    }
    // A careless choice among them, or nothing would be told.
    expect(blocks[0]!.report.givenAway.total).toBeGreaterThan(0.5)
  })
})

describe('what is not said', () => {
  it('is on no page of a debrief, in no line and under no new key', () => {
    for (const block of blocks) {
      const { debrief, plain, html, report, states } = block
      const grades = debrief.throws.flatMap(({ fair, record }, index) =>
        fair ? [gradeSentence(gradeWords(fair, record.decision, states[index]!))] : [],
      )
      const page = html.replace(/<style>.*?<\/style>/s, '').replace(/<[^>]*>/g, ' ')
      for (const text of [plain, page, ...framesOf(block), ...screensOf(block), ...grades])
        expect(notSaidIn(text)).toEqual([])
      expect(notSaidKeys(report)).toEqual([])
    }
  })

  it('is in no opening, no help of the line mode and no help of a command', async () => {
    const texts = [HELP_LINES.join('\n'), openingLines(blocks[0]!.play.scenario, 's').join('\n')]
    const { out } = await runCommand(['--help'])
    texts.push(out)
    const listed = out.split('Commands:')[1]!.split('\n\n')[0]!
    const commands = [...listed.matchAll(/^ {2}([a-z]+)[ |]/gm)].map(([, name]) => name!)
    expect(commands.length).toBeGreaterThan(10)
    for (const command of commands.filter((name) => name !== 'help'))
      texts.push((await runCommand([command, '--help'])).out)
    // Policies are named by what they are called on the command line.
    for (const text of texts) expect(notSaidIn(text.replaceAll(/"?\b(known|fair)\b"?/g, ''))).toEqual([])
  })
})
