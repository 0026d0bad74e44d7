import type { OwnKit } from '../../../src/scenarios/store/own-kit.js'
import { SKILLS } from '../../../src/sim/analysis/debrief/findings/skills.js'
import type { WhatIf } from '../../../src/sim/analysis/explore/what-if.js'
import type { Size } from '../../../src/tui/draw/layout.js'
import type { Theme } from '../../../src/tui/draw/theme.js'
import { startingBag } from '../../../src/tui/forms/ball-form.js'
import { bowlerFields, startingBowler } from '../../../src/tui/forms/bowler-form.js'
import { openForm } from '../../../src/tui/forms/form.js'
import { debriefScreen } from '../../../src/tui/screens/debrief/debrief-screen.js'
import { ownAccountScreen } from '../../../src/tui/screens/debrief/own-account-screen.js'
import { whatIfScreen } from '../../../src/tui/screens/debrief/what-if-screen.js'
import { screenRows } from '../../../src/tui/screens/help-and-menus.js'
import { homeScreen } from '../../../src/tui/screens/menus/home-screen.js'
import { scenarioScreen } from '../../../src/tui/screens/menus/scenario-screen.js'
import { playLowerRows, playTopRows } from '../../../src/tui/screens/play/play-rows.js'
import { playScreenRows } from '../../../src/tui/screens/play/play-screen.js'
import type { AppState } from '../../../src/tui/state/app-state.js'
import { DEBRIEF_VIEWS, type DebriefState, reduceDebrief } from '../../../src/tui/state/debrief-state.js'
import { homePicture } from '../../../src/tui/state/home-picture.js'
import { blockOf, type PlayState, playFrom } from '../../../src/tui/state/play-state.js'
import { startingState } from '../../../src/tui/state/starting-state.js'
import { fixtureServices, madeUpAccount, madeUpGrade, shortScenario } from '../fixtures.js'
import { madeUpProgress } from '../made-up-progress.js'

const services = fixtureServices()
export const SIZES: readonly Size[] = [
  { columns: 80, rows: 24 },
  { columns: 80, rows: 22 },
  { columns: 100, rows: 30 },
  { columns: 120, rows: 40 },
  { columns: 200, rows: 60 },
]

/** A block after some throws of its suggested decisions. */
export async function played(name: string, throws: number, hand: 'right' | 'left' = 'right'): Promise<PlayState> {
  const short = await shortScenario(name)
  const scenario =
    hand === 'right' ? short : { ...short, setup: { ...short.setup, bowler: { ...short.setup.bowler, hand } } }
  const states = [services.begin(scenario, 'screens')]
  const grades = []
  for (let i = 0; i < throws; i++) {
    const block = states.at(-1)!
    const { suggestion } = services.view(block)!
    grades.push(madeUpGrade(block, suggestion))
    states.push(services.advance(block, suggestion))
  }
  return playFrom(scenario, states, grades, services.view(states.at(-1)!)?.suggestion)
}

/** Plays and a home that every screen is drawn from. */
export interface Drawn {
  readonly home: AppState
  readonly plays: readonly PlayState[]
}

/** A short block on every built-in scenario, one not begun, one of a left-hander, and one whose reactions were called. */
export async function drawnFrom(): Promise<Drawn> {
  const home = await startingState(undefined, services)
  const all = services.scenarioNames().map((name, index) => played(name, index < 3 ? 6 : 2))
  const called = await played('house-forty', 4)
  const calls = called.grades.map(() => ({ contact: 'pocket', confidencePercent: 70 }) as const)
  const left = await played('house-forty', 4, 'left')
  return { home, plays: [...(await Promise.all(all)), await played('house-forty', 0), { ...called, calls }, left] }
}

export const playScreen = (play: PlayState, size: Size, theme: Theme) => {
  const view = services.view(blockOf(play))
  return [...playTopRows(play, view, size, theme), ...playLowerRows(play, view, size, theme)]
}

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

const accounts = new Map<PlayState, PlayState>()
/** A played block with its account, worked out once a block. */
function looked(play: PlayState): PlayState {
  const known = accounts.get(play)
  if (known) return known
  const account = madeUpAccount(blockOf(play))
  const whole = { ...play, account, accounts: account.throws }
  accounts.set(play, whole)
  return whole
}

export function debriefRows(play: PlayState, look: Partial<DebriefState>, size: Size, theme: Theme): string[] {
  return debriefScreen(looked(play), { ...LOOKING, ...look }, '', size, theme)
}

