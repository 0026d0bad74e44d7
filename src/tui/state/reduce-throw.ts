import type { BlockState } from '../../sim/world/block/types.js'
import { isAnswered } from './drill-play.js'
import { isMomentOver } from './play-moment.js'
import {
  blockOf,
  isBowledOut,
  isOnlyTried,
  type PlayState,
  playFrom,
  type Rolling,
  type ThrowGrade,
} from './play-state.js'
import { passesOn } from './rival.js'
import type { TrainerServices } from './services.js'
import { isTourOver } from './tour.js'

/** Pictures in the run of one ball down the lane. */
export const ROLL_FRAMES = 16
/** When the pins are looked at as they fall, since the ball met the first; slowly at first, when most happens. */
export const FALL_SECONDS: readonly number[] = [0.03, 0.07, 0.12, 0.18, 0.26, 0.38, 0.55, 0.8]

/** Pictures of a throw from the foul line until its result may be told; a ball that touches no pin has none of pins. */
export function framesOf(next: BlockState): number {
  return ROLL_FRAMES + (next.throws.at(-1)?.truth.touched === 0 ? 0 : FALL_SECONDS.length)
}

/** The ball let go, its grade fixed. A throw that is never kept need not wait for that. */
export function letGo(play: PlayState, next: BlockState, grade: ThrowGrade): PlayState {
  if (play.stage.kind !== 'weighing') return play
  const stage: Rolling = { kind: 'rolling', next, grade, frame: 0, isKept: isOnlyTried(play), isSkipped: false }
  return { ...play, stage, belief: null }
}

/** The throw is on the disk, so that its ball may roll. */
export function keptOn(play: PlayState, next: BlockState, services: TrainerServices): PlayState {
  const { stage } = play
  if (stage.kind !== 'rolling' || stage.next !== next) return play
  return rolledTo(play, { ...stage, isKept: true }, services)
}

/** The throw could not be put on the disk: it is yet to be made. */
export function keptNot(play: PlayState, next: BlockState): PlayState {
  const { stage } = play
  return stage.kind === 'rolling' && stage.next === next ? { ...play, stage: { kind: 'deciding' } } : play
}

/** The next picture of the ball's run. */
export function tick(play: PlayState, services: TrainerServices): PlayState {
  const { stage } = play
  if (stage.kind !== 'rolling' || !stage.isKept) return play
  return rolledTo(play, { ...stage, frame: stage.frame + 1 }, services)
}

/** The run passed over. */
export function skip(play: PlayState, services: TrainerServices): PlayState {
  const { stage } = play
  return stage.kind === 'rolling' ? rolledTo(play, { ...stage, isSkipped: true }, services) : play
}

/** The ball further on, or landed where its run is over or passed over. */
function rolledTo(play: PlayState, stage: Rolling, services: TrainerServices): PlayState {
  const isOver = stage.isKept && (stage.isSkipped || stage.frame >= framesOf(stage.next))
  return isOver ? landed(play, stage, services) : { ...play, stage }
}

/** The block after the throw, its result in sight. */
export function landed(play: PlayState, stage: Rolling, services: TrainerServices): PlayState {
  const suggestion = services.view(stage.next)?.suggestion
  const calls = [...play.grades.map((_, index) => play.calls[index] ?? null), play.call]
  const next = playFrom(
    play.scenario,
    [...play.states, stage.next],
    [...play.grades, stage.grade],
    suggestion ?? blockOf(play).throws.at(-1)?.decision,
    { mode: play.mode, calls, ownFindings: play.ownFindings },
  )
  const { ownThrows, drill, contest, isShort } = play
  const toured = {
    ...next,
    ...(ownThrows ? { ownThrows } : {}),
    ...(drill ? { drill } : {}),
    ...(isShort ? { isShort } : {}),
    ...(contest === undefined ? {} : { contest }),
    tour: play.tour,
    moment: play.moment,
    who: play.who,
    rival: play.rival,
    belief: play.belief,
    resultAt: services.now(),
  }
  if (isTourOver(toured) || isMomentOver(toured) || isAnswered(toured) || isBowledOut(toured))
    return { ...toured, stage: { kind: 'done' } }
  return passesOn(toured) ? { ...toured, stage: { kind: 'passing' } } : toured
}
