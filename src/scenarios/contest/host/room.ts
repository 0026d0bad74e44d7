import { createHash, timingSafeEqual } from 'node:crypto'
import { advance, checkDecision } from '../../../sim/world/block/advance.js'
import type { BlockState } from '../../../sim/world/block/types.js'
import { ScenarioError } from '../../files/text/scenario-error.js'
import { blockStore } from '../../store/block-store.js'
import type { OpenBlock } from '../../store/open-block.js'
import { keptDecision } from '../../store/record.js'
import { type SigningKey, signatureOf } from '../../store/signing.js'
import { rulesLines } from '../../words/contest-words.js'
import { type Entered, enter } from '../entry/enter.js'
import { chainLink, chainStart, hostedPart } from '../entry/hosted-chain.js'
import type { OpenedPack } from '../pack/pack.js'
import { type Board, boardLine, byFigure } from './board.js'
import { type Guest, isSameName, readTokens, writeTokens } from './guests.js'
import {
  type AskedThrow,
  answerOf,
  isSameDecision,
  type JoinAnswer,
  seenField,
  type ThrowAnswer,
  WIRE_VERSION,
} from './wire.js'

/** A refusal that a client is told, with the status of HTTP that says so (RFC 9110). */
export class Refusal extends Error {
  constructor(
    readonly status: 400 | 401 | 403 | 404 | 409 | 413 | 429 | 503,
    message: string,
  ) {
    super(message)
    this.name = 'Refusal'
  }
}

interface Seat {
  readonly open: OpenBlock
  readonly states: BlockState[]
  readonly links: string[]
  /** One throw at a time. */
  busy: Promise<unknown>
  filed: boolean
}

interface RoomParts {
  readonly opened: OpenedPack
  /** The organiser's, which vouches for what was thrown here. */
  readonly key: SigningKey
  /** Where entries and journals lie. */
  readonly folder: string
  readonly joinCode: string
  readonly now?: () => Date
}

const MOST_SEATS = 500

const digestOf = (token: string): string => createHash('sha256').update(token).digest('hex')

interface Joining {
  readonly code: string
  readonly token: string
  readonly player: string
  readonly hand?: 'right' | 'left' | undefined
  readonly level?: string | undefined
}

/** A contest's lane, held here: who plays, how far they are, and the board. Everything a throw brings is on the disk before it is told. */
export interface HostRoom {
  /** @throws Refusal */
  join(asked: Joining): Promise<JoinAnswer>
  /** @throws Refusal */
  back(token: string): Promise<JoinAnswer>
  /** @throws Refusal */
  throwNext(token: string, asked: AskedThrow): Promise<ThrowAnswer>
  board(): Board
  /** Told whenever the board changes; returns how to stop it. */
  watch(changed: () => void): () => void
  /** Leaves all unfinished entries for next time. */
  close(): Promise<void>
}

