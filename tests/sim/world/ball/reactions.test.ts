import { describe, expect, it } from 'vitest'
import { flatForty, flatFortyFive, houseForty, shortThirtyFive } from '../lane/patterns-for-tests.js'
import { bag, plastic, sandedSolid, symmetricSolid, urethane, weakPearl } from './bag-for-tests.js'
import { entryBoard, entryDegrees, exitBoard, inGutter, oiledLane, pricedLines, rollOn } from './lines-for-tests.js'

const house = oiledLane(houseForty)
const long = oiledLane(flatFortyFive)
const flat = oiledLane(flatForty)
const short = oiledLane(shortThirtyFive)

/** Right of this the ball misses the headpin: two radii, of ball and pin, from board 20 (rule-book sizes). */
const HEADPIN_LIMIT_BOARD = 13.8
const line = { laydown: 15, target: 10.5 }

// All of these are common practice of the trade, without a source to cite; the covers were calibrated to them.
describe('reactions a bowler would recognise', () => {
  it('orders the bag from strong to weak on every lane with one release', () => {
    const reactive = bag.slice(0, 4)
    for (const lane of [house, long, flat, short]) {
      const boards = reactive.map((ball) => entryBoard(rollOn(lane, ball, line)))
      expect([...boards].sort((a, b) => b - a)).toEqual(boards)
      expect(entryBoard(rollOn(lane, urethane, line))).toBeLessThan(boards[1]!)
      expect(entryBoard(rollOn(lane, plastic, line))).toBeLessThan(boards[3]! - 4)
    }
  })

  it('keeps a sanded strong ball straighter on flat 45 ft than on house oil', () => {
    const onHouse = entryBoard(rollOn(house, sandedSolid, line))
    const onLong = entryBoard(rollOn(long, sandedSolid, line))
    expect(onHouse - onLong).toBeGreaterThan(2)
  })

  it('sends a throw two boards right of the target past the headpin on fresh flat 45 ft', () => {
    for (const ball of bag.slice(0, 4)) {
      const best = pricedLines(long, ball)[0]!
      expect(entryBoard(rollOn(long, ball, { ...best, target: best.target - 2 }))).toBeLessThan(HEADPIN_LIMIT_BOARD)
    }
  })

  it('brings a throw one board right of the target back near the pocket on house oil', () => {
    for (const ball of bag.slice(0, 4)) {
      const best = pricedLines(house, ball)[0]!
      const missed = rollOn(house, ball, { ...best, target: best.target - 1 })
      expect(inGutter(missed)).toBe(false)
      expect(entryBoard(missed)).toBeGreaterThan(15)
    }
  })

  it('lets a weak pearl enter at least three boards right of a sanded strong solid on flat 45 ft', () => {
    const strong = entryBoard(rollOn(long, sandedSolid, line))
    expect(strong - entryBoard(rollOn(long, weakPearl, line))).toBeGreaterThan(3)
  })

  it('makes the sanded strong solid roll too soon on house oil: less angle than the pearl', () => {
    const strongRoll = { ...rollOn(house, sandedSolid, pricedLines(house, sandedSolid)[0]!) }
    const pearlRoll = { ...rollOn(house, weakPearl, pricedLines(house, weakPearl)[0]!) }
    expect(strongRoll.rollStartMetres).toBeLessThan(pearlRoll.rollStartMetres - 1)
    expect(entryDegrees(strongRoll)).toBeLessThan(entryDegrees(pearlRoll) - 1)
  })

  // Each on its best line: 15.68 pins by the sanded strong solid, 15.50 by the pearl.
  it.fails('known gap: makes the sanded strong solid worth less than the pearl on house oil (0.18 pins more)', () => {
    expect(pricedLines(house, sandedSolid)[0]!.value).toBeLessThan(pricedLines(house, weakPearl)[0]!.value)
  })

  it('prefers the strong solids to the pearl on flat 45 ft', () => {
    const pearl = pricedLines(long, weakPearl)[0]!.value
    expect(pricedLines(long, sandedSolid)[0]!.value).toBeGreaterThan(pearl)
    expect(pricedLines(long, symmetricSolid)[0]!.value).toBeGreaterThan(pearl)
  })

  it('finds urethane more use on short oil than the sanded strong solid', () => {
    expect(pricedLines(short, urethane)[0]!.value).toBeGreaterThan(pricedLines(short, sandedSolid)[0]!.value)
  })

  // Rule of thumb of the trade: where the ball leaves the oil is its length in feet less 31, give or take three boards.
  const missOfRule = (lane: typeof long, ball: (typeof bag)[number]): number =>
    Math.abs(exitBoard(lane, ball, pricedLines(lane, ball)[0]!) - (lane.lengthFeet - 31))

  it('leaves flat 40 ft oil near board 9 with the weak pearl', () => {
    expect(missOfRule(flat, weakPearl)).toBeLessThan(3)
  })

  // On even oil an outside line wins because it keeps more of the release's angle; a steep rise of the film towards the middle
  // draws the best line in, as far as the rise lies (a crown on boards 10 to 13 of 45 ft: exits 9.5 to 10.2), not by length.
  // Measured exits: 45 ft 7.9 to 8.8 (rule 14), 40 ft 2.5 to 3.5 with the three strong balls (rule 9), 35 ft 7.0 to 8.3 (rule
  // 4). The choice is flat: on 45 ft, nine boards further in cost the strong solid half a pin.
  it.fails('known gap: leaves 35, 40 and 45 ft of flat oil within three boards of the rule with every reactive ball', () => {
    for (const lane of [short, flat, long]) {
      for (const ball of bag.slice(0, 4)) expect(missOfRule(lane, ball)).toBeLessThan(3)
    }
  })
})