const PLAYED = new Map([['House oil at Quillmoor', { blocks: 3, bestGame: 211 }]])
const KIT: OwnKit = { bag: startingBag(), bowler: startingBowler('left') }
const AVERAGE = { games: 40, mean: 187.2, halfWidth: 4.4 }
const SOURCE = { seed: 'a-seed-of-theirs', guest: 'Brono of Quillmoor', naming: null, day: null }
const WHAT_IF: WhatIf = {
  decision: { ballId: 'weak-pearl', aim: { feetBoard: 20, targetBoard: 10, speedStep: 0 }, release: 'strike' },
  deliveries: 1000,
  entryBoards: [15.1, 17.4, 19.9],
  contacts: [
    { contact: 'pocket', share: 0.7 },
    { contact: 'crossover', share: 0.3 },
  ],
  leaves: [
    { mask: 0, share: 0.6 },
    { mask: 0b1001001000, share: 0.4 },
  ],
  worthPins: -1.2,
  standardErrorPins: 0.3,
}

/** Screens beside the ones that need a block. */
function otherScreens(told: string): Exclude<AppState['screen'], { kind: 'play' | 'debrief' | 'bowler' }>[] {
  const past = {
    name: 'house-forty',
    title: `A block${told}`,
    seed: 's',
    bowledAt: new Date(0),
    throws: 21,
    games: [187],
    frames: 10,
    isOwn: true,
    kind: 'block' as const,
  }
  const many = Array.from({ length: 80 }, (_, index) => ({ ...past, path: `/records/${index}.json` }))
  const own = bowlerFields(startingBowler('right'))[0]!.step(startingBowler('right'), 1)
  return [
    { kind: 'settings', cursor: 2 },
    { kind: 'kit', cursor: 1 },
    {
      kind: 'ball',
      form: { ...openForm(startingBag()[0]!), cursor: 1, typing: '20', faults: [`Too heavy.${told}`] },
      place: 0,
    },
    {
      kind: 'own-bowler',
      form: { ...openForm(own), cursor: 20 },
      averages: { of: own, house: AVERAGE, sport: AVERAGE },
    },
    { kind: 'past', cursor: 70, blocks: many, opening: null },
    { kind: 'past', cursor: 0, blocks: null, opening: null },
    { kind: 'progress', report: madeUpProgress(told), scroll: 0 },
    { kind: 'progress', report: madeUpProgress(told), scroll: 40 },
    { kind: 'progress', report: null, scroll: 0 },
  ]
}

/** Home of one who has played for long, with every line it can have. */
const rememberingHome = (home: AppState): AppState => ({
  ...home,
  kept: [{ title: 'The far lane at Quillmoor', throws: 12, takeUp: () => Promise.reject(new Error('not here')) }],
  hasPast: true,
  today: services.laneOfToday(),
  remembered: {
    costs: [12, 9, 14, 3, 0, 8, 7, 22, 6, 5],
    skills: SKILLS.map((skill) => ({ skill, costs: [1, 0, 2, 0.4, 3, 0, 0, 1, 0, 2], mean: 0.9 })),
    unpriced: 2,
    lanesMet: 12,
    lanesOfAll: 35,
    calls: { count: 24, right: 15, claimed: 18.2 },
  },
})

/** Two who bowl by turns, and one who bowls against a record. */
function* rivals(play: PlayState): Generator<[name: string, play: PlayState]> {
  const block = blockOf(play)
  const guest = { ...play, who: { name: 'Brono of Quillmoor', isGuest: true } }
  const mine = { ...play, who: { name: 'Ansa', isGuest: false }, rival: { kind: 'guest', play: guest } } as const
  yield ['by turns', mine]
  yield ['handing over', { ...mine, stage: { kind: 'passing' } }]
  const over = { kind: 'done' } as const
  yield ['by turns, over', { ...mine, stage: over }]
  const rival = { kind: 'record', name: 'that block', block, costPins: 12.3 } as const
  yield ['against a record', { ...play, rival }]
  yield ['against a record, over', { ...play, rival, stage: over }]
  yield ['over', { ...play, stage: over }]
}

const STRUCK = { games: [[[10]]], lostPins: 3.4 }
const COMPARED = { thumb: { games: [[[9, 0]]], lostPins: 12.3 }, fair: STRUCK, known: STRUCK }

const rowsOf = (state: AppState, size: Size, theme: Theme): string[] =>
  screenRows({ state, looks: { homePicture: null }, services, size, theme })

