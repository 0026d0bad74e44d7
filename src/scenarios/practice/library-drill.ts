import {
  DECIDED_SKILLS,
  type DecidedSkill,
  type DecidePosition,
  type Position,
} from '../../sim/analysis/practice/position.js'
import { type Drill, loadDrill } from '../drills/load-drill.js'
import { ScenarioError } from '../files/text/scenario-error.js'
import { hintWords, SKILL_WORDS } from '../words/practice-words.js'
import { openPosition } from './open-position.js'
import { readyPositions, standingOfSet } from './position-set.js'

/** What a drill of the library is named by. */
const LIBRARY_PREFIX = 'library:'

/** The skill that a drill of the library is about. @throws ScenarioError where there is no such */
function librarySkill(name: string): DecidedSkill {
  const asked = name.slice(LIBRARY_PREFIX.length)
  // The skill is called so where drills are assigned.
  const skill = asked === 'hand-or-lane' ? 'throw-or-lane' : DECIDED_SKILLS.find((one) => one === asked)
  if (!skill) {
    throw new ScenarioError(
      [
        `${name}: there is no such drill; the library has ${DECIDED_SKILLS.map((one) => LIBRARY_PREFIX + one).join(', ')}.`,
      ],
      true,
    )
  }
  return skill
}

/** Positions of the library by skill: those of practice that end in a decision. */
const libraryPositions = (positions: readonly Position[], skill: DecidedSkill): readonly DecidePosition[] =>
  positions.filter((one): one is DecidePosition => one.kind === 'decide' && one.skill === skill)

/** A drill file, or a drill of the library by the name of its skill. @throws ScenarioError */
export const drillNamed = (name: string): Promise<Drill> =>
  name.startsWith(LIBRARY_PREFIX) ? libraryDrill(name) : loadDrill(name)

const SHORT_POSITIONS = 5

/**
 * A few positions of a drill of the library.
 *
 * @param from how many to pass over, going round
 * @throws ScenarioError
 */
export const shortLibraryDrill = (name: string, from: number): Promise<Drill> =>
  libraryDrill(name, (all) => {
    const first = from % Math.max(1, all.length)
    return [...all.slice(first), ...all.slice(0, first)].slice(0, SHORT_POSITIONS)
  })

type Choose = (all: readonly DecidePosition[]) => readonly DecidePosition[]

/** The drill of one skill, each of its positions played up to where the player comes in. @throws ScenarioError */
async function libraryDrill(name: string, choose: Choose = (all) => all): Promise<Drill> {
  const skill = librarySkill(name)
  const set = await readyPositions()
  const isCurrent = (await standingOfSet(set)) !== 'earlier-model'
  const ready: Drill['positions'][number][] = []
  for (const position of choose(libraryPositions(set.positions, skill))) {
    const open = await openPosition(position)
    if (!open.state.spot) continue
    // What was best is told by the grade; a second answer to it, out of those that were offered, would only be another figure.
    const lookFor = isCurrent ? hintWords(position) : 'What did the balls before this one tell?'
    ready.push({
      scenario: open.scenario,
      state: open.state,
      states: open.states,
      given: position.moment.decisions,
      throws: 1,
      lookFor,
    })
  }
  return { title: `Library: ${SKILL_WORDS[skill]}`, positions: ready }
}
