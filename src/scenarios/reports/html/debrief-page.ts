import { basename } from 'node:path'
import { LEDGER_TERMS, type LedgerTerms, shortfallOf } from '../../../sim/analysis/debrief/ledger/ledger.js'
import { radiansToDegrees } from '../../../sim/units.js'
import { leaveName } from '../../../sim/world/pins/leaves.js'
import type { Note } from '../../store/coach-notes.js'
import type { BlockRecord } from '../../store/record.js'
import type { Replay } from '../../store/replay.js'
import { LEDGER_LEAD, LEDGER_PARTS } from '../../words/ledger-words.js'
import { capital, shortDecision, signedPins } from '../../words/words.js'
import type { Debrief, DebriefedThrow } from '../debrief/debrief.js'
import { debriefReport } from '../debrief/debrief-report.js'
import { originWords } from '../debrief/origin-words.js'
import { dearestWithOtherChoices, OTHER_CHOICE_WORDS } from '../debrief/road-lines.js'
import { escaped } from './escaped.js'
import { findingsList, notesList } from './findings-html.js'
import { laneFigures } from './lane-figures.js'
import { cautionsBox, cell, head, htmlPage, rowHead, tableOf, tile, tiles } from './page.js'
import { scoreSheets } from './score-sheet.js'

export interface DebriefedRecord {
  readonly path: string
  readonly record: BlockRecord
  readonly replay: Replay
  readonly debrief: Debrief
  readonly notes: readonly Note[]
}

/** A debrief as one page that needs nothing else: sheet, findings, every choice, other choices, where the pins went, and the oil. */
export function debriefHtml({ path, record, replay, debrief, notes }: DebriefedRecord): string {
  const report = debriefReport(record, debrief)
  const { account, ended, throws } = debrief
  const { bag, bowler } = ended.setup
  const { sums } = account
  const most = Math.max(2, ...report.ledger.frames.map(({ chargedPins }) => chargedPins))
  const who = record.player === undefined ? '' : `${record.player}, `
  return htmlPage(`${record.scenario.title}, debrief`, [
    `<h1>${escaped(record.scenario.title)}${report.finished ? '' : ', unfinished'}</h1>`,
    `<p class="soft">${escaped(`${who}${basename(path)}, seed ${record.seed}; bowled for ${bowler.name}`)}</p>`,
    `<p class="soft">${escaped(sentence(originWords(record)))}</p>`,
    tiles([
      tile(report.games.length === 1 ? 'Score' : 'Scores', report.games.join(' ') || '–'),
      tile('Cost of the choices', sums.block.chargedPins.toFixed(1), 'pins'),
      tile('First balls', sums.firstBalls.chargedPins.toFixed(1)),
      tile('Spares', sums.spares.chargedPins.toFixed(1)),
    ]),
    ...scoreSheets(ended, report, most),
    '<h2>Findings and what to practise</h2>',
    findingsList(report.tags),
    ...(report.untoldPins >= 0.05
      ? [`<p>Besides, ${report.untoldPins.toFixed(1)} pins in smaller or less certain pieces.</p>`]
      : []),
    ...(report.luck.length > 0 ? ['<h2>Luck, which grades nothing</h2>'] : []),
    ...report.luck.map(({ words }) => `<p>${escaped(words)}</p>`),
    ...notesList(notes, 'h2'),
    '<h2>The lanes</h2>',
    laneFigures(replay),
    '<h2>Every choice</h2>',
    `<p class="soft">${escaped(bag.map(({ name }, index) => `${index + 1} is the ${name}`).join('; '))}. Choices are ball, slide/target; a dash is as good as the best.</p>`,
    choices(throws, bag),
    ...roads(
      throws.filter(({ counted }) => counted),
      bag,
    ),
    '<h2>Where the pins went</h2>',
    `<p class="soft">${escaped(sentence(LEDGER_LEAD))} ${escaped(LEDGER_TERMS.map((term) => LEDGER_PARTS[term].join(': ')).join('. '))}. The five add up.</p>`,
    ledger(account.sums),
    ...cautionsBox(report.cautions),
  ])
}