/** Every screen there is, at a size, in a theme; `told` stands in titles, faults and notices. */
export function* everyScreen(
  { home, plays }: Drawn,
  size: Size,
  theme: Theme,
  told = '',
): Generator<[name: string, rows: string[]]> {
  yield ['home', homeScreen(home, 0, homePicture(home.scenarios, services), size, theme)]
  yield ['home, remembered', homeScreen(rememberingHome(home), 0, homePicture(home.scenarios, services), size, theme)]
  for (const [cursor, scenario] of home.scenarios.entries()) {
    yield [
      `scenarios ${cursor}`,
      scenarioScreen({ listed: home.scenarios, cursor, played: PLAYED, notice: '' }, size, theme),
    ]
    const choice = {
      scenario,
      cursor: 0,
      hand: 'right',
      style: 'tweener',
      bag: 'own',
      mode: 'test',
      ...SOURCE,
    } as const
    yield [`bowler ${cursor}`, rowsOf({ ...home, kit: KIT, screen: { kind: 'bowler', ...choice } }, size, theme)]
  }
  for (const screen of otherScreens(told))
    yield [screen.kind, rowsOf({ ...home, kit: KIT, screen, notice: `A notice.${told}` }, size, theme)]
  for (const screen of otherScreens(told))
    yield [`help on ${screen.kind}`, rowsOf({ ...home, screen, help: { page: 'keys', scroll: 0 } }, size, theme)]
  for (let scroll = 0; scroll < 60; scroll += 10)
    yield [`words ${scroll}`, rowsOf({ ...home, help: { page: 'words', scroll } }, size, theme)]
  for (const [index, play] of plays.entries()) {
    yield [`play ${index}`, playScreen(play, size, theme)]
    for (let chosen = 0; chosen < play.grades.length; chosen += 2) {
      const shows = (['oil', 'wear', 'seen'] as const)[(chosen / 2 + index) % 3]!
      yield [`debrief ${index}.${chosen}`, debriefRows(play, { chosen, shows }, size, theme)]
    }
    // The other views say the same of any block; one of each hand is enough.
    if (index !== 0 && index !== plays.length - 1) continue
    for (const [name, one] of rivals(play)) {
      yield [`play ${index} ${name}`, playScreen(one, size, theme)]
      const compared = { begun: one.states[0]!, share: 1, comparison: COMPARED }
      yield [`debrief ${index} ${name}`, debriefScreen(one, { ...LOOKING, view: 'luck' }, '', size, theme, compared)]
    }
    for (const view of DEBRIEF_VIEWS) {
      yield [`debrief ${index} ${view}`, debriefRows(play, { view }, size, theme)]
      yield [`debrief ${index} ${view}, no account yet`, debriefScreen(play, { ...LOOKING, view }, '', size, theme)]
    }
    yield* drillScreens(play, home, size, theme, told)
    yield [`debrief ${index} rolling`, debriefRows(play, { rolling: 9 }, size, theme)]
    const own = { throws: [0], at: 0, cursor: 3 }
    yield [`own account ${index}`, ownAccountScreen(play, own, size, theme)]
    yield [`own account ${index}, waiting`, ownAccountScreen(play, { ...own, throws: [] }, size, theme)]
    const trial = reduceDebrief(LOOKING, 'what-if', play).whatIf!
    yield [`what if ${index}`, whatIfScreen(play, trial, services.meantBoards, size, theme)]
    yield [
      `what if ${index}, answered`,
      whatIfScreen(play, { ...trial, made: WHAT_IF, tried: WHAT_IF }, services.meantBoards, size, theme),
    ]
  }
}

/** A position of a drill before and after its throw, and what the drill came to. */
function* drillScreens(
  play: PlayState,
  home: AppState,
  size: Size,
  theme: Theme,
  told: string,
): Generator<[name: string, rows: string[]]> {
  const { states, scenario } = play
  const lookFor = `Where did it turn, and was it the hand or the lane?${told} ${'More words of the coach. '.repeat(30)}`
  const given = blockOf(play).throws.slice(0, -1)
  const position = {
    scenario,
    state: states.at(-2) ?? states[0]!,
    states: states.slice(0, -1),
    throws: 1,
    lookFor,
    given: given.map(({ decision }) => decision),
  }
  const drill = { drill: { title: `A drill${told}`, positions: [position, position] }, place: 0, answered: [] }
  const parts = (one: PlayState) => ({
    play: one,
    view: services.view(blockOf(one)),
    fall: null,
    context: 'play' as const,
    size,
    theme,
  })
  yield ['what was thrown', playScreenRows(parts({ ...play, drill, open: 'history' }))]
  const done: PlayState = { ...play, drill, stage: { kind: 'done' } }
  yield ['position answered', playScreenRows({ ...parts(done), context: 'drill-done' })]
  const throws = blockOf(play).throws.map(({ decision, standingAfter }, index) => ({
    decision,
    grade: play.grades[index],
    standing: standingAfter,
  }))
  const over = {
    ...drill,
    answered: [
      { position, throws },
      { position, throws },
    ],
  }
  yield ['drill over', rowsOf({ ...home, screen: { kind: 'drill-over', drill: over } }, size, theme)]
}
