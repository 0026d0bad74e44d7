import { ScenarioError } from '../files/text/scenario-error.js'

/** A frame of a block, by game and number. */
export interface FramePlace {
  readonly game: number
  readonly frame: number
}

/** What is said where a record has no such frame. */
export const noSuchFrame = (path: string, { game, frame }: FramePlace): ScenarioError =>
  new ScenarioError([`${path}: it has no frame ${game}-${frame}.`])
