import { randomBytes } from 'node:crypto'
import { z } from 'zod'
import type { BlockState, Decision, FieldThrowRecord, ThrowRecord, Truth } from '../../../sim/world/block/types.js'
import { layPattern } from '../../../sim/world/lane/pattern.js'
import { freshLane } from '../../../sim/world/lane/wear.js'
import { beginScenario } from '../../files/scenario/begin-scenario.js'
import { scenarioFrom } from '../../files/scenario/scenario.js'
import { WriteError } from '../../files/text/atomic-write.js'
import { ScenarioError } from '../../files/text/scenario-error.js'
import { locateNowhere } from '../../files/text/source-text.js'
import type { JoinedBlock } from '../../store/joined-block.js'
import { keptDecision } from '../../store/record.js'
import { chainLink } from '../entry/hosted-chain.js'
import type { JoinAnswer, ThrowAnswer } from './wire.js'
import { WIRE_VERSION } from './wire.js'

const ANSWER_MILLISECONDS = 20_000
const LARGEST_ANSWER_BYTES = 4_000_000
const TRIES = 5
const TOKEN_BYTES = 24
const BETWEEN_TRIES_MILLISECONDS = 1000

export interface Joining {
  readonly url: string
  /** The host's code with a player's name, or the player's own token. */
  readonly by:
    | { readonly code: string; readonly player: string; readonly hand?: 'right' | 'left'; readonly level?: string }
    | { readonly token: string }
}

export interface Joined {
  readonly block: JoinedBlock
  readonly token: string
  readonly rules: readonly string[]
}

/** Joins a hosted contest, or comes back to it. @throws ScenarioError where the host refuses or is not there */
export async function joinHost({ url, by }: Joining): Promise<Joined> {
  const body = { version: WIRE_VERSION, token: randomBytes(TOKEN_BYTES).toString('base64url'), ...by }
  const answer = await asked(url, 'token' in by ? { path: 'entry', token: by.token } : { path: 'join', body }, TRIES)
  if (!answer.isFine) throw new ScenarioError([`${url}: ${answer.sentence}`])
  const joined = joinAnswer.safeParse(answer.data)
  if (!joined.success)
    throw new ScenarioError([`${url}: what answers there is no host of a contest that this program knows.`])
  return joinedFrom(url, joined.data as unknown as JoinAnswer)
}

const joinAnswer = z.looseObject({
  version: z.literal(WIRE_VERSION),
  token: z.string().max(64),
  title: z.string().max(80),
  lane: z.string().max(200),
  rules: z.array(z.string().max(300)).max(20),
  scenario: z.looseObject({ lanes: z.array(z.string().max(80)).min(1).max(2) }),
  posted: z.array(z.unknown()).min(1).max(2),
  field: z.array(z.unknown()).max(1000),
  chainStart: z.string().max(64),
  throws: z.array(z.unknown()).max(2000),
})

/** No oil is known here; where a state needs some there lies a thin even film, the same for everybody. */
const UNKNOWN_OIL = [
  { direction: 'forward', boards: [2, 38], microlitresPerBoard: 10, fromFeet: 0, toFeet: 40, taperFeet: 0, strokes: 1 },
] as const

const UNSEEN: Truth = {
  path: new Float64Array(120).fill(Number.NaN),
  entryBoard: Number.NaN,
  entryAngleRadians: Number.NaN,
  entrySpeedMetresPerSecond: Number.NaN,
  breakpointBoard: Number.NaN,
  breakpointFeet: Number.NaN,
  hookStartFeet: Number.NaN,
  rollStartFeet: Number.NaN,
  leftLaneFeet: Number.NaN,
  touched: 0,
  laneBefore: freshLane(layPattern({ name: 'unknown', passes: [] })),
  normals: [],
}

