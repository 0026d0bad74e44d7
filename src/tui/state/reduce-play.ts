import type { Decision } from '../../sim/world/block/types.js'
import type { Command } from '../keys/binding.js'
import { stepCall } from './call.js'
import { DECISION_FIELDS, type DecisionField } from './decision-fields.js'
import { blockOf, canCall, type PlayState, tellsGrades } from './play-state.js'
import type { TrainerServices } from './services.js'
import { eraseFigure, typeFigure, withFigure } from './typed-figure.js'

const HELD_BACK = 'That is held back until the contest is over. Esc leaves the entry for later.'

/** A step of one field: boards for feet and target, places for the others. */
interface Nudge {
  readonly feet?: number
  readonly target?: number
}

/** The play screen's answer to a command; the same state where the command means nothing now. */
export function reducePlay(play: PlayState, command: Command, services: Pick<TrainerServices, 'check'>): PlayState {
  if (play.stage.kind === 'leaving') return command === 'back' ? { ...play, stage: { kind: 'deciding' } } : play
  if (play.stage.kind !== 'deciding') return play
  const clear = play.notice === '' ? play : { ...play, notice: '' }
  if (clear.open === 'call') return stepCall(clear, command)
  if (typeof command === 'object') return typed(clear, command.type, services)
  if (clear.typing !== null) {
    if (command === 'back') return { ...clear, typing: null }
    if (command === 'erase') return eraseFigure(clear)
    const settled = settleFigure(clear, services)
    return command === 'enter' || settled.notice !== '' ? settled : reducePlay(settled, command, services)
  }
  const left = leftwards(clear)
  switch (command) {
    case 'left':
      return { ...clear, field: neighbour(clear.field, -1) }
    case 'right':
      return { ...clear, field: neighbour(clear.field, 1) }
    case 'up':
      return step(clear, 1, services)
    case 'down':
      return step(clear, -1, services)
    case 'half-left':
      return nudge(clear, halfOf(clear.field, left), services)
    case 'half-right':
      return nudge(clear, halfOf(clear.field, -left), services)
    case 'parallel-left':
      return nudge(clear, { feet: 2 * left, target: left }, services)
    case 'parallel-right':
      return nudge(clear, { feet: -2 * left, target: -left }, services)
    case 'pick-feet':
    case 'pick-target':
    case 'pick-speed':
    case 'pick-release':
      return { ...clear, field: command.slice('pick-'.length) as DecisionField }
    case 'bag':
      return { ...clear, field: 'ball', open: 'bag' }
    case 'call':
      if (!canCall(clear)) return { ...clear, notice: 'A reaction is called for first balls only; pins are standing.' }
      return { ...clear, open: 'call', call: clear.call ?? { contact: 'pocket', confidencePercent: 70 } }
    case 'belief': {
      const why = clear.contest === undefined ? whyNoBelief(clear) : HELD_BACK
      return why === '' ? { ...clear, open: 'belief' } : { ...clear, notice: why }
    }
    case 'history':
      return { ...clear, open: 'history' }
    case 'undo':
      return undo(clear)
    case 'enter':
      return throwNow(clear, services)
    case 'lift-oil':
      if (clear.contest !== undefined) return { ...clear, notice: HELD_BACK }
      return { ...clear, stage: { kind: 'leaving' } }
    case 'back':
      return { ...clear, open: 'nothing' }
    default:
      return clear
  }
}

/** A board picked by pointing at it; what is being typed falls away. */
export function pickBoard(
  play: PlayState,
  field: 'feet' | 'target',
  board: number,
  services: Pick<TrainerServices, 'check'>,
): PlayState {
  return settleFigure({ ...play, notice: '', field, typing: String(board) }, services)
}

/** A digit is a ball of the bag where the ball is chosen, else part of a board. */
function typed(play: PlayState, key: string, services: Pick<TrainerServices, 'check'>): PlayState {
  return play.field === 'ball' ? chooseBall(play, Number(key) - 1, services) : typeFigure(play, key)
}

