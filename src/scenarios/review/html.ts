import { FULL_RACK } from '../../sim/pins/leaves.js'
import { replayRecord } from '../replay.js'
import { laneSvg } from './lane-svg.js'
import { reviewMarkdown } from './markdown.js'
import { reviewReport } from './review-report.js'
import type { ReviewedBlock } from './reviewed-block.js'

const STYLE = `
body { font: 16px/1.5 system-ui, sans-serif; max-width: 60rem; margin: 2rem auto; padding: 0 1rem; color: #1c1c1c; background: #fdfcf9 }
h1 { margin-top: 3rem } table { border-collapse: collapse } td, th { padding: .2rem .8rem; border-bottom: 1px solid #ccc; text-align: left }
svg { width: 100%; height: auto; border: 1px solid #999 } .wood { fill: #efe3c8 } .oil { fill: #1f5f8b }
.throw { fill: none; stroke: #a3301c; stroke-width: 1.2; opacity: .75 } figcaption { color: #555 }
@media (prefers-color-scheme: dark) { body { color: #eee; background: #181818 } .wood { fill: #4a4234 } .oil { fill: #8fc7ef } .throw { stroke: #ff9c7a } figcaption { color: #aaa } }`

/** The review as one page that needs nothing else: text, tables and a picture of every lane before and after with the first balls thrown. */
export function reviewHtml(blocks: readonly ReviewedBlock[]): string {
  const body = [...fromMarkdown(reviewMarkdown(reviewReport(blocks))), ...blocks.flatMap(lanePictures)]
  return `<!doctype html>\n<html lang="en"><head><meta charset="utf-8"><title>Dryboard review</title><style>${STYLE}</style></head>\n<body>\n${body.join('\n')}\n</body></html>\n`
}

function lanePictures({ path, record }: ReviewedBlock): string[] {
  const { scenario, states } = replayRecord(record, path)
  const [begun, ended] = [states[0], states[states.length - 1]]
  const leftHanded = scenario.setup.bowler.hand === 'left'
  return scenario.setup.lanes.flatMap(({ name }, lane) => {
    const firstBalls = ended.throws.filter((one) => one.spot.lane === lane && one.standingBefore === FULL_RACK)
    const words = escaped(`${scenario.title}, ${name}`)
    return [
      figure(
        laneSvg(begun.lanes[lane].film, [], leftHanded, `${words} before`),
        `${words}: the oil before the first throw`,
      ),
      figure(
        laneSvg(ended.lanes[lane].film, firstBalls, leftHanded, `${words} after`),
        `${words}: after the last, with the first balls`,
      ),
    ]
  })
}

const figure = (picture: string, words: string): string =>
  `<figure>${picture}<figcaption>${words}</figcaption></figure>`

/** The few forms of Markdown that the review is written in. */
function fromMarkdown(lines: readonly string[]): string[] {
  return lines.flatMap((line, index) => {
    const text = escaped(line)
    if (line === '') return []
    if (line.startsWith('## ')) return [`<h2>${text.slice(3)}</h2>`]
    if (line.startsWith('# ')) return [`<h1>${text.slice(2)}</h1>`]
    if (line.startsWith('| ---')) return []
    if (line.startsWith('|')) return [tableRow(text, lines[index - 1] ?? '', lines[index + 1] ?? '')]
    if (line.startsWith('- ')) return [listItem(text, lines[index - 1] ?? '', lines[index + 1] ?? '')]
    return [`<p>${text}</p>`]
  })
}

function tableRow(text: string, before: string, after: string): string {
  const isHeader = !before.startsWith('|')
  const cells = text
    .split('|')
    .slice(1, -1)
    .map((cell) => (isHeader ? `<th>${cell.trim()}</th>` : `<td>${cell.trim()}</td>`))
  return `${isHeader ? '<table>' : ''}<tr>${cells.join('')}</tr>${after.startsWith('|') ? '' : '</table>'}`
}

function listItem(text: string, before: string, after: string): string {
  return `${before.startsWith('- ') ? '' : '<ul>'}<li>${text.slice(2)}</li>${after.startsWith('- ') ? '' : '</ul>'}`
}

function escaped(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;')
}