const sentence = (words: string): string => `${capital(words)}.`

type Bag = Parameters<typeof shortDecision>[1]

export function choices(throws: readonly DebriefedThrow[], bag: Bag): string {
  const heads = [
    head('frame'),
    head('thrown'),
    head('entered', 'n wide'),
    head('left'),
    head('cost', 'n'),
    head('short of the best, oil seen', 'n wide'),
    head('best'),
  ]
  const rows = throws.map(({ record, fair, account: { graded }, counted }) => {
    const { spot, decision, standingAfter, truth } = record
    const angle = radiansToDegrees(truth.entryAngleRadians).toFixed(1)
    return [
      rowHead(spot.phase === 'practice' ? 'practice' : `${spot.game}-${spot.frame}.${spot.ball}`, 'nowrap'),
      cell(shortDecision(decision, bag)),
      cell(Number.isFinite(truth.leftLaneFeet) ? 'gutter' : `${truth.entryBoard.toFixed(1)}, ${angle}°`, 'n wide'),
      cell(standingAfter === 0 ? 'all down' : leaveName(standingAfter)),
      cell(!counted ? 'given' : fair ? pinsOrDash(fair.givenAwayPins) : '', 'n'),
      cell(graded && counted ? pinsOrDash(graded.knownLostPins) : '', 'n wide'),
      cell(counted && fair && fair.givenAwayPins > 0 ? shortDecision(fair.best, bag) : ''),
    ]
  })
  return tableOf('Every choice', heads, rows)
}

const pinsOrDash = (pins: number): string => (pins < 0.05 ? '–' : pins.toFixed(1))

export function roads(throws: readonly DebriefedThrow[], bag: Bag): string[] {
  const told = dearestWithOtherChoices(throws)
  if (told.length === 0) return []
  const rows = told.flatMap(({ thrown, others }) =>
    others.map(({ what, decision, fairGainPins, knownGainPins }, index) => [
      cell(index === 0 ? `${thrown.spot.game}-${thrown.spot.frame}.${thrown.spot.ball}` : ''),
      cell(index === 0 ? shortDecision(thrown.decision, bag) : ''),
      cell(shortDecision(decision, bag)),
      cell(OTHER_CHOICE_WORDS[what], 'wide'),
      cell(signedPins(fairGainPins), 'n'),
      cell(signedPins(knownGainPins), 'n'),
    ]),
  )
  return [
    '<h2>Other choices</h2>',
    '<p class="soft">What else could have been thrown where the choices cost most, and the pins it would have gained: from what you had seen, and on the real oil.</p>',
    tableOf(
      'Other choices',
      [
        head('frame'),
        head('thrown'),
        head('instead'),
        head('what it is', 'wide'),
        head('as seen', 'n'),
        head('real oil', 'n'),
      ],
      rows,
    ),
  ]
}

function ledger({ frames, games, block }: Debrief['account']['sums']): string {
  const heads = [head('frame'), ...LEDGER_TERMS.map((term) => head(LEDGER_PARTS[term][0], 'n')), head('in all', 'n')]
  const row = (name: string, terms: LedgerTerms): string[] => [
    rowHead(name, 'nowrap'),
    ...LEDGER_TERMS.map((term) => cell(pins(-terms[term]), 'n')),
    cell(pins(-shortfallOf(terms)), 'n'),
  ]
  return tableOf('Where the pins went', heads, [
    ...games.flatMap(({ game, ledger: sum }) => [
      ...frames.filter((one) => one.game === game).map((one) => row(`${game}-${one.frame}`, one.ledger)),
      row(`game ${game}`, sum),
    ]),
    ...(games.length > 1 ? [row('block', block.ledger)] : []),
  ])
}

const pins = (value: number): string => signedPins(value).replace('-', '−')