/** The typed board taken over, or the reason why it cannot be. */
function settleFigure(play: PlayState, services: Pick<TrainerServices, 'check'>): PlayState {
  return play.typing === null ? play : decide({ ...play, typing: null }, withFigure(play), services)
}

/** The ball at a place in the bag. */
export function chooseBall(play: PlayState, place: number, services: Pick<TrainerServices, 'check'>): PlayState {
  const ball = blockOf(play).setup.bag[place]
  if (!ball) return { ...play, notice: `There is no ball ${place + 1} in the bag.` }
  return decide({ ...play, open: 'nothing', field: 'ball' }, { ...play.decision, ballId: ball.id }, services)
}

/** Boards count from the bowler's own side, so left is up the numbers for a right-hander and down for a left-hander. */
const leftwards = (play: PlayState): 1 | -1 => (blockOf(play).setup.bowler.hand === 'right' ? 1 : -1)

function neighbour(field: DecisionField, by: 1 | -1): DecisionField {
  const count = DECISION_FIELDS.length
  return DECISION_FIELDS[(DECISION_FIELDS.indexOf(field) + by + count) % count]!
}

const halfOf = (field: DecisionField, by: number): Nudge => (field === 'target' ? { target: by / 2 } : { feet: by / 2 })

/** One step of the chosen field: upwards is a board left, firmer, the ball before, the other release. */
function step(play: PlayState, by: 1 | -1, services: Pick<TrainerServices, 'check'>): PlayState {
  const { decision, field } = play
  const { aim } = decision
  switch (field) {
    case 'feet':
      return nudge(play, { feet: by * leftwards(play) }, services)
    case 'target':
      return nudge(play, { target: by * leftwards(play) }, services)
    case 'speed': {
      const speedStep = Math.min(1, Math.max(-1, aim.speedStep + by)) as -1 | 0 | 1
      return decide(play, { ...decision, aim: { ...aim, speedStep } }, services)
    }
    case 'release':
      return decide(play, { ...decision, release: decision.release === 'strike' ? 'spare' : 'strike' }, services)
    case 'ball': {
      const { bag } = blockOf(play).setup
      const place = bag.findIndex((ball) => ball.id === decision.ballId)
      return chooseBall(play, (place - by + bag.length) % bag.length, services)
    }
  }
}

function nudge(play: PlayState, by: Nudge, services: Pick<TrainerServices, 'check'>): PlayState {
  const { aim } = play.decision
  const moved = {
    ...aim,
    feetBoard: aim.feetBoard + (by.feet ?? 0),
    targetBoard: aim.targetBoard + (by.target ?? 0),
  }
  return decide(play, { ...play.decision, aim: moved }, services)
}

function decide(play: PlayState, decision: Decision, services: Pick<TrainerServices, 'check'>): PlayState {
  if (sameDecision(decision, play.decision)) return play
  const problem = services.check(blockOf(play), decision)
  if (problem !== null) return { ...play, notice: problem }
  return { ...play, decision, undo: [...play.undo, play.decision] }
}

function undo(play: PlayState): PlayState {
  const decision = play.undo.at(-1)
  if (!decision) return { ...play, notice: 'Nothing to undo; a throw cannot be taken back.' }
  return { ...play, decision, undo: play.undo.slice(0, -1) }
}

function throwNow(play: PlayState, services: Pick<TrainerServices, 'check'>): PlayState {
  const problem = services.check(blockOf(play), play.decision)
  return problem === null ? { ...play, stage: { kind: 'weighing', turns: 0 } } : { ...play, notice: problem }
}

/** Why nothing is said of how sure one could be; empty where it is. */
function whyNoBelief(play: PlayState): string {
  if (!tellsGrades(play)) return 'How sure you can be of the oil is told in the debrief of this block.'
  return play.grades.length === 0 ? 'How sure you can be of the oil is told after a choice, not before the first.' : ''
}

const sameDecision = (one: Decision, other: Decision): boolean =>
  one.ballId === other.ballId &&
  one.release === other.release &&
  one.aim.feetBoard === other.aim.feetBoard &&
  one.aim.targetBoard === other.aim.targetBoard &&
  one.aim.speedStep === other.aim.speedStep
