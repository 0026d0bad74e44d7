import { betweenRows, FILM_BOARDS, FILM_ROW_METRES, FILM_ROWS, MICROLITRES_PER_MICRON_CELL } from './film.js'
import { strokeShares } from './stroke.js'

/**
 * One pass of the lane machine: every board from `fromBoard` to `toBoard` (inclusive, counted from the right edge) gets
 * `microlitresPerBoard` a stroke, spread between `fromMetres` and `toMetres`. The machine travels away from the foul line
 * on a forward pass and back to it on a reverse pass; the film is even along the stroke and falls off linearly to nothing
 * over the last `taperMetres` of travel, where the brush runs dry. Which of the two ends is written first does not matter.
 */
export interface OilPass {
  readonly direction: 'forward' | 'reverse'
  readonly fromBoard: number
  readonly toBoard: number
  readonly microlitresPerBoard: number
  readonly fromMetres: number
  readonly toMetres: number
  readonly taperMetres: number
  /** How many times the pass is made; 1 when left out. */
  readonly strokes?: number
}

const OILABLE_METRES = FILM_ROWS * FILM_ROW_METRES

/** What is wrong with a pass, in one sentence; null when it can be laid. */
export function checkPass(pass: OilPass): string | null {
  const { fromBoard, toBoard, microlitresPerBoard, fromMetres, toMetres, taperMetres, strokes = 1 } = pass
  if (!Number.isInteger(fromBoard) || !Number.isInteger(toBoard) || fromBoard < 1 || toBoard > FILM_BOARDS)
    return `Boards ${fromBoard} to ${toBoard} are not whole boards from 1 to ${FILM_BOARDS}.`
  if (fromBoard > toBoard) return `The first board, ${fromBoard}, lies left of the last one, ${toBoard}.`
  if (!(microlitresPerBoard > 0 && Number.isFinite(microlitresPerBoard)))
    return `The oil on a board is ${microlitresPerBoard} µL; it must be more than 0.`
  if (!Number.isInteger(strokes) || strokes < 1)
    return `The pass has ${strokes} strokes; it needs a whole number from 1.`
  const near = Math.min(fromMetres, toMetres)
  const far = Math.max(fromMetres, toMetres)
  if (!(near >= 0 && far <= OILABLE_METRES + 1e-9 && far > near))
    return `The stroke runs from ${near} m to ${far} m; it must have a length and lie between 0 and ${OILABLE_METRES} m.`
  if (!(taperMetres >= 0 && taperMetres <= far - near))
    return `The brush runs dry over ${taperMetres} m; it must be from 0 to the stroke's length, ${far - near} m.`
  return null
}

/** Oil of one pass in microlitres: boards covered times microlitres a board times strokes, as on a lane machine's sheet. */
export function passVolumeMicrolitres(pass: OilPass): number {
  return (pass.toBoard - pass.fromBoard + 1) * microlitresOnBoard(pass)
}

/** A pass with the share of its oil that falls in each row of the film. */
export interface OilStroke {
  readonly pass: OilPass
  readonly rowShares: Float64Array
}

/** @throws RangeError when the pass cannot be laid, with the sentence of `checkPass` */
export function strokeOf(pass: OilPass): OilStroke {
  const problem = checkPass(pass)
  if (problem !== null) throw new RangeError(problem)
  return { pass, rowShares: strokeShares(pass.direction, pass.fromMetres, pass.toMetres, pass.taperMetres) }
}

/** Adds `factor` times a stroke's oil to a film in micrometres. */
export function layStroke(microns: Float64Array, { pass, rowShares }: OilStroke, factor = 1): void {
  const microlitres = factor * microlitresOnBoard(pass)
  for (let row = 0; row < FILM_ROWS; row++) {
    if (rowShares[row] === 0) continue
    const laid = (microlitres * rowShares[row]!) / MICROLITRES_PER_MICRON_CELL
    const last = row * FILM_BOARDS + pass.toBoard
    for (let cell = row * FILM_BOARDS + pass.fromBoard - 1; cell < last; cell++) microns[cell]! += laid
  }
}

/** Mean film that strokes leave on boards `fromBoard` to `toBoard` (inclusive) at a distance, in micrometres, without laying them. */
export function meanStrokeMicrons(
  strokes: readonly OilStroke[],
  fromBoard: number,
  toBoard: number,
  metres: number,
): number {
  const { row, share } = betweenRows(metres)
  let sum = 0
  for (const { pass, rowShares } of strokes) {
    const boards = Math.min(toBoard, pass.toBoard) - Math.max(fromBoard, pass.fromBoard) + 1
    if (boards <= 0) continue
    sum += boards * microlitresOnBoard(pass) * (rowShares[row]! * (1 - share) + rowShares[row + 1]! * share)
  }
  return sum / MICROLITRES_PER_MICRON_CELL / (toBoard - fromBoard + 1)
}

const microlitresOnBoard = (pass: OilPass): number => pass.microlitresPerBoard * (pass.strokes ?? 1)
