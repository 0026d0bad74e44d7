/**
 * What editors show of each field of a scenario file: its path without places in lists, and a line on what may stand there. A test
 * sees to it that none is left out.
 */
export const SCENARIO_FIELDS: Readonly<Record<string, string>> = {
  $schema: 'Where an editor finds the schema of this file; the program does not read it.',
  version: 'Version of the file format: 1.',
  title: 'What the block is called.',
  purpose: 'What it is for, shown before the block.',
  notes: 'Anything else worth noting; not shown in play.',
  seed: 'Seed of the luck and of drawn oil, where it is to be the same for all; a fresh one a block if left out.',
  lanes: 'One lane, or the two of a pair.',
  'lanes.name': 'What the lane is called.',
  'lanes.passes': "The oil machine's passes, in the order they are run.",
  'lanes.passes.direction': 'forward from the foul line, or reverse on the way back.',
  'lanes.passes.boards':
    'First and last board: two numbers counted from the right edge, the right one first; or as written on a sheet, such as 2L-2R, each from its own edge.',
  'lanes.passes.microlitresPerBoard': 'Microlitres laid on each board of the pass in one stroke.',
  'lanes.passes.fromFeet': 'End nearer the foul line, in feet from it, in both directions.',
  'lanes.passes.toFeet': 'End nearer the pins, in feet from the foul line.',
  'lanes.passes.taperFeet': 'Feet over which the brush runs dry at the end of its travel.',
  'lanes.passes.strokes': 'How often the pass is run.',
  'lanes.drawn': 'Instead of passes: bounds within which the seed draws a pattern nobody has seen.',
  'lanes.drawn.lengthFeet': 'Shortest and longest, in feet.',
  'lanes.drawn.volumeMillilitres': 'Least and most oil, in millilitres.',
  'lanes.drawn.ratio': 'Least and greatest oil in the middle over oil outside: 1.5 is flat, 10 a house pattern.',
  'lanes.drawn.symmetric': 'Whether both sides are alike: yes, no or either.',
  posted: 'What the player is told of the oil: the sheet, its length, or nothing.',
  bag: "The player's balls, one to eight.",
  takeBalls: 'How many balls of the bag the player may take along; all if left out.',
  bowler: 'Who throws: a level, a hand and a style; or level own with figures of your own.',
  field: 'Up to five other bowlers on the same lanes.',
  'field.name': 'What the other bowler is called.',
  'field.hand': 'Right or left.',
  'field.style': 'Manner of release.',
  'field.level': 'What the other bowler averages, or elite or recreational.',
  'field.ball': 'Id of a ball in bag or fieldBag.',
  'field.feet': "Board the slide foot ends on, from that bowler's own side.",
  'field.target': "Board aimed at at the arrows, from that bowler's own side.",
  fieldBag: 'Balls only the others throw.',
  fieldFramesBefore: 'Frames the others have bowled on each lane before the block begins.',
  practiceThrows: 'Throws on each lane before the first game; they cost nothing.',
  games: 'Games in the block.',
  scoring: 'Rules of scoring.',
  seeing: 'How finely the eye at the foul line sees.',
  'seeing.arrowsBoards': 'Boards at the arrows are seen to so much.',
  'seeing.breakpointBoards': 'Boards at the breakpoint are seen to so much.',
  'seeing.breakpointFeet': 'Feet to the breakpoint are seen to so much.',
  'seeing.speedMph': 'Speed is seen to so much, in mph.',
  ...ballFields('bag'),
  ...ballFields('fieldBag'),
  'bowler.level': 'What the bowler averages on house oil, elite or recreational; or own, with figures.',
  'bowler.hand': 'Right or left.',
  'bowler.style': 'Manner of release.',
  'bowler.name': 'What the bowler is called.',
  'bowler.spareBall': 'Id of the ball thrown at spares; the straightest if left out.',
  'bowler.spareSystem': 'Where spares are shot from: cross-lane or straight-on.',
  ...releaseFields('bowler.strike', 'for strikes'),
  ...releaseFields('bowler.spare', 'for spares'),
  ...spreadFields('bowler.error', 'strike balls'),
  ...spreadFields('bowler.spareError', 'spare balls'),
  'bowler.speedStepMph': 'How much softer or firmer one step is, in mph.',
  'bowler.offNormalErrorFactor': 'How many times as much the bowler misses off the usual speed.',
  'bowler.slideToLaydownBoards': 'Boards from the slide foot to where the ball touches the lane.',
}

