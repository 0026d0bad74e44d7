import { existsSync, mkdirSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { type Look, lookAt, opened, pictureIn, printOf, SCHEMES, WIDTHS } from './pages/look.js'
import { pagesToOpen } from './pages/pages-to-open.js'

const EXECUTABLE = 'DRYBOARD_BROWSER'

/**
 * Every kind of page that the program writes, opened in a browser at 390 and 1280 pixels by day and by night, checked by axe-core, and
 * printed on A4: accessibility violations by weight (elements), pixels wider than the window, labels of pictures that overlap, sheets of
 * print and how many of them are empty; of a group, whether each player takes one sheet. No browser comes with the project: its path is
 * the first argument or stands in DRYBOARD_BROWSER (Chromium or one of its kind). A second argument names a folder in which pages,
 * pictures and prints are kept. `npm run study pages-in-browser /usr/bin/chromium`, some four minutes, most of them for pricing; by Chromium 150
 * and axe-core 4.14, every figure the same at both widths in both schemes:
 *
 *     page                critical serious moderate minor  overflow overlaps   print
 *     debrief                    0       0        0     0         0        0   4 sheets, 0 empty
 *     debrief-two-lanes          0       0        0     0         0        0   3 sheets, 0 empty
 *     frame                      0       0        0     0         0        0   2 sheets, 0 empty
 *     review-player              0       0        0     0         0        0   5 sheets, 0 empty
 *     review-group               0       0        0     0         0        0   7 sheets, 0 empty, 5 of them for 5 players
 *     progress                   0       0        0     0         0        0   1 sheet, 0 empty
 *     standings                  0       0        0     0         0        0   1 sheet, 0 empty
 *     season                     0       0        0     0         0        0   1 sheet, 0 empty
 *     board                      0       0        0     0         0        0   1 sheet, 0 empty
 *
 * Before pages were looked at so: headings out of order on debrief and standings, regions of one name in a group, 1 to 15 overlapping labels,
 * three sheets a player. Contrast of paths over oil is held by a test (page-contrast.test.ts).
 */
export async function run([path, kept]: readonly string[]): Promise<void> {
  const executable = path ?? process.env[EXECUTABLE]
  if (executable === undefined || !existsSync(executable)) {
    const why = executable === undefined ? 'No browser is named' : `There is no browser at ${executable}`
    process.stderr.write(`${why}: give the path of a Chromium as argument or in ${EXECUTABLE}.\n`)
    process.exitCode = 64
    return
  }
  const folder = kept ?? mkdtempSync(join(tmpdir(), 'dryboard-pages-'))
  if (kept !== undefined) mkdirSync(kept, { recursive: true })
  const pages = await pagesToOpen(folder, (words) => process.stderr.write(`${words}\n`))
  const browser = await opened(executable)
  const complaints: string[] = []
  try {
    process.stdout.write(`${HEADS}\n`)
    for (const { name, path: page, sheetsOfTheirOwn } of pages) {
      for (const width of WIDTHS) {
        for (const scheme of SCHEMES) {
          const picture = kept === undefined ? null : pictureIn(kept, name, { width, scheme })
          const look = await lookAt(browser, page, { width, scheme, picture })
          process.stdout.write(`${lineOf(name, look)}\n`)
          complaints.push(...complaintsAbout(look).map((words) => `${name} ${width} ${scheme}: ${words}`))
        }
      }
      const print = await printOf(browser, page, kept === undefined ? null : join(kept, `${name}.pdf`))
      const own = print.count - print.before
      const ofPlayers = sheetsOfTheirOwn === 0 ? '' : `, ${own} of them for ${sheetsOfTheirOwn} players`
      process.stdout.write(
        `${name.padEnd(19)} print: ${print.count} ${print.count === 1 ? 'sheet' : 'sheets'}, ${print.empty} empty${ofPlayers}\n`,
      )
      if (print.empty > 0) complaints.push(`${name}: ${print.empty} empty sheets in print`)
      if (sheetsOfTheirOwn > 0 && own !== sheetsOfTheirOwn) complaints.push(`${name}: not one sheet a player`)
    }
  } finally {
    await browser.close()
    if (kept === undefined) rmSync(folder, { recursive: true, force: true })
  }
  process.stdout.write(`${complaints.length} complaints\n${complaints.map((words) => `${words}\n`).join('')}`)
  if (complaints.length > 0) process.exitCode = 1
}

const complaintsAbout = ({ complaints, overflowPixels, overlaps }: Look): string[] => [
  ...complaints,
  ...(overflowPixels > 0 ? [`${overflowPixels} pixels wider than the window`] : []),
  ...(overlaps > 0 ? [`${overlaps} labels on others`] : []),
]

const HEADS = 'page                width scheme  critical serious moderate minor  overflow overlaps'

function lineOf(name: string, { width, scheme, violations, overflowPixels, overlaps }: Look): string {
  const { critical, serious, moderate, minor } = violations
  return `${name.padEnd(19)} ${String(width).padStart(5)} ${scheme.padEnd(6)} ${[
    [critical, 9],
    [serious, 7],
    [moderate, 8],
    [minor, 5],
    [overflowPixels, 9],
    [overlaps, 8],
  ]
    .map(([value, wide]) => String(value).padStart(wide!))
    .join(' ')}`
}
