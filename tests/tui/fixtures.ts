import type { Drill } from '../../src/scenarios/drills/load-drill.js'
import type { Scenario } from '../../src/scenarios/files/scenario/scenario.js'
import { loadScenario } from '../../src/scenarios/library/load.js'
import type { BlockNotes } from '../../src/scenarios/store/block-notes.js'
import type { KeptBlock, PlayedBlock } from '../../src/scenarios/store/keeper.js'
import type { KeptAccount } from '../../src/scenarios/store/kept-account.js'
import { EMPTY_KIT, type OwnKit } from '../../src/scenarios/store/own-kit.js'
import type { PastBlock } from '../../src/scenarios/store/past-blocks.js'
import type { Remembered } from '../../src/scenarios/store/remembered.js'
import type { BeliefSummary } from '../../src/sim/analysis/belief/summary.js'
import type { Account } from '../../src/sim/analysis/debrief/account.js'
import type { LedgerTerms } from '../../src/sim/analysis/debrief/ledger/ledger.js'
import { stateBefore } from '../../src/sim/analysis/debrief/moments.js'
import { meantPath } from '../../src/sim/analysis/debrief/reading/meant-path.js'
import { sumsOf } from '../../src/sim/analysis/debrief/sums.js'
import type { ThrowAccount } from '../../src/sim/analysis/debrief/throw-account.js'
import type { PricedFairGrade } from '../../src/sim/analysis/grade/grade-types.js'
import { type PlayerView, playerView } from '../../src/sim/analysis/view/player-view.js'
import type { BlockState, Decision, ThrowRecord } from '../../src/sim/world/block/types.js'
import { FULL_RACK } from '../../src/sim/world/pins/leaves.js'
import { realServices } from '../../src/tui/app/services-real.js'
import { type Theme, themeFor } from '../../src/tui/draw/theme.js'
import { DEFAULT_SETTINGS, type Settings } from '../../src/tui/settings/settings.js'
import type { TrainerServices } from '../../src/tui/state/services.js'
import type { Asked, Thinker } from '../../src/tui/worker/thinker.js'
import type { Answer, Answers, Question, Step, Steps } from '../../src/tui/worker/thoughts.js'
import { madeUpProgress } from './made-up-progress.js'

/** A grade made up for the screens' sake: a board of target off 11 costs a pin. The grader has tests of its own. */
export function madeUpGrade(block: BlockState, decision: Decision): PricedFairGrade | null {
  if (block.spot?.phase !== 'game') return null
  const givenAwayPins = Math.abs(decision.aim.targetBoard - 11)
  const best = { ...decision, aim: { ...decision.aim, targetBoard: 11 } }
  return {
    kind: 'first-ball',
    best,
    choiceWorth: -givenAwayPins,
    bestWorth: 0,
    lostPins: givenAwayPins,
    standardErrorPins: 0.05,
    tooCloseToCallPins: 0.1,
    givenAwayPins,
    stakesPins: 1,
    percentile: 0.5,
    reason: {
      choice: {
        contacts: [
          { contact: 'light', chance: 0.5 },
          { contact: 'pocket', chance: 0.5 },
        ],
        pocketAngleRadians: 0.07,
      },
      best:
        givenAwayPins > 0
          ? {
              contacts: [
                { contact: 'pocket', chance: 0.7 },
                { contact: 'light', chance: 0.3 },
              ],
              pocketAngleRadians: 0.08,
            }
          : null,
      lessonPins: 0,
    },
    informationPins: 0.4,
    teachingPins: null,
    perBall: block.setup.bag.map((ball, index) => ({ ballId: ball.id, worth: -index, decision: best })),
  }
}

const madeUpLedger = (givenAwayPins: number): LedgerTerms => ({
  givenAwayPins,
  patternSwingPins: -0.2,
  hiddenPins: 0.6,
  deliveryPins: 1.4,
  carryPins: -2.5,
})

