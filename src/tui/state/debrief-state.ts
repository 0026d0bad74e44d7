import { OWN_FINDINGS } from '../../scenarios/store/block-notes.js'
import type { WhatIf } from '../../sim/analysis/explore/what-if.js'
import type { Command } from '../keys/binding.js'
import { isOwn, isWeighed, type OwnFindingAt, type PlayState, pinsGiven, playFrom } from './play-state.js'

/** What stands below the lane. */
export const DEBRIEF_VIEWS = ['throw', 'choices', 'ledger', 'findings', 'calls', 'known', 'luck'] as const
export type DebriefView = (typeof DEBRIEF_VIEWS)[number]

/** What lies on the lane: the oil, what has gone of it, or only what the player saw. */
const SHOWN = ['oil', 'wear', 'seen'] as const

/** The player's own account of the dearest choices, given before ours. */
export interface OwnAccount {
  /** The dearest choices; none while they are still being weighed. */
  readonly throws: readonly number[]
  readonly at: number
  readonly cursor: number
}

/** Another choice tried on a throw of the block. */
export interface WhatIfTrial {
  /** The block as it stood then, with the decision being changed. */
  readonly lab: PlayState
  /** Of the choice made. */
  readonly made: WhatIf | null
  readonly tried: WhatIf | null
}

/** Looking back at a block. */
export interface DebriefState {
  readonly chosen: number
  readonly shows: (typeof SHOWN)[number]
  readonly view: DebriefView
  /** The finding pointed at, the dearest being 0. */
  readonly finding: number
  /** Rows a long view is scrolled by. */
  readonly scroll: number
  /** Stepping through the throws by itself. */
  readonly running: boolean
  /** Picture of the balls rolling side by side; null when their whole paths are shown. */
  readonly rolling: number | null
  readonly own: OwnAccount | null
  readonly whatIf: WhatIfTrial | null
}

/** What a grade must exceed for a throw to be worth jumping to. */
const COSTLY_PINS = 0.5
const MOST_OWN_THROWS = 3
/** No view is longer than this. */
const MOST_SCROLL = 60
const PAGE_ROWS = 10
export const SIDE_BY_SIDE_FRAMES = 20

/** The debrief as it opens: with the player's own account, unless that is given already. */
export function debriefOf(play: PlayState): DebriefState {
  const isAsked = play.ownFindings.length === 0 && play.tour === null
  return withDearest(
    {
      chosen: mostCostly(play),
      shows: 'oil',
      view: 'throw',
      finding: 0,
      scroll: 0,
      running: false,
      rolling: null,
      own: isAsked ? { throws: [], at: 0, cursor: 0 } : null,
      whatIf: null,
    },
    play,
  )
}

/** The debrief once every choice is weighed: the own account begins with the dearest, or falls away where none is dear. */
export function withDearest(debrief: DebriefState, play: PlayState): DebriefState {
  const { own } = debrief
  if (!own || own.throws.length > 0 || !play.grades.every((_, index) => isWeighed(play, index))) return debrief
  const throws = dearestThrows(play)
  return throws.length === 0 ? { ...debrief, own: null } : { ...debrief, own: { ...own, throws }, chosen: throws[0]! }
}

/** The choices that gave most away, dearest first. */
function dearestThrows(play: PlayState): number[] {
  return play.grades
    .map((grade, index) => ({ index, pins: isOwn(play, index) ? pinsGiven(grade) : 0 }))
    .filter(({ pins }) => pins >= COSTLY_PINS)
    .sort((a, b) => b.pins - a.pins)
    .slice(0, MOST_OWN_THROWS)
    .map(({ index }) => index)
}

