import type { LaneData } from '../schema/lane.js'
import type { ScenarioData } from '../schema/scenario.js'
import { ScenarioError } from '../text/scenario-error.js'
import type { LocatedData } from '../text/source-text.js'

/** Volumes and lengths that lanes are oiled with, with room to either side (common practice, no source). */
const MILLILITRES = [5, 45] as const
const FEET = [20, 54] as const

const MICROLITRES_A_MILLILITRE = 1000

/**
 * Refuses oil that no lane has: next to none, far too much, or to the pins. Files are held to it as they are read; records, which
 * have been played, are not.
 *
 * @throws ScenarioError
 */
export function checkOil({ lanes }: Pick<ScenarioData, 'lanes'>, source: LocatedData): void {
  const sentences = lanes.flatMap((lane, index) =>
    lane.passes === undefined
      ? []
      : oilFaults(lane.passes).map((sentence) => {
          const { text } = source.place(['lanes', index, 'passes'], 'value')
          return `${text} lanes ${index + 1} > passes: ${sentence}`
        }),
  )
  if (sentences.length > 0) throw new ScenarioError(sentences)
}

function oilFaults(passes: NonNullable<LaneData['passes']>): string[] {
  const microlitres = passes.reduce(
    (sum, { boards: [right, left], microlitresPerBoard, strokes }) =>
      sum + (left - right + 1) * microlitresPerBoard * strokes,
    0,
  )
  const millilitres = microlitres / MICROLITRES_A_MILLILITRE
  const feet = Math.max(...passes.map(({ toFeet }) => toFeet))
  return [
    ...(isWithin(millilitres, MILLILITRES)
      ? []
      : [
          `found ${shown(millilitres)} mL in all; allowed is a lane's oil of ${MILLILITRES[0]} to ${MILLILITRES[1]} mL.`,
        ]),
    ...(isWithin(feet, FEET)
      ? []
      : [`found oil to ${feet} feet; allowed is a lane's oil that ends between ${FEET[0]} and ${FEET[1]} feet.`]),
  ]
}

const isWithin = (value: number, [least, most]: readonly [number, number]): boolean => value >= least && value <= most
const shown = (millilitres: number): string => String(Number(millilitres.toFixed(1)))
