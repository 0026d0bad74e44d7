import { beginScenario } from '../../src/scenarios/files/scenario/begin-scenario.js'
import { scenarioFrom } from '../../src/scenarios/files/scenario/scenario.js'
import { locateNowhere } from '../../src/scenarios/files/text/source-text.js'
import { loadScenario } from '../../src/scenarios/library/load.js'
import { type Debrief, debriefOf } from '../../src/scenarios/reports/debrief/debrief.js'
import { debriefLines } from '../../src/scenarios/reports/debrief/debrief-lines.js'
import { type DebriefReport, debriefReport } from '../../src/scenarios/reports/debrief/debrief-report.js'
import { frameLines } from '../../src/scenarios/reports/debrief/frame-lines.js'
import { debriefHtml } from '../../src/scenarios/reports/html/debrief-page.js'
import { noNotes } from '../../src/scenarios/store/block-notes.js'
import { type BlockRecord, recordOf } from '../../src/scenarios/store/record.js'
import { replayRecord } from '../../src/scenarios/store/replay.js'
import { gradeWords } from '../../src/scenarios/words/grade-words.js'
import { signedPins } from '../../src/scenarios/words/words.js'
import { choose, type Policy } from '../../src/sim/analysis/policies/policies.js'
import { advance } from '../../src/sim/world/block/advance.js'
import type { BlockState } from '../../src/sim/world/block/types.js'
import { debriefScreen } from '../../src/tui/screens/debrief/debrief-screen.js'
import type { DebriefState } from '../../src/tui/state/debrief-state.js'
import { type PlayState, playFrom } from '../../src/tui/state/play-state.js'
import { bare, PLAIN } from '../tui/fixtures.js'

/** A block with everything that is worked out and printed of it. */
export interface Printed {
  readonly debrief: Debrief
  readonly states: readonly BlockState[]
  readonly report: DebriefReport
  readonly plain: string
  readonly html: string
  readonly play: PlayState
}

const SIZE = { columns: 140, rows: 60 }
const LOOKING: DebriefState = {
  chosen: 0,
  shows: 'oil',
  view: 'throw',
  finding: 0,
  scroll: 0,
  running: false,
  rolling: null,
  own: null,
  whatIf: null,
}

/** The first throws of a block with two balls of its bag and no practice, so that it takes seconds. */
export async function printedBlock(name: string, seed: string, policy: Policy, throws: number): Promise<Printed> {
  const { data } = await loadScenario(name)
  const kept = [data.bag[1]?.id, data.bag.at(-1)?.id]
  const bag = data.bag.filter(({ id }) => kept.includes(id))
  // What the field throws of the bag goes on being there.
  const fieldBag = [...(data.fieldBag ?? []), ...data.bag.filter(({ id }) => !kept.includes(id))]
  const { takeBalls: _all, ...rest } = data
  const scenario = scenarioFrom(name, locateNowhere(name, { ...rest, bag, fieldBag, practiceThrows: 0 }))
  let state = beginScenario(scenario, seed)
  while (state.spot && state.throws.length < throws) state = advance(state, choose(policy, state))
  return printed(recordOf(scenario, state))
}

function printed(record: BlockRecord): Printed {
  const replay = replayRecord(record, 'block.json')
  const debrief = debriefOf(replay)
  const { states, scenario } = replay
  const grades = debrief.throws.map(({ fair }) => fair)
  const play = {
    ...playFrom(scenario, states, grades, undefined, noNotes('block')),
    account: debrief.account,
    accounts: debrief.account.throws,
  }
  return {
    debrief,
    states,
    play,
    report: debriefReport(record, debrief),
    plain: debriefLines(debrief).join('\n'),
    html: debriefHtml({ path: 'block.json', record, replay, debrief, notes: [] }),
  }
}

const screenOf = ({ play }: Printed, looking: Partial<DebriefState>): string =>
  debriefScreen(play, { ...LOOKING, ...looking }, '', SIZE, PLAIN)
    .map(bare)
    .join('\n')

/** Every page of the debrief on screen. */
export const screensOf = (all: Printed): string[] =>
  (['throw', 'choices', 'ledger', 'findings', 'calls', 'known', 'luck'] as const).flatMap((view) =>
    all.debrief.throws.map((_, chosen) => screenOf(all, { view, chosen })),
  )

/** One frame in full, for each frame. */
export const framesOf = ({ debrief }: Printed): string[] =>
  [...new Set(debrief.throws.map(({ record }) => `${record.spot.game} ${record.spot.frame}`))].map((place) => {
    const [game, frame] = place.split(' ').map(Number)
    return frameLines(debrief, { game: game!, frame: frame! }, 'block.json').join('\n')
  })

/** A figure that a place prints for a ball or a sum of balls, and what it has to be. */
interface Figure {
  readonly where: string
  readonly printed: string
  readonly is: string
}

