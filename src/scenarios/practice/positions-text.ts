import type { Moment, Position } from '../../sim/analysis/practice/position.js'
import type { Decision } from '../../sim/world/block/types.js'

/** How often, in a game, a position of a skill comes up: first balls and spares of walks through whole games with one. */
type ComesUp = Readonly<Record<string, number>>

/** Ready positions and what they were made with. */
export interface PositionSet {
  /** Fingerprint of the model, and the revision of its grades. */
  readonly model: string
  readonly grades: string
  /** Digests of the scenarios that they stand on. */
  readonly scenarios: Readonly<Record<string, string>>
  readonly perGame: ComesUp
  readonly positions: readonly Position[]
}

/** A decision as five small figures; the ball by its place among `balls`. */
type ShortDecision = readonly [ball: number, feet: number, target: number, speed: number, isSpare: 0 | 1]

/** Everything of a position but its moment and with its decisions short. */
type ShortPosition = Record<string, unknown>

interface ShortSet extends Omit<PositionSet, 'positions'> {
  readonly balls: readonly string[]
  readonly moments: readonly {
    readonly at: readonly [scenario: string, seed: string, decisions: readonly ShortDecision[]]
    readonly asks: readonly ShortPosition[]
  }[]
}

/** Positions as one line of compact JSON: those of one moment tell it once. */
export function positionsText({ positions, ...head }: PositionSet): string {
  const balls: string[] = []
  const short = ({ ballId, aim, release }: Decision): ShortDecision => {
    if (!balls.includes(ballId)) balls.push(ballId)
    return [balls.indexOf(ballId), aim.feetBoard, aim.targetBoard, aim.speedStep, release === 'spare' ? 1 : 0]
  }
  const moments = new Map<string, { at: ShortSet['moments'][number]['at']; asks: ShortPosition[] }>()
  for (const { moment, ...position } of positions) {
    const { scenario, seed, decisions } = moment
    const key = JSON.stringify([scenario, seed, decisions])
    const known = moments.get(key) ?? { at: [scenario, seed, decisions.map(short)] as const, asks: [] }
    moments.set(key, known)
    known.asks.push(withDecisions(position, short))
  }
  const set: ShortSet = { ...head, balls, moments: [...moments.values()] }
  return JSON.stringify(set)
}

/** The positions of such a line. */
export function positionsFromText(text: string): PositionSet {
  const { balls, moments, ...head } = JSON.parse(text) as ShortSet
  const long = ([ball, feetBoard, targetBoard, speedStep, isSpare]: ShortDecision): Decision => ({
    ballId: balls[ball],
    aim: { feetBoard, targetBoard, speedStep: speedStep as Decision['aim']['speedStep'] },
    release: isSpare === 1 ? 'spare' : 'strike',
  })
  const positions = moments.flatMap(({ at: [scenario, seed, decisions], asks }) => {
    const moment: Moment = { scenario, seed, decisions: decisions.map(long) }
    return asks.map((ask) => ({ ...withDecisions(ask, long), moment }) as unknown as Position)
  })
  return { ...head, positions }
}

/** A position with the decisions in it told another way. */
function withDecisions<From, To>(position: object, told: (decision: From) => To): ShortPosition {
  const { decision, answers, ...rest } = position as {
    decision?: From
    answers?: readonly { readonly decision: From }[]
  }
  return {
    ...rest,
    ...(decision ? { decision: told(decision) } : {}),
    ...(answers ? { answers: answers.map((answer) => ({ ...answer, decision: told(answer.decision) })) } : {}),
  }
}
