import { feetToMetres } from '../../../sim/units.js'
import type { BallSpecification } from '../../../sim/world/ball/specification.js'
import type { BlockSetup, FieldBowler, LaneOil, LaneSetup } from '../../../sim/world/block/types.js'
import type { OilPass } from '../../../sim/world/lane/oil-pass.js'
import { ballFromData } from '../schema/ball.js'
import { bowlerFromData, type FieldBowlerData, fieldProfileFromData } from '../schema/bowler.js'
import type { LaneData, PassData } from '../schema/lane.js'
import type { ScenarioData } from '../schema/scenario.js'

/** A checked scenario in SI, as the simulator takes it. */
export function blockSetupFromData(name: string, data: ScenarioData): BlockSetup {
  const bag = data.bag.map(ballFromData)
  const balls = [...bag, ...data.fieldBag.map(ballFromData)]
  const [first, second] = data.lanes.map(laneFromData)
  return {
    name,
    lanes: second ? [first, second] : [first],
    bag,
    bowler: bowlerFromData(data.bowler),
    field: data.field.map((other, index) => fieldBowlerFromData(other, index, balls)),
    ...(data.fieldFramesBefore > 0 ? { fieldFramesBefore: data.fieldFramesBefore } : {}),
    practiceThrows: data.practiceThrows,
    games: data.games,
    scoring: data.scoring,
    posted: data.posted,
    seeing: {
      arrowsBoardStep: data.seeing.arrowsBoards,
      breakpointBoardStep: data.seeing.breakpointBoards,
      breakpointFeetStep: data.seeing.breakpointFeet,
      speedMphStep: data.seeing.speedMph,
    },
  }
}

function laneFromData(lane: LaneData): LaneSetup {
  return { name: lane.name, oil: oilFromData(lane) }
}

function oilFromData(lane: LaneData): LaneOil {
  if (lane.drawn) {
    const { lengthFeet, volumeMillilitres, ratio, symmetric } = lane.drawn
    return {
      kind: 'limits',
      limits: {
        lengthMetres: [feetToMetres(lengthFeet[0]), feetToMetres(lengthFeet[1])],
        volumeMicrolitres: [volumeMillilitres[0] * 1000, volumeMillilitres[1] * 1000],
        ratio,
        symmetric: symmetric === 'either' ? 'either' : symmetric === 'yes',
      },
    }
  }
  return { kind: 'pattern', pattern: { name: lane.name, passes: (lane.passes ?? []).map(passFromData) } }
}

function passFromData(pass: PassData): OilPass {
  return {
    direction: pass.direction,
    fromBoard: pass.boards[0],
    toBoard: pass.boards[1],
    microlitresPerBoard: pass.microlitresPerBoard,
    fromMetres: feetToMetres(pass.fromFeet),
    toMetres: feetToMetres(pass.toFeet),
    taperMetres: feetToMetres(pass.taperFeet),
    strokes: pass.strokes,
  }
}

function fieldBowlerFromData(other: FieldBowlerData, index: number, balls: readonly BallSpecification[]): FieldBowler {
  const ball = balls.find((one) => one.id === other.ball)
  if (!ball) throw new RangeError(`There is no ball "${other.ball}".`)
  return {
    profile: fieldProfileFromData(other, index),
    ball,
    aim: { feetBoard: other.feet, targetBoard: other.target, speedStep: 0 },
  }
}