/** Every place that prints what a ball or the block costs, with the figure it has to print. */
export function figuresOf(all: Printed): Figure[] {
  const { debrief, report, plain, html, states } = all
  const total = debrief.account.sums.block.chargedPins.toFixed(1)
  const figure = (where: string, is: string, text: string, pattern: RegExp): Figure => ({
    where,
    is,
    printed: pattern.exec(text)?.[1] ?? 'nothing',
  })
  const perThrow = debrief.throws.flatMap(({ fair, record, account }, index) => {
    if (!fair) return []
    const { spot, decision } = record
    const is = fair.givenAwayPins.toFixed(1)
    const place = `${spot.game}-${spot.frame}.${spot.ball}`
    const inWords = fair.givenAwayPins > 0 ? is : 'Good as the best'
    const inTable = fair.givenAwayPins > 0 ? is : '[-–]'
    const at = (where: string): string => `${place} ${where}`
    const screen = screenOf(all, { view: 'throw', chosen: index })
    const best = account.graded?.alternatives.find(({ what }) => what === 'best')
    const instead = screenOf(all, { view: 'choices', chosen: index })
    const frame = frameLines(debrief, { game: spot.game, frame: spot.frame }, 'block.json').join('\n')
    const told = debrief.account.tags.find((tag) => tag.at === index)
    return [
      figure(
        at('grade line'),
        inWords,
        gradeWords(fair, decision, states[index]!).what,
        /(?:Cost )?(\d+\.\d|Good as the best)/,
      ),
      figure(at('screen'), inWords.toLowerCase(), screen, /ball \d: (?:cost )?(\d+\.\d|good as the best)/),
      figure(
        at('plain'),
        inTable,
        plain.match(new RegExp(`^${place.replace('.', '\\.')} .*$`, 'm'))?.[0] ?? '',
        /\s(-|\d+\.\d)\s+(?:-|\d+\.\d)(?: {2}\d.*)?$/,
      ),
      figure(
        at('frame in full'),
        inWords.toLowerCase(),
        frame.split(`ball ${spot.ball},`)[1] ?? '',
        /^ {2}(?:cost )?(\d+\.\d|good as the best)/m,
      ),
      figure(
        at('HTML'),
        inTable,
        html.split(`<th scope="row" class="nowrap">${place}</th>`)[1] ?? '',
        /(?:<td[^>]*>[^<]*<\/td>){3}<td class="n">([^<]*)</,
      ),
      { where: at('JSON'), is, printed: sameTo(report.throws[index]!.fair!.givenAwayPins, fair.givenAwayPins, is) },
      ...(best
        ? [figure(at('other choices'), signedPins(fair.givenAwayPins), instead, /real oil.*\n.*?\s([+-]\d+\.\d)\s/)]
        : []),
      ...(told?.evidence.some(({ what }) => what === 'throw-cost')
        ? [
            figure(
              at('finding'),
              is,
              report.tags
                .find(({ at: one }) => one === index)!
                .evidence.map(({ words }) => words)
                .join('; '),
              /that throw cost (\d+\.\d)/,
            ),
          ]
        : []),
    ]
  })
  const ledger = screenOf(all, { view: 'ledger' })
  const perFrame = debrief.account.sums.frames.flatMap(({ game, frame, chargedPins }) => {
    const is = signedPins(-chargedPins)
    const row =
      html.split('<h2>Where the pins went</h2>')[1]?.split(`<th scope="row" class="nowrap">${game}-${frame}</th>`)[1] ??
      ''
    return [
      figure(`frame ${game}-${frame} on screen`, is, ledger, new RegExp(`Frame ${frame} +([+-]?\\d+\\.\\d)`)),
      figure(`frame ${game}-${frame} plain`, is, plain, new RegExp(`^${game}-${frame} +([+-]?\\d+\\.\\d)`, 'm')),
      figure(`frame ${game}-${frame} HTML`, is.replace('-', '−'), row, /<td class="n">([^<]*)</),
      figure(
        `frame ${game}-${frame} JSON`,
        is,
        report.ledger.frames.find((one) => one.game === game && one.frame === frame)!.printed.cost,
        /(.*)/,
      ),
    ]
  })
  return [
    ...perThrow,
    ...perFrame,
    figure('header', total, ledger, /Cost of your choices: (\d+\.\d)/),
    figure('HTML header', total, html, /Cost of the choices<\/dt><dd>(\d+\.\d)/),
    {
      where: 'JSON total',
      is: total,
      printed: sameTo(report.givenAway.total, debrief.account.sums.block.chargedPins, total),
    },
  ]
}

/** JSON has more decimals than are printed; the figure as it is printed where it is the same to those. */
const sameTo = (told: number, pins: number, printedAs: string): string =>
  Math.abs(told - pins) <= 0.0051 ? printedAs : String(told)

/** Those that print another figure. */
export const differing = (figures: readonly Figure[]): Figure[] =>
  figures.filter(({ printed: shown, is }) => (is === '[-–]' ? !/^[-–]$/.test(shown) : shown !== is))
