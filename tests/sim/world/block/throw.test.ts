import { describe, expect, it } from 'vitest'
import { throwBall } from '../../../../src/sim/world/block/throw.js'
import { levelProfile } from '../../../../src/sim/world/bowler/levels.js'
import { emptyFilm } from '../../../../src/sim/world/lane/film.js'
import { freshLane } from '../../../../src/sim/world/lane/wear.js'
import { FULL_RACK } from '../../../../src/sim/world/pins/leaves.js'
import { hybrid } from '../ball/bag-for-tests.js'

describe('a throw that a gutter has before the arrows', () => {
  it.each([
    ['right', -30, 0],
    ['right', 80, 40],
    ['left', -30, 0],
    ['left', 80, 40],
  ] as const)(
    'of a %s-hander at board %d there is seen in that gutter, and fells nothing',
    (hand, targetBoard, seen) => {
      const { arrowsBoard, standing } = throwBall({
        profile: levelProfile('200', 'tweener', hand),
        ball: hybrid,
        aim: { feetBoard: 20, targetBoard, speedStep: 0 },
        release: 'strike',
        lane: freshLane(emptyFilm()),
        standing: FULL_RACK,
        seed: 'gutter',
        game: 1,
        frame: 1,
        ballInFrame: 1,
        bowlerIndex: 0,
      })
      expect(arrowsBoard).toBe(seen)
      expect(standing).toBe(FULL_RACK)
    },
  )
})
