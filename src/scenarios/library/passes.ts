import type { ScenarioInput } from '../files/schema/scenario.js'

/** A pass of our own making: its boards are counted from the right edge. */
export type CountedPass = Omit<NonNullable<ScenarioInput['lanes'][number]['passes']>[number], 'boards'> & {
  readonly boards: [number, number]
}

/** A pass between the foul line and `toFeet`, whose brush runs dry over the last `taperFeet` of its travel. */
export function fromFoulLine(
  direction: CountedPass['direction'],
  boards: CountedPass['boards'],
  microlitresPerBoard: number,
  toFeet: number,
  taperFeet = 2,
): CountedPass {
  return { direction, boards, microlitresPerBoard, fromFeet: 0, toFeet, taperFeet }
}
