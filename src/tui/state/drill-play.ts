import { noNotes } from '../../scenarios/store/block-notes.js'
import type { AppState } from './app-state.js'
import { type DrillPlay, positionOf } from './drill-types.js'
import { blockOf, type PlayState, playedOn } from './play-state.js'
import type { TrainerServices } from './services.js'

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