/** The same for drill files; scenarios inside one are as above. */
export const DRILL_FIELDS: Readonly<Record<string, string>> = {
  version: 'Version of the file format: 1.',
  title: 'What the drill is called.',
  positions: 'Moments to decide, one after the other.',
  'positions.scenario': 'One of scenarios below, a scenario file beside this one, or a built-in name.',
  'positions.seed': 'Seed of the luck and of drawn oil.',
  'positions.decisions': 'What was thrown before the player comes to it.',
  'positions.decisions.ball': 'Id of a ball in the bag.',
  'positions.decisions.feet': "Board the slide foot ends on, from the bowler's own side.",
  'positions.decisions.target': "Board aimed at at the arrows, from the bowler's own side.",
  'positions.decisions.speed': 'softer, usual or firmer.',
  'positions.decisions.release': 'strike, or the straighter one for spares.',
  'positions.throws': 'How many throws are the player’s.',
  'positions.lookFor': 'What the player is to see or ask, told after the last of them.',
  scenarios: 'Scenarios by their names, so that a drill can be sent as one file.',
}

function ballFields(list: string): Record<string, string> {
  return {
    [`${list}.id`]: 'Short name of the ball, used in other fields and on the command line.',
    [`${list}.name`]: 'What the ball is called.',
    [`${list}.cover`]: 'Kind of cover.',
    [`${list}.surfaceGrit`]: 'Grit the cover was last sanded with: lower is rougher.',
    [`${list}.polished`]: 'Whether it was polished after that.',
    [`${list}.weightPounds`]: 'Weight in pounds.',
    [`${list}.radiusOfGyrationInches`]: 'RG, in inches.',
    [`${list}.differentialInches`]: 'Differential of RG, in inches.',
    [`${list}.intermediateDifferentialInches`]: 'Intermediate differential, in inches; 0 for a symmetric core.',
    [`${list}.pinAngleDegrees`]: 'Angle between pin and axis, in degrees.',
  }
}

function releaseFields(path: string, what: string): Record<string, string> {
  return {
    [path]: `The release ${what}.`,
    [`${path}.speedMph`]: 'Speed off the hand, in mph.',
    [`${path}.spinRpm`]: 'Revolutions a minute.',
    [`${path}.rotationDegrees`]: 'Axis rotation, in degrees.',
    [`${path}.tiltDegrees`]: 'Axis tilt, in degrees.',
    [`${path}.loftFeet`]: 'Feet past the foul line where the ball lands.',
  }
}

function spreadFields(path: string, what: string): Record<string, string> {
  return {
    [path]: `How far ${what} miss from one to the next: standard deviations, to both sides alike.`,
    [`${path}.laydownBoards`]: 'Boards at the foul line.',
    [`${path}.angleDegrees`]: 'Degrees of launch angle.',
    [`${path}.speedMph`]: 'Speed, in mph.',
    [`${path}.spinRpm`]: 'Revolutions a minute.',
    [`${path}.rotationDegrees`]: 'Axis rotation, in degrees.',
    [`${path}.lateralAngleCorrelation`]: 'How far a miss at the foul line goes with one of the angle, -1 to 1.',
    [`${path}.speedSpinCorrelation`]: 'How far a miss of speed goes with one of spin, -1 to 1.',
  }
}
