import { basename } from 'node:path'
import { LEDGER_TERMS, shortfallOf } from '../../../sim/analysis/debrief/ledger/ledger.js'
import { mirrorFilm } from '../../../sim/world/lane/film.js'
import { CAUTIONS } from '../../words/cautions.js'
import { findingParagraph, findingWords } from '../../words/finding-words.js'
import { type FramePlace, noSuchFrame } from '../../words/frame-place.js'
import { LEDGER_PARTS } from '../../words/ledger-words.js'
import { thickestMicrons } from '../../words/oil-picture.js'
import { fellWords, seenParts } from '../../words/throw-words.js'
import { shortDecision } from '../../words/words.js'
import type { DebriefedThrow } from '../debrief/debrief.js'
import { choices, type DebriefedRecord, roads } from './debrief-page.js'
import { escaped } from './escaped.js'
import { findingsList, notesList } from './findings-html.js'
import { laneSvg } from './lane-svg.js'
import { cautionsBox, cell, head, htmlPage, rowHead, tableOf } from './page.js'

/**
 * One frame of a debrief as a page of its own: what was seen, what the choice cost, what else could have been thrown, where the pins
 * went, and the balls over the oil as the first of them met it, numbered by their frame.
 *
 * @throws ScenarioError where the block has no such frame
 */
export function frameHtml({ path, record, debrief, notes }: DebriefedRecord, at: FramePlace): string {
  const { account, ended } = debrief
  const inFrame = debrief.throws.filter(({ record: { spot } }) => spot.game === at.game && spot.frame === at.frame)
  const [first] = inFrame
  if (!first) throw noSuchFrame(path, at)
  const { bag, bowler, lanes } = ended.setup
  const name = lanes[first.record.spot.lane]!.name
  const tags = account.tags.filter(({ game, frames }) => game === at.game && frames.includes(at.frame))
  const { film } = first.record.truth.laneBefore
  const oil = bowler.hand === 'left' ? mirrorFilm(film) : film
  const title = `${record.scenario.title}, game ${at.game}, frame ${at.frame}`
  const thrown = inFrame.map((one) => one.record)
  return htmlPage(title, [
    `<h1>${escaped(title)}</h1>`,
    `<p class="soft">${escaped(`${record.player === undefined ? '' : `${record.player}, `}${basename(path)}, seed ${record.seed}, ${name}; bowled for ${bowler.name}`)}</p>`,
    ...inFrame.map((one) => ballPart(one, bag, bowler.hand)),
    `<figure>${laneSvg(oil, Math.max(thickestMicrons(oil), 1e-9), thrown, `Oil at this shot on ${name}, with the balls of the frame`)}<figcaption>${escaped(name)} when the first of these balls was thrown; numbers are ${inFrame.length > 1 ? 'frame and ball' : 'the frame'}, a whole line struck.</figcaption></figure>`,
    '<h2>The choices</h2>',
    choices(inFrame, bag),
    ...roads(
      inFrame.filter(({ counted }) => counted),
      bag,
    ),
    '<h2>Where the pins went</h2>',
    ledgerTable(
      inFrame.filter(({ counted }) => counted),
      bag,
    ),
    '<h2>Findings it is part of</h2>',
    findingsList(
      tags.map((tag) => {
        const words = findingWords(tag, ended)
        return { words: findingParagraph(words), practise: words.practise }
      }),
    ),
    ...notesList(
      notes.filter(({ game, frame }) => game === at.game && frame === at.frame),
      'h2',
    ),
    ...cautionsBox(tags.length > 0 ? CAUTIONS : []),
  ])
}

type Bag = Parameters<typeof shortDecision>[1]

function ballPart({ record }: DebriefedThrow, bag: Bag, hand: 'left' | 'right'): string {
  const { spot, decision } = record
  return `<p><strong>Ball ${spot.ball}</strong>: ${escaped(shortDecision(decision, bag))}. Seen: ${escaped(seenParts(record, hand).join(', '))}. ${escaped(fellWords(record, hand))}</p>`
}

function ledgerTable(throws: readonly DebriefedThrow[], bag: Bag): string {
  const rows = throws.flatMap(({ record, account: { graded } }) =>
    graded
      ? [
          [
            rowHead(`ball ${record.spot.ball}, ${shortDecision(record.decision, bag)}`),
            ...LEDGER_TERMS.map((term) => cell(signed(-graded.ledger[term]), 'n')),
            cell(signed(-shortfallOf(graded.ledger)), 'n'),
          ],
        ]
      : [],
  )
  const heads = [head('ball'), ...LEDGER_TERMS.map((term) => head(LEDGER_PARTS[term][0], 'n')), head('in all', 'n')]
  return tableOf('Where the pins went', heads, rows)
}

const signed = (pins: number): string =>
  Math.abs(pins) < 0.05 ? '0.0' : `${pins < 0 ? '−' : '+'}${Math.abs(pins).toFixed(1)}`