/** The account of a throw with true paths and made-up worths. */
function madeUpThrowAccount(before: BlockState, record: ThrowRecord, index: number): ThrowAccount {
  const grade = madeUpGrade(before, record.decision)
  const best = grade?.best ?? null
  return {
    index,
    spot: record.spot,
    kind: record.standingBefore === FULL_RACK ? 'first-ball' : 'spare',
    decision: record.decision,
    observation: record.observation,
    standingBefore: record.standingBefore,
    standingAfter: record.standingAfter,
    graded: grade && {
      grade,
      bestKnown: { ...grade.best, ballId: before.setup.bag.at(-1)!.id },
      knownLostPins: grade.givenAwayPins + 0.4,
      knownStandardErrorPins: 0.05,
      ledger: madeUpLedger(grade.givenAwayPins),
      alternatives: [
        ...before.setup.bag.map((ball, place) => ({
          what: 'best-line-of-ball' as const,
          decision: { ...grade.best, ballId: ball.id },
          fairGainPins: 2 - place,
          knownGainPins: 1 - place,
        })),
        { what: 'move' as const, decision: grade.best, fairGainPins: 0.3, knownGainPins: -0.1 },
      ],
    },
    paths: {
      choice: meantPath(before, record.decision),
      bestFair: best && meantPath(before, best),
      bestKnown: best && meantPath(before, { ...best, ballId: before.setup.bag.at(-1)!.id }),
    },
    belief: MADE_UP_BELIEF,
    contactChances:
      record.standingBefore === FULL_RACK
        ? [
            { contact: 'pocket', chance: 0.6 },
            { contact: 'high', chance: 0.4 },
          ]
        : null,
    innovation: {
      predictedBoard: 17.2,
      shownBoard: 18.1,
      deliveryBoards: 0.6,
      laneBoards: 0.3,
      deliveryShare: 2 / 3,
    },
  }
}

const MADE_UP_BELIEF: BeliefSummary = {
  lengthFeet: { low: 38, high: 42, mean: 40 },
  volumeMillilitres: { low: 22, high: 26, mean: 24 },
  ratio: { low: 3, high: 9, mean: 6 },
  length: { short: 0.1, medium: 0.8, long: 0.1 },
  shape: { flat: 0.1, between: 0.3, houseLike: 0.6 },
}

/** A whole account with true sums of made-up worths, and one finding. */
export function madeUpAccount(block: BlockState): Account {
  const throws = block.throws.map((record, index) => madeUpThrowAccount(stateBefore(block, index), record, index))
  return {
    throws,
    sums: sumsOf(throws),
    tags: [
      {
        kind: 'wrong-target',
        throws: [0],
        game: 1,
        frames: [1],
        pins: 2.5,
        evidence: [
          { what: 'throw-cost', value: 2.5, unit: 'pins' },
          { what: 'target-part', value: 2.5, unit: 'pins' },
        ],
        at: 0,
        before: null,
        mend: { ...block.throws[0]!.decision, aim: { ...block.throws[0]!.decision.aim, targetBoard: 11 } },
        mendsAll: true,
      },
    ],
    untoldPins: 0.4,
    luck: [
      { game: 1, frame: 1, kind: 'delivery', luckPins: 6.2, index: 0 },
      { game: 1, frame: 1, kind: 'carry', luckPins: -7.1, index: 0 },
    ],
  }
}

/** A game of nines and misses: 90. */
const FELLED = { games: [Array.from({ length: 10 }, () => [9, 0])], lostPins: 12.3 }

function madeUpAnswer(block: BlockState, question: Question, onStep?: (step: Step) => void): Answer {
  switch (question.kind) {
    case 'prepare':
    case 'settle':
      return null
    case 'grade':
      return madeUpGrade(block, question.decision)
    case 'belief':
      return MADE_UP_BELIEF
    case 'account': {
      const account = madeUpAccount(block)
      for (const latest of account.throws) onStep?.({ done: latest.index + 1, of: account.throws.length, latest })
      return account
    }
    case 'positions':
      return { positions: [], isFirstBall: false, isSpare: false, next: quickView(block)!.suggestion }
    case 'comparison':
      return { thumb: FELLED, fair: FELLED, known: FELLED }
    case 'average':
      return { games: question.games, mean: 187.4, halfWidth: 4.2 }
    case 'what-if':
      return {
        decision: question.decision,
        deliveries: 1000,
        entryBoards: [16, 17.5, 19],
        contacts: [
          { contact: 'pocket', share: 0.6 },
          { contact: 'light', share: 0.4 },
        ],
        leaves: [
          { mask: 0, share: 0.55 },
          { mask: 512, share: 0.45 },
        ],
        worthPins: question.decision.aim.targetBoard / 10,
        standardErrorPins: 0.2,
      }
  }
}

/** Answers at once with made-up figures. */
export const madeUpThinker: Thinker = {
  isApart: false,
  wake() {},
  ask<Kind extends Question['kind']>(
    block: BlockState,
    question: Extract<Question, { kind: Kind }>,
    onStep?: (step: Steps[Kind]) => void,
  ): Asked<Answers[Kind]> {
    let isWanted = true
    return {
      answer: new Promise((resolve) => {
        setImmediate(
          () => isWanted && resolve(madeUpAnswer(block, question, onStep as (step: Step) => void) as Answers[Kind]),
        )
      }),
      giveUp() {
        isWanted = false
      },
    }
  },
  close() {},
}

/** The player's view with a made-up spare suggestion, which spares the tests the spare search. */
function quickView(block: BlockState): PlayerView | null {
  const view = playerView({ ...block, standing: FULL_RACK })
  if (!view || block.standing === FULL_RACK) return view
  const ballId = block.setup.bag.at(-1)!.id
  return { ...view, suggestion: { ballId, aim: { feetBoard: 25, targetBoard: 18, speedStep: 0 }, release: 'spare' } }
}

