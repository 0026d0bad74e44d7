import { feetToMetres, metresToFeet } from '../../sim/units.js'
import { patternOf } from '../../sim/world/block/begin.js'
import type { LaneSetup } from '../../sim/world/block/types.js'
import { meanFilmMicrons, type OilFilm } from '../../sim/world/lane/film.js'
import { layPattern, measurePattern, patternVolumeMicrolitres } from '../../sim/world/lane/pattern.js'
import { EXIT } from '../files/text/exit-codes.js'
import { jsonText, rounded } from '../files/text/json.js'
import { loadScenario } from '../library/load.js'
import { dataFolder } from '../store/data-folder.js'
import { refuseSealedLane } from '../store/sealed-lanes.js'
import { oilPicture } from '../words/oil-picture.js'
import { type CommandConsole, printText } from './console/console.js'
import { seedOf } from './seed.js'

export interface PatternOptions {
  readonly seed?: string
  readonly json?: boolean
}

const TABLE_FEET = [3, 8, 15, 22, 30, 38, 44]
/** What lies between the arrows, which stand on every fifth board from either edge; boards count from the right. */
const BOARD_GROUPS: readonly (readonly [name: string, from: number, to: number])[] = [
  ['right edge to 1st', 1, 5],
  ['1st to 2nd arrow', 5, 10],
  ['2nd to 3rd', 10, 15],
  ['3rd to 4th', 15, 20],
  ['4th to 5th', 20, 25],
  ['5th to 6th', 25, 30],
  ['6th to 7th', 30, 35],
  ['7th to left edge', 35, 39],
]
const NAME_COLUMNS = 19

/** Each lane's oil: volume, length, ratio, class, thickness by place, and a picture of it. */
export async function patternCommand(name: string, asked: PatternOptions, console: CommandConsole): Promise<number> {
  const scenario = await loadScenario(name)
  refuseSealedLane(dataFolder(undefined, console.environment), scenario)
  const { setup, title } = scenario
  const options = { ...asked, seed: seedOf(asked.seed, scenario) }
  const sheets = setup.lanes.map((lane, index) => oilSheet(lane, options.seed, index))
  if (options.json) {
    const drawn = setup.lanes.some((lane) => lane.oil.kind === 'limits')
    const lanes = sheets.map(({ film: _film, ...figures }) => figures)
    printText(console, jsonText({ scenario: setup.name, ...(drawn ? { seed: options.seed } : {}), lanes }))
    return EXIT.fine
  }
  console.print(title)
  for (const sheet of sheets) {
    const { volumeMillilitres, lengthFeet, ratio, laneClass } = sheet
    console.print('')
    console.print(`${sheet.lane}${sheet.drawn ? ` (drawn by seed ${options.seed})` : ''}`)
    console.print(
      `  ${volumeMillilitres.toFixed(1)} mL over ${lengthFeet} ft, ratio ${ratioWords(ratio)}, ${laneClass}`,
    )
    console.print('')
    for (const row of thicknessTable(sheet.film)) console.print(row)
    console.print('')
    for (const row of oilPicture(sheet.film)) console.print(row)
  }
  return EXIT.fine
}

function oilSheet(lane: LaneSetup, seed: string, index: number) {
  const pattern = patternOf(lane.oil, seed, index)
  const film = layPattern(pattern)
  const measured = measurePattern(film)
  return {
    lane: lane.name,
    drawn: lane.oil.kind === 'limits',
    volumeMillilitres: rounded(patternVolumeMicrolitres(pattern) / 1000, 3),
    lengthFeet: rounded(metresToFeet(measured.lengthMetres), 2),
    ratio: Number.isFinite(measured.ratio) ? rounded(measured.ratio, 3) : null,
    laneClass: measured.laneClass,
    readings: measured.readings.map((reading) => ({
      feet: rounded(metresToFeet(reading.atMetres), 2),
      insideMicrons: rounded(reading.insideMicrons, 4),
      leftMicrons: rounded(reading.leftMicrons, 4),
      rightMicrons: rounded(reading.rightMicrons, 4),
    })),
    film,
  }
}

function ratioWords(ratio: number | null): string {
  return ratio === null ? 'without bound (the outside is dry)' : `${ratio.toFixed(1)}:1`
}

function thicknessTable(film: OilFilm): string[] {
  const header = ['µm of oil'.padEnd(NAME_COLUMNS), ...TABLE_FEET.map((feet) => `${feet} ft`.padStart(7))].join('')
  const rows = BOARD_GROUPS.map(([name, from, to]) =>
    [
      name.padEnd(NAME_COLUMNS),
      ...TABLE_FEET.map((feet) => meanFilmMicrons(film, from, to, feetToMetres(feet)).toFixed(2).padStart(7)),
    ].join(''),
  )
  return [header, ...rows].map((row) => `  ${row}`)
}
