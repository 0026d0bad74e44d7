import type { Decision } from '../../sim/world/block/types.js'
import type { PlayState } from './play-state.js'

const LONGEST_FIGURE = 4
const FIGURE = /^\d{1,2}(\.\d?)?$/

/** What a digit or a point does to the field under the hand: it is typed into a board. */
export function typeFigure(play: PlayState, key: string): PlayState {
  if (play.field !== 'feet' && play.field !== 'target') {
    return { ...play, notice: 'Digits are boards; they are typed into slide or target.' }
  }
  const typing = `${play.typing ?? ''}${key}`
  return typing.length <= LONGEST_FIGURE && FIGURE.test(typing) ? { ...play, typing } : play
}

/** The last character taken back; with none left the figure stays what it was. */
export function eraseFigure(play: PlayState): PlayState {
  const typing = (play.typing ?? '').slice(0, -1)
  return { ...play, typing: typing === '' ? null : typing }
}

/** The decision with the typed board in it. */
export function withFigure({ decision, field, typing }: PlayState): Decision {
  const board = Number(typing)
  const aim = field === 'target' ? { ...decision.aim, targetBoard: board } : { ...decision.aim, feetBoard: board }
  return { ...decision, aim }
}