export interface FixtureServices extends TrainerServices {
  readonly keptThrows: { scenario: Scenario; block: BlockState }[]
  readonly keptSaid: { block: BlockState; notes: BlockNotes }[]
  readonly filed: { scenario: Scenario; block: BlockState; notes: BlockNotes }[]
  readonly keptWorked: { block: BlockState; worked: KeptAccount }[]
  readonly keptNotes: { path: string; notes: BlockNotes }[]
  readonly keptSettings: Settings[]
  readonly keptKits: OwnKit[]
}

interface FixtureParts {
  readonly kept?: readonly KeptBlock[]
  readonly kit?: OwnKit
  readonly settings?: Partial<Settings>
  readonly past?: readonly PastBlock[]
  readonly remembered?: Remembered
  readonly openPast?: () => Promise<PlayedBlock>
  readonly openDrill?: () => Promise<Drill>
  /** A clock in milliseconds; without one every look at it comes a second after the last, so that no key counts as held. */
  readonly now?: () => number
}

const NOTHING_REMEMBERED: Remembered = {
  costs: [],
  skills: [],
  unpriced: 0,
  lanesMet: 0,
  lanesOfAll: 35,
  calls: null,
}

function stepping(): () => number {
  let seconds = 0
  return () => 1000 * ++seconds
}

/** The trainer's services with the true simulator, but made-up grades and nothing written to disk. */
export function fixtureServices(parts: FixtureParts = {}): FixtureServices {
  const calls: Omit<FixtureServices, keyof TrainerServices> = {
    keptThrows: [],
    keptSaid: [],
    filed: [],
    keptWorked: [],
    keptNotes: [],
    keptSettings: [],
    keptKits: [],
  }
  return {
    ...realServices({}, madeUpThinker, { seed: 'fixture' }),
    view: quickView,
    now: parts.now ?? stepping(),
    tryOut: async () => {},
    resume: () => Promise.reject(new Error('there is nothing to go on with')),
    leftBlocks: async () => ({ blocks: parts.kept ?? [], problems: [] }),
    keepThrow: async (scenario, _before, block) => void calls.keptThrows.push({ scenario, block }),
    keepSaid: async (block, notes) => void calls.keptSaid.push({ block, notes }),
    file: async (scenario, block, notes) => {
      calls.filed.push({ scenario, block, notes })
      return '/records/fixture-1.json'
    },
    keepNotes: async (path, notes) => void calls.keptNotes.push({ path, notes }),
    keepWorked: async (_scenario, block, worked) => void calls.keptWorked.push({ block, worked }),
    hasPast: async () => (parts.past ?? []).length > 0,
    listPast: async () => parts.past ?? [],
    remembered: async () => parts.remembered ?? NOTHING_REMEMBERED,
    keptComparison: async () => null,
    keepComparison: async () => {},
    keptAverage: async () => null,
    keepAverage: async () => {},
    openDrill: parts.openDrill ?? (() => Promise.reject(new Error('there is no drill'))),
    readProgress: async () => madeUpProgress(),
    openPast: parts.openPast ?? (() => Promise.reject(new Error('there is no past block'))),
    findKit: async () => ({ kit: parts.kit ?? EMPTY_KIT, problem: '' }),
    keepKit: async (kit) => {
      calls.keptKits.push(kit)
      return null
    },
    readSettings: async () => ({ settings: { ...DEFAULT_SETTINGS, tour: 'seen', ...parts.settings }, problem: '' }),
    keepSettings: async (settings) => {
      calls.keptSettings.push(settings)
      return null
    },
    ...calls,
  }
}

/** A short block without practice, so that tests reach graded throws at once. */
export async function shortScenario(name = 'house-forty'): Promise<Scenario> {
  const scenario = await loadScenario(name)
  return { ...scenario, setup: { ...scenario.setup, practiceThrows: 0, games: 1 } }
}

export const THEMES: readonly (readonly [name: string, theme: Theme])[] = [
  ['true colour', themeFor({ depth: 'true', characters: 'unicode' })],
  ['256 colours', themeFor({ depth: 'palette', characters: 'unicode' })],
  ['16 colours', themeFor({ depth: 'sixteen', characters: 'unicode' })],
  ['no colour', themeFor({ depth: 'none', characters: 'unicode' })],
  ['no colour, ASCII', themeFor({ depth: 'none', characters: 'ascii' })],
]
export const PLAIN = themeFor({ depth: 'none', characters: 'unicode' })

const STYLE = new RegExp(`${String.fromCharCode(27)}\\[[0-9;]*m`, 'g')
/** A row without its styles. */
export const bare = (row: string): string => row.replace(STYLE, '')
