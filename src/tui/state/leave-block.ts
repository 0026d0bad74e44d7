import type { KeptBlock } from '../../scenarios/store/keeper.js'
import type { AppState } from './app-state.js'
import { positionOf } from './drill-types.js'
import { isBowledOut, notesOf, type PlayState } from './play-state.js'
import { landed } from './reduce-throw.js'
import type { TrainerServices } from './services.js'

/** What leaving the play screen keeps: the block to go on with or, once it is over, to look back on; never what is only tried. */
export function leaveBlock(state: AppState, services: TrainerServices): AppState {
  const { screen } = state
  if (screen.kind !== 'play') return state
  const { stage } = screen.play
  // A ball that is on its way has been thrown.
  const play = stage.kind === 'rolling' ? landed(screen.play, stage, services) : screen.play
  if (play.moment) return state
  if (play.tour !== null) return { ...state, settings: { ...state.settings, tour: 'seen' } }
  // The host goes on with it where its own program is started again, and so does an entry, which says so.
  if (play.contest !== undefined) return state
  if (play.stage.kind === 'done' && play.drill) return state
  const blocks = play.rival?.kind === 'guest' ? [play, play.rival.play] : [play]
  const left = blocks.filter((one) => one.grades.length > 0 && !isUntouched(one) && !isBowledOut(one))
  return {
    ...state,
    finished: play.grades.length > 0 && isBowledOut(play) ? play : state.finished,
    kept: [...left.map(keptFrom), ...state.kept],
  }
}

/** Whether nothing was thrown yet beyond what a drill gave. */
const isUntouched = ({ drill, grades }: PlayState): boolean =>
  drill !== undefined && grades.length <= positionOf(drill).given.length

const keptFrom = (play: PlayState): KeptBlock => ({
  title: play.who?.isGuest ? `${play.scenario.title} (${play.who.name})` : play.scenario.title,
  throws: play.grades.length,
  takeUp: async () => ({
    scenario: play.scenario,
    states: play.states,
    notes: notesOf(play),
    recordPath: play.recordPath,
    ...(play.ownThrows ? { ownThrows: play.ownThrows } : {}),
    ...(play.isShort ? { isShort: true } : {}),
  }),
})
