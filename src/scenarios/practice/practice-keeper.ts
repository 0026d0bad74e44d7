import type { Answer, Kind, Position } from '../../sim/analysis/practice/position.js'
import type { PracticeLoss } from '../../sim/analysis/practice/scoring.js'
import type { SessionMinutes } from '../../sim/analysis/practice/session.js'
import { dataFolder } from '../store/data-folder.js'
import type { Said } from '../store/keeping.js'
import { PLAYER_VARIABLE } from '../store/player-name.js'
import { answerAt, type Desk, nextOpen, sitDown } from './desk.js'
import type { OpenPosition } from './open-position.js'
import { type ShortBlockLane, shortBlockLane } from './short-block-lane.js'

/** What a player says to a position; null for a solved example. */
export type SaidAnswer = { readonly answer: Answer; readonly sureShare: number | null } | null

/** What the practice screen asks of the files. */
export interface PracticeKeeper {
  /** @throws ScenarioError */
  sitDown(minutes: SessionMinutes, kinds: readonly Kind[] | null): Promise<Desk>
  /** The next position, opened; null where the session is over. `anew` asks one of an earlier model again. */
  next(
    desk: Desk,
    anew: (open: OpenPosition) => Promise<Position | null>,
  ): Promise<{ readonly desk: Desk; readonly open: OpenPosition } | null>
  /** Returns once the answer is on the disk. @throws WriteError */
  answer(
    desk: Desk,
    open: OpenPosition,
    said: SaidAnswer,
  ): Promise<{ readonly desk: Desk; readonly loss: PracticeLoss }>
  /** The lane of the short block that a session ends with. */
  shortBlock(desk: Desk): Promise<ShortBlockLane>
}

/** Keeps practice in the player's data folder. */
export function practiceKeeper(environment: Readonly<Record<string, string | undefined>>, said: Said): PracticeKeeper {
  const data = dataFolder(said.dataFolder, environment)
  const player = said.player ?? (environment[PLAYER_VARIABLE] || undefined)
  return {
    sitDown: (minutes, kinds) => sitDown({ data, player, minutes, kinds, now: new Date() }),
    next: nextOpen,
    answer: (desk, open, given) => answerAt(desk, open, given, new Date()),
    shortBlock: ({ session }) => shortBlockLane(session),
  }
}