export async function openRoom({
  opened,
  key,
  folder,
  joinCode,
  now = () => new Date(),
}: RoomParts): Promise<HostRoom> {
  const { pack } = opened
  const { rules } = pack
  const store = blockStore(folder, { now })
  await store.tryOut()
  const seats = new Map<string, Seat>()
  const tokens = await readTokens(folder)
  const watchers = new Set<() => void>()
  let joining: Promise<unknown> = Promise.resolve()
  const changed = (): void => {
    for (const watcher of watchers) watcher()
  }

  const seatOf = (open: OpenBlock, states: readonly BlockState[]): Seat => {
    const links: string[] = []
    const begin = chainStart(pack, open.contest!.entry)
    for (const thrown of open.begun.throws) links.push(chainLink(links.at(-1) ?? begin, keptDecision(thrown, 'player')))
    const seat: Seat = { open, states: [...states], links, busy: Promise.resolve(), filed: false }
    seats.set(open.contest!.entry, seat)
    return seat
  }

  const told = (token: string, { open, states, links }: Seat): JoinAnswer => {
    const { lanes, ...scenario } = open.scenario.data
    const begin = chainStart(pack, open.contest!.entry)
    return {
      version: WIRE_VERSION,
      token,
      entry: open.contest!.entry,
      title: rules.title,
      rules: rulesLines(rules),
      lane: open.scenario.name,
      scenario: { ...scenario, notes: '', lanes: lanes.map(({ name }) => name) },
      posted: states[0]!.posted,
      field: states[0]!.fieldThrows.map(seenField),
      contest: pack.contest,
      commitment: pack.commitment,
      chainStart: begin,
      throws: states.slice(1).map((after, index) => answerOf(states[index]!, after, links[index]!)),
    }
  }

  const sit = ({ player, hand, level }: Guest): Promise<Entered> => {
    const bowler = { hand, level }
    return enter({ path: rules.title, opened, player, bowler, store, data: folder, now: now(), isHost: true })
  }

  const seatBy = async (token: string): Promise<Seat> => {
    const guest = tokens.get(digestOf(token))
    if (guest === undefined) throw new Refusal(401, 'There is no entry of that code.')
    const seat = seats.get(guest.entry)
    if (seat) return seat
    // The host was started anew since; the entry goes on where its journal stands.
    try {
      const { open, states } = await sit(guest)
      return seatOf(open, states)
    } catch (fault) {
      if (fault instanceof ScenarioError) throw new Refusal(409, 'That entry is over, and the host has it.')
      throw fault
    }
  }

  const inTurn = <Result>(work: () => Promise<Result>): Promise<Result> => {
    const done = joining.then(work, work)
    joining = done.catch(() => {})
    return done
  }

  const checkTime = (): void => {
    if (now().getTime() >= Date.parse(rules.deadline)) throw new Refusal(403, 'The contest is over.')
  }

  return {
    join: ({ code, token, player, hand, level }) =>
      inTurn(async () => {
        if (!isSameText(code, joinCode)) throw new Refusal(403, 'That is not the code of this contest.')
        if (seats.size >= MOST_SEATS) throw new Refusal(503, 'There is no room for more players.')
        if (tokens.has(digestOf(token))) return told(token, await seatBy(token))
        const isTaken = [...tokens.values()].some((guest) => isSameName(guest.player, player))
        if (isTaken) throw new Refusal(409, `${player} plays here already; come back with your own code.`)
        try {
          const guest = { player: player.trim(), hand, level }
          const { open, states } = await sit({ entry: '', ...guest })
          tokens.set(digestOf(token), { ...guest, entry: open.contest!.entry })
          await writeTokens(folder, tokens)
          const seat = seatOf(open, states)
          changed()
          return told(token, seat)
        } catch (fault) {
          if (fault instanceof ScenarioError) throw new Refusal(403, fault.sentences[0] ?? 'That cannot be joined.')
          throw fault
        }
      }),
    back: (token) =>
      inTurn(async () => {
        const seat = await seatBy(token)
        changed()
        return told(token, seat)
      }),
    async throwNext(token, { number, decision }) {
      const seat = await inTurn(() => seatBy(token))
      const done = seat.busy.then(async (): Promise<ThrowAnswer> => {
        const { open, states, links } = seat
        const count = states.length - 1
        if (number < count) {
          const after = states[number + 1]!
          if (!isSameDecision(after.throws[number]!.decision, decision))
            throw new Refusal(409, `Throw ${number + 1} is made, with another choice; what is thrown stays.`)
          return answerOf(states[number]!, after, links[number]!)
        }
        if (number > count) throw new Refusal(409, `The next throw is number ${count + 1}.`)
        checkTime()
        const before = states[count]!
        const problem = checkDecision(before, decision)
        if (problem !== null) throw new Refusal(400, problem)
        const after = advance(before, decision)
        const thrown = after.throws[count]!
        await open.keep(thrown)
        const link = chainLink(
          links[count - 1] ?? chainStart(pack, open.contest!.entry),
          keptDecision(thrown, 'player'),
        )
        states.push(after)
        links.push(link)
        if (!after.spot && !seat.filed) {
          seat.filed = true
          await open.file(after, undefined, (record) => {
            const contest = record.contest!
            const signature = signatureOf(hostedPart(pack, contest, record.decisions, link), key)
            return { ...record, contest: { ...contest, hosted: { chain: link, signature } } }
          })
        }
        changed()
        return answerOf(before, after, link)
      })
      seat.busy = done.catch(() => {})
      return done
    },
    board: () => ({
      title: rules.title,
      lane: pack.lane,
      deadline: rules.deadline,
      lines: [...seats.values()].map(({ open, states }) => boardLine(open.player ?? '', states.at(-1)!)).sort(byFigure),
    }),
    watch(watcher) {
      watchers.add(watcher)
      return () => void watchers.delete(watcher)
    },
    async close() {
      watchers.clear()
      await Promise.all([...seats.values()].map(({ busy }) => busy))
      await Promise.all([...seats.values()].map(({ open }) => open.leave()))
    },
  }
}

function isSameText(one: string, other: string): boolean {
  const [a, b] = [one, other].map((text) => createHash('sha256').update(text.trim().toLowerCase()).digest())
  return timingSafeEqual(a!, b!)
}