function joinedFrom(
  url: string,
  { token, title, lane, rules, scenario: sent, posted, field, chainStart: start, throws }: JoinAnswer,
): Joined {
  const lanes = sent.lanes.map((name) => ({ name, passes: UNKNOWN_OIL }))
  const scenario = scenarioFrom(lane, locateNowhere(url, { ...sent, lanes, fieldFramesBefore: 0 }))
  const fieldOf = (seen: ThrowAnswer['field'][number]): FieldThrowRecord => ({
    ...seen,
    aim: { feetBoard: 0, targetBoard: 0, speedStep: 0 },
    truth: UNSEEN,
  })
  const begun = beginScenario(scenario, 'joined')
  const first: BlockState = { ...begun, posted, fieldThrows: field.map(fieldOf) }

  const after = (before: BlockState, { thrown, field: others, next, balls, events }: ThrowAnswer): BlockState => {
    const record: ThrowRecord = { ...thrown, truth: UNSEEN }
    const seen = others.map(fieldOf)
    return {
      ...before,
      ...next,
      balls,
      throws: [...before.throws, record],
      fieldThrows: [...before.fieldThrows, ...seen],
      events: [
        ...before.events,
        { type: 'throw', record },
        ...events,
        ...seen.map((one) => ({ type: 'field-throw' as const, record: one })),
      ],
    }
  }
  const links = [start]
  const states = [first]
  for (const answer of throws) {
    states.push(after(states.at(-1)!, answer))
    links.push(answer.chain)
  }

  const throwNext = async (state: BlockState, decision: Decision): Promise<BlockState> => {
    const number = state.throws.length
    const answer = await asked(url, { path: 'throw', token, body: { number, decision } }, TRIES)
    if (!answer.isFine) throw new WriteError(url, answer.sentence.replace(/\.$/, ''))
    const checked = throwAnswer.safeParse(answer.data)
    if (!checked.success) throw new WriteError(url, 'the host answers what this program does not understand')
    const told = checked.data as unknown as ThrowAnswer
    const next = after(state, told)
    const link = chainLink(links[number] ?? '', keptDecision(next.throws[number]!, 'player'))
    if (link !== told.chain) throw new WriteError(url, "the host's chain does not fit this throw; tell the organiser")
    links[number + 1] = link
    return next
  }
  return { token, rules, block: { scenario, title, states, throwNext } }
}

const throwAnswer = z.looseObject({
  thrown: z.looseObject({
    spot: z.looseObject({ game: z.number(), frame: z.number(), ball: z.number(), lane: z.number() }),
    decision: z.looseObject({ ballId: z.string(), aim: z.looseObject({}) }),
    standingBefore: z.int().min(0).max(1023),
    standingAfter: z.int().min(0).max(1023),
    observation: z.looseObject({ contact: z.string() }),
  }),
  field: z.array(z.unknown()).max(1000),
  next: z.looseObject({ phase: z.string(), standing: z.int().min(0).max(1023) }),
  balls: z.array(z.array(z.array(z.number()))).max(12),
  events: z.array(z.looseObject({ type: z.string() })).max(100),
  chain: z.string().max(64),
})

type Answer = { readonly isFine: true; readonly data: unknown } | { readonly isFine: false; readonly sentence: string }

interface Asked {
  readonly path: string
  readonly token?: string
  readonly body?: unknown
}

/** Asks the host; where it does not answer it is asked again, for what is asked twice is thrown once. */
async function asked(url: string, { path, token, body }: Asked, tries = 1): Promise<Answer> {
  for (let attempt = 1; ; attempt++) {
    try {
      const response = await fetch(new URL(path, url.endsWith('/') ? url : `${url}/`), {
        method: body === undefined ? 'GET' : 'POST',
        headers: {
          ...(body === undefined ? {} : { 'content-type': 'application/json' }),
          ...(token === undefined ? {} : { authorization: `Bearer ${token}` }),
        },
        ...(body === undefined ? {} : { body: JSON.stringify(body) }),
        redirect: 'error',
        signal: AbortSignal.timeout(ANSWER_MILLISECONDS),
      })
      const text = await response.text()
      if (text.length > LARGEST_ANSWER_BYTES) return { isFine: false, sentence: 'the answer is too long.' }
      const data: unknown = JSON.parse(text)
      if (response.ok) return { isFine: true, data }
      if ((response.status === 429 || response.status === 503) && attempt < tries) throw new Error('busy')
      const said = (data as { readonly error?: unknown }).error
      return { isFine: false, sentence: typeof said === 'string' ? said.slice(0, 300) : 'the host refuses.' }
    } catch {
      if (attempt >= tries)
        return { isFine: false, sentence: 'the host does not answer; come back with your own code.' }
      await new Promise((resolve) => setTimeout(resolve, BETWEEN_TRIES_MILLISECONDS))
    }
  }
}
