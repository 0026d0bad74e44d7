import { boardWords, SPEED_WORDS } from '../../scenarios/words/words.js'
import type { BallSpecification } from '../../sim/world/ball/specification.js'
import type { Decision } from '../../sim/world/block/types.js'
import { canvasRows, newCanvas, put } from '../draw/canvas.js'
import type { Theme } from '../draw/theme.js'

export const DECISION_FIELDS = ['ball', 'feet', 'target', 'speed', 'release'] as const
export type DecisionField = (typeof DECISION_FIELDS)[number]
const DECISION_PANEL_ROWS = 2

const HEADINGS: Readonly<Record<DecisionField, string>> = {
  ball: 'Ball',
  feet: 'Feet',
  target: 'Target',
  speed: 'Speed',
  release: 'Release',
}
const VALUE_COLUMNS: Readonly<Record<Exclude<DecisionField, 'ball'>, number>> = {
  feet: 9,
  target: 10,
  speed: 10,
  release: 10,
}

/** Room for a ball's name between its marks and before the next field. */
const AROUND_BALL_COLUMNS = 7

/** What the next throw will be: headings and values, the field under the hand between two marks. */
export function decisionPanelRows(
  decision: Decision,
  bag: readonly BallSpecification[],
  field: DecisionField | null,
  columns: number,
  theme: Theme,
): string[] {
  const { glyphs } = theme
  const canvas = newCanvas(columns, DECISION_PANEL_ROWS)
  const values: Readonly<Record<DecisionField, string>> = {
    ball: ballText(bag, decision.ballId),
    feet: boardWords(decision.aim.feetBoard),
    target: boardWords(decision.aim.targetBoard),
    speed: SPEED_WORDS[decision.aim.speedStep],
    release: decision.release,
  }
  let left = 0
  for (const name of DECISION_FIELDS) {
    const room = fieldColumns(name, bag, columns)
    const chosen = name === field
    const value = [...values[name]].slice(0, room - 4).join('')
    put(canvas, left + 2, 0, HEADINGS[name], chosen ? 'accent' : 'faint')
    put(canvas, left + 2, 1, value, chosen ? 'accent' : 'strong')
    if (chosen) {
      put(canvas, left, 1, glyphs.left, 'accent')
      put(canvas, left + 3 + [...value].length, 1, glyphs.right, 'accent')
    }
    left += room
  }
  return canvasRows(canvas, theme)
}

/** The ball takes what its longest name needs, as far as there is room, so that the fields stand together and stay put. */
function fieldColumns(name: DecisionField, bag: readonly BallSpecification[], columns: number): number {
  if (name !== 'ball') return VALUE_COLUMNS[name]
  const others = Object.values(VALUE_COLUMNS).reduce((sum, width) => sum + width, 0)
  const longest = Math.max(...bag.map(({ id }) => [...ballText(bag, id)].length))
  return Math.min(columns - others, longest + AROUND_BALL_COLUMNS)
}

function ballText(bag: readonly BallSpecification[], id: string): string {
  const place = bag.findIndex((ball) => ball.id === id)
  return place < 0 ? id : `${place + 1} ${bag[place]!.name}`
}
