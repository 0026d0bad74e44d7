import type { BallSpecification } from '../../world/ball/specification.js'
import type { JudgedThrow } from './worth-matrix.js'

/** Place of a ball in the bag. @throws RangeError when it is not in it */
export function ballIndexOf(bag: readonly BallSpecification[], ballId: string): number {
  const index = bag.findIndex((ball) => ball.id === ballId)
  if (index < 0) throw new RangeError(`There is no ball "${ballId}" in the bag.`)
  return index
}

/** Whether two throws are meant alike. */
export function isSameShot(a: JudgedThrow, b: JudgedThrow): boolean {
  return shotKey(a) === shotKey(b)
}

/** Each throw once, where it first came. */
export function distinctShots<T extends JudgedThrow>(shots: readonly T[]): T[] {
  const first = new Map<string, T>()
  for (const shot of shots) if (!first.has(shotKey(shot))) first.set(shotKey(shot), shot)
  return [...first.values()]
}

/** Words that are equal for throws that are meant alike. */
export function shotKey({ ballIndex, aim, release = 'strike' }: JudgedThrow): string {
  return [ballIndex, aim.feetBoard, aim.targetBoard, aim.speedStep, release].join(' ')
}
