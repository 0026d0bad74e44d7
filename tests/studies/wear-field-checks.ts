import { flaringField, strongUnflaringField, urethaneField, weakUnflaringField } from '../sim/world/lane/field-balls.js'
import { bandLoss, bandMicrons, playField } from '../sim/world/lane/field-play.js'
import { flatForty, houseForty } from '../sim/world/lane/patterns-for-tests.js'

const FIELDS = [
  ['flaring, one line', flaringField, 4.5, 1.25],
  ['flaring, spread', flaringField, 13.5, 2.75],
  ['urethane, one line', urethaneField, 4.5, 1.25],
  ['weak without flare, one line', weakUnflaringField, 4.5, 1.25],
  ['weak without flare, spread', weakUnflaringField, 24, 2.75],
  ['strong without flare, one line', strongUnflaringField, 4.5, 1.25],
  ['strong without flare, spread', strongUnflaringField, 13.5, 2.75],
] as const
const ENDS = [1, 8, 16, 20, 24, 32, 38, 40, 44, 50, 60]

/** Prints what is left of the played band's oil, section by section, for the kinds of field the oil tests check. */
export function run(): void {
  console.log('Loss of the band in % to 40 ft, then the film on the dry boards in µm; last the oil wiped off in µL.')
  console.log(
    `${'section ends at ft'.padEnd(56)}${ENDS.slice(1)
      .map((feet) => `${feet}`.padStart(6))
      .join('')}`,
  )
  for (const [name, balls, games, spreadBoards] of FIELDS) {
    for (const pattern of [flatForty, houseForty]) {
      const wear = playField({ pattern, balls, games, spreadBoards }, 'field')
      const figures = ENDS.slice(1).map((to, i) => {
        const from = ENDS[i]!
        return to <= 40
          ? (100 * bandLoss(wear, from, to)).toFixed(0)
          : bandMicrons(wear.after.film, wear, from, to).toFixed(2)
      })
      const title = `${name}, ${games} games, ${pattern.name}`
      console.log(
        title.padEnd(56) +
          figures.map((f) => f.padStart(6)).join('') +
          wear.after.wipedMicrolitres.toFixed(0).padStart(7),
      )
    }
  }
}