export function reduceDebrief(debrief: DebriefState, command: Command, play: PlayState): DebriefState {
  const count = play.grades.length
  const still = { ...debrief, running: false, rolling: null }
  switch (command) {
    case 'left':
      return { ...still, chosen: Math.max(0, debrief.chosen - 1) }
    case 'right':
      return { ...still, chosen: Math.min(count - 1, debrief.chosen + 1) }
    case 'costly':
      return { ...still, chosen: nextCostly(play, debrief.chosen) }
    case 'wear':
      return { ...still, shows: after(SHOWN, debrief.shows) }
    case 'view':
      return { ...still, view: after(DEBRIEF_VIEWS, debrief.view), finding: 0, scroll: 0 }
    case 'up':
      return upOrDown(still, -1, findingsIn(play, debrief))
    case 'down':
      return upOrDown(still, 1, findingsIn(play, debrief))
    case 'enter':
      return { ...still, chosen: Math.min(count - 1, debrief.chosen + 1) }
    case 'page-up':
      return { ...still, scroll: Math.max(0, debrief.scroll - PAGE_ROWS) }
    case 'page-down':
      return { ...still, scroll: Math.min(MOST_SCROLL, debrief.scroll + PAGE_ROWS) }
    case 'first':
      return { ...still, chosen: 0, scroll: 0 }
    case 'last':
      return { ...still, chosen: count - 1 }
    case 'roll':
      return { ...still, shows: debrief.shows === 'seen' ? 'oil' : debrief.shows, rolling: 0 }
    case 'run':
      if (debrief.running) return still
      return { ...still, running: true, chosen: debrief.chosen >= count - 1 ? 0 : debrief.chosen }
    case 'what-if':
      return { ...still, whatIf: openTrial(play, debrief.chosen) }
    default:
      return debrief
  }
}

/** Findings that can be pointed at in the view. */
const findingsIn = (play: PlayState, { view }: DebriefState): number =>
  view === 'findings' ? (play.account?.tags.length ?? 0) : 0

/** From finding to finding, and where there is none further on, row by row. */
function upOrDown(debrief: DebriefState, step: 1 | -1, findings: number): DebriefState {
  const { finding, scroll } = debrief
  if (step > 0 && finding < findings - 1) return { ...debrief, finding: finding + 1, scroll: 0 }
  if (step < 0 && scroll === 0) return { ...debrief, finding: Math.max(0, finding - 1) }
  return { ...debrief, scroll: Math.min(MOST_SCROLL, Math.max(0, scroll + step)) }
}

const after = <Value>(values: readonly Value[], value: Value): Value =>
  values[(values.indexOf(value) + 1) % values.length]!

function openTrial(play: PlayState, index: number): WhatIfTrial {
  const states = play.states.slice(0, index + 1)
  const { decision } = play.states.at(-1)!.throws[index]!
  return { lab: playFrom(play.scenario, states, play.grades.slice(0, index), decision), made: null, tried: null }
}

export interface OwnAccountGiven {
  readonly own: OwnAccount | null
  readonly finding?: OwnFindingAt
}

/** The own account after a command; null once it is given or passed over. */
export function reduceOwnAccount(own: OwnAccount, command: Command): OwnAccountGiven {
  const count = OWN_FINDINGS.length
  switch (command) {
    case 'up':
      return { own: { ...own, cursor: (own.cursor - 1 + count) % count } }
    case 'down':
      return { own: { ...own, cursor: (own.cursor + 1) % count } }
    case 'enter': {
      const throwIndex = own.throws[own.at]
      if (throwIndex === undefined) return { own }
      const finding = { throwIndex, finding: OWN_FINDINGS[own.cursor]! }
      const isLast = own.at + 1 >= own.throws.length
      return { own: isLast ? null : { ...own, at: own.at + 1, cursor: 0 }, finding }
    }
    case 'back':
      return { own: null }
    default:
      return { own }
  }
}

/** The next throw of a running replay; the replay stops at the last one. */
export function runOn(debrief: DebriefState, count: number): DebriefState {
  const chosen = Math.min(count - 1, debrief.chosen + 1)
  return { ...debrief, chosen, running: chosen < count - 1 }
}

/** The next picture of balls rolling side by side; after the last their whole paths stay. */
export function rollOn(debrief: DebriefState): DebriefState {
  if (debrief.rolling === null) return debrief
  const next = debrief.rolling + 1
  return { ...debrief, rolling: next > SIDE_BY_SIDE_FRAMES ? null : next }
}

function mostCostly(play: PlayState): number {
  return play.grades.reduce<number>(
    (most, _, index) => (pinsGiven(play.grades[index]) > pinsGiven(play.grades[most]) ? index : most),
    0,
  )
}

function nextCostly(play: PlayState, from: number): number {
  const count = play.grades.length
  for (let ahead = 1; ahead <= count; ahead++) {
    const index = (from + ahead) % count
    if (pinsGiven(play.grades[index]) >= COSTLY_PINS) return index
  }
  return from
}
