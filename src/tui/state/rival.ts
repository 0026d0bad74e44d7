import type { Scenario } from '../../scenarios/files/scenario/scenario.js'
import type { PlayedBlock } from '../../scenarios/store/keeper.js'
import { isFrameOver } from '../../sim/world/block/shown-throws.js'
import type { AppState } from './app-state.js'
import { allPinsGiven, blockOf, isWeighed, type PlayState, playedOn } from './play-state.js'
import type { TrainerServices } from './services.js'
import { startBlock } from './start.js'

/** Whether the keys go to the other player now: after each frame, as long as the other has one to bowl. */
export const passesOn = ({ rival, states }: PlayState): boolean =>
  rival?.kind === 'guest' && blockOf(rival.play).spot !== null && isFrameOver(states.at(-1)!)

/** The other player's block, with this one as its rival. */
export function handedOver(play: PlayState): PlayState {
  const { rival } = play
  if (rival?.kind !== 'guest') return play
  const other = rival.play
  const stage =
    other.stage.kind === 'passing' ? ({ kind: blockOf(other).spot ? 'deciding' : 'done' } as const) : other.stage
  return { ...other, stage, notice: '', rival: { kind: 'guest', play: { ...play, rival: null } } }
}

/** A change made to whichever of both blocks it is about. */
export function changedBoth(play: PlayState, change: (one: PlayState) => PlayState): PlayState {
  const changed = change(play)
  const { rival } = changed
  if (rival?.kind !== 'guest') return changed
  const other = change(rival.play)
  return other === rival.play ? changed : { ...changed, rival: { ...rival, play: other } }
}

/** A block of two players by turns: each has the same lane and luck, and a lane of their own to wear. */
export function startMatch(
  state: AppState,
  { scenario, seed, mode }: { readonly scenario: Scenario; readonly seed: string; readonly mode: PlayState['mode'] },
  names: readonly [player: string, guest: string],
  services: TrainerServices,
): AppState {
  const started = startBlock(state, scenario, seed, services, mode)
  if (started.screen.kind !== 'play') return started
  const { play } = started.screen
  // A block is told by its states, so the guest's own must be another than the player's.
  const begun = Object.freeze({ ...blockOf(play) })
  const guest: PlayState = { ...play, states: [begun], who: { name: names[1], isGuest: true } }
  const own: PlayState = { ...play, who: { name: names[0], isGuest: false }, rival: { kind: 'guest', play: guest } }
  return { ...started, screen: { kind: 'play', play: own } }
}

/** A new block on the lane and luck of one that was bowled before, against it. */
export function startAgainst(state: AppState, played: PlayedBlock, services: TrainerServices): AppState {
  const before = playedOn(played)
  const block = blockOf(before)
  const started = startBlock(state, played.scenario, block.seed, services)
  if (started.screen.kind !== 'play') return started
  const costPins = before.grades.every((_, index) => isWeighed(before, index)) ? allPinsGiven(before) : null
  const { play } = started.screen
  const name = played.bowledBy ?? 'that block'
  return { ...started, screen: { kind: 'play', play: { ...play, rival: { kind: 'record', name, block, costPins } } } }
}
