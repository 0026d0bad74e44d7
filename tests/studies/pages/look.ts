import { createRequire } from 'node:module'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import type { AxeResults } from 'axe-core'
import { type Browser, chromium, type Page } from 'playwright-core'
import { type PrintedSheets, printedSheets } from './printed-sheets.js'

export const WIDTHS = [390, 1280] as const
export const SCHEMES = ['light', 'dark'] as const
const HEIGHT = 900
const SHEET = { format: 'A4' } as const
const AXE = createRequire(import.meta.url).resolve('axe-core/axe.min.js')

const IMPACTS = ['serious', 'critical', 'moderate', 'minor'] as const
type Impact = (typeof IMPACTS)[number]

/** What was seen of a page at one width in one scheme. */
export interface Look {
  readonly width: (typeof WIDTHS)[number]
  readonly scheme: (typeof SCHEMES)[number]
  readonly violations: Readonly<Record<Impact, number>>
  /** Pixels that the page is wider than the window. */
  readonly overflowPixels: number
  /** Labels of pictures that lie on one another. */
  readonly overlaps: number
  readonly complaints: readonly string[]
}

export const opened = (executablePath: string): Promise<Browser> =>
  chromium.launch({ executablePath, args: ['--no-sandbox'] })

/** Opens a page at one width in one scheme, checks it by axe-core, and takes a picture of it where a folder for those is named. */
export async function lookAt(
  browser: Browser,
  path: string,
  { width, scheme, picture }: Pick<Look, 'width' | 'scheme'> & { readonly picture: string | null },
): Promise<Look> {
  const page = await browser.newPage({ viewport: { width, height: HEIGHT }, colorScheme: scheme })
  try {
    await page.goto(pathToFileURL(path).href)
    await page.addScriptTag({ path: AXE })
    const found = (await page.evaluate('axe.run()')) as AxeResults
    if (picture !== null) await page.screenshot({ path: picture, fullPage: true })
    const counts = IMPACTS.map((impact) => [
      impact,
      found.violations.filter((one) => one.impact === impact).reduce((sum, { nodes }) => sum + nodes.length, 0),
    ])
    return {
      width,
      scheme,
      violations: Object.fromEntries(counts),
      overflowPixels: await page.evaluate(
        'document.documentElement.scrollWidth - document.documentElement.clientWidth',
      ),
      overlaps: await page.evaluate(OVERLAPS),
      complaints: found.violations.map(({ id, impact, nodes }) => `${impact} ${id}: ${nodes[0]!.html.slice(0, 160)}`),
    }
  } finally {
    await page.close()
  }
}

/** Pairs of labels of a picture whose boxes share more than a pixel each way. */
const OVERLAPS = `[...document.querySelectorAll('svg')].reduce((sum, svg) => {
  const boxes = [...svg.querySelectorAll('text')].map((text) => text.getBoundingClientRect()).filter(({ width }) => width > 0)
  const meets = (a, b) => Math.min(a.right, b.right) - Math.max(a.left, b.left) > 1 && Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > 1
  return sum + boxes.reduce((own, box, at) => own + boxes.slice(at + 1).filter((other) => meets(box, other)).length, 0)
}, 0)`

export interface Printed extends PrintedSheets {
  /** Sheets before the first player's own, where players have sheets of their own. */
  readonly before: number
}

/** Prints a page on A4; kept where a folder for prints is named. */
export async function printOf(browser: Browser, path: string, kept: string | null): Promise<Printed> {
  const page = await browser.newPage({ viewport: { width: 1280, height: HEIGHT } })
  try {
    await page.goto(pathToFileURL(path).href)
    const whole = await page.pdf({ ...SHEET, ...(kept === null ? {} : { path: kept }) })
    return { ...printedSheets(whole), before: await sheetsBeforePlayers(page) }
  } finally {
    await page.close()
  }
}

async function sheetsBeforePlayers(page: Page): Promise<number> {
  await page.addStyleTag({ content: '@media print { section.player, section.player ~ * { display: none } }' })
  return printedSheets(await page.pdf(SHEET)).count
}

export const pictureIn = (folder: string, name: string, { width, scheme }: Pick<Look, 'width' | 'scheme'>): string =>
  join(folder, `${name}-${width}-${scheme}.png`)
