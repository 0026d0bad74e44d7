import type { ScenarioInput } from '../files/schema/scenario.js'

type PassInput = NonNullable<ScenarioInput['lanes'][number]['passes']>[number]

/** A pass between the foul line and `toFeet`, whose brush runs dry over the last `taperFeet` of its travel. */
export function fromFoulLine(
  direction: PassInput['direction'],
  boards: PassInput['boards'],
  microlitresPerBoard: number,
  toFeet: number,
  taperFeet = 2,
): PassInput {
  return { direction, boards, microlitresPerBoard, fromFeet: 0, toFeet, taperFeet }
}
