import type { Drill, DrillPosition } from '../../scenarios/drills/load-drill.js'
import { noNotes } from '../../scenarios/store/block-notes.js'
import type { Decision } from '../../sim/world/block/types.js'
import type { AppState } from './app-state.js'
import { blockOf, type PlayState, playedOn, type ThrowGrade } from './play-state.js'
import type { TrainerServices } from './services.js'

/** What was answered at one position of a drill. */
export interface DrillAnswered {
  readonly position: DrillPosition
  readonly throws: readonly { readonly decision: Decision; readonly grade: ThrowGrade; readonly standing: number }[]
}

/** A drill being played: which position, and what was answered before. */
export interface DrillPlay {
  readonly drill: Drill
  readonly place: number
  readonly answered: readonly DrillAnswered[]
}

export const positionOf = ({ drill, place }: DrillPlay): DrillPosition => drill.positions[place]!

/** A position of a drill on the play screen, with what had been thrown before lying open. */
export function startPosition(state: AppState, drill: DrillPlay, services: Pick<TrainerServices, 'view'>): AppState {
  const { scenario, states, given } = positionOf(drill)
  const ownThrows = given.map(() => false)
  const played = playedOn(
    { scenario, states, notes: noNotes('drill'), recordPath: null, ownThrows },
    services.view(states.at(-1)!)?.suggestion,
  )
  const play: PlayState = {
    ...played,
    // What was given is not weighed.
    grades: given.map(() => null),
    drill,
    open: given.length > 0 ? 'history' : 'nothing',
  }
  return { ...state, notice: '', screen: { kind: 'play', play } }
}

/** Whether a position has all its throws, or its block is over. */
export function isAnswered(play: PlayState): boolean {
  if (!play.drill) return false
  const { given, throws } = positionOf(play.drill)
  return blockOf(play).spot === null || play.grades.length >= given.length + throws
}

/** The next position after one that was answered, or what the whole drill came to. */
export function afterPosition(state: AppState, play: PlayState, services: Pick<TrainerServices, 'view'>): AppState {
  const drill = withAnswer(play)
  if (!drill) return state
  const next = { ...drill, place: drill.place + 1 }
  if (next.place < drill.drill.positions.length) return startPosition(state, next, services)
  return { ...state, notice: '', screen: { kind: 'drill-over', drill } }
}

function withAnswer(play: PlayState): DrillPlay | null {
  if (!play.drill) return null
  const position = positionOf(play.drill)
  const first = position.given.length
  const throws = blockOf(play)
    .throws.slice(first)
    .map(({ decision, standingAfter }, index) => ({
      decision,
      grade: play.grades[first + index],
      standing: standingAfter,
    }))
  return { ...play.drill, answered: [...play.drill.answered, { position, throws }] }
}
