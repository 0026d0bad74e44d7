import { randomBytes, randomInt } from 'node:crypto'
import { request } from 'node:http'
import fc from 'fast-check'
import { type Joined, joinHost } from '../../src/scenarios/contest/host/client.js'
import { openRoom } from '../../src/scenarios/contest/host/room.js'
import { serveRoom } from '../../src/scenarios/contest/host/server.js'
import { canonicalText } from '../../src/scenarios/store/hashes.js'
import { folder, SEED, sealed, suggested } from '../scenarios/contest/contest-for-tests.js'
import { mutated } from '../scenarios/files/text/mutations.js'

const CLIENTS = 50
const THROWS = 6
const FUZZED = 2000
const BETWEEN_THROWS_MILLISECONDS = 6000
const CODE = '424242'

const later = (milliseconds: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, milliseconds))
const megabytes = (): string => (process.memoryUsage().rss / 1e6).toFixed(0)

/**
 * A hosted contest on loopback: 50 clients at once, each throwing every six seconds, a third of them killed in mid-throw and back again; then 2,000
 * malformed, overlong, replayed and out-of-order messages. Prints what was lost, what was told that should not be, answer times and
 * memory. Arguments: clients, throws each, fuzzed messages, milliseconds between a client's throws.
 *
 *     `npm run study contest-host 50 3 500 6000`, clients and host in one process beside other work: median 33 ms, p99 233 ms, most 641 ms;
 *     throws lost 0, leaks 0, all saw the same; 154 MB before, 176 with 50 clients, 169 after 500 messages
 */
export async function run([clients, throws, fuzzed, pause]: readonly string[] = []): Promise<void> {
  const { opened, key } = sealed()
  const data = folder()
  const room = await openRoom({ opened, key, folder: data, joinCode: CODE })
  const server = await serveRoom(room, { port: 0, host: '127.0.0.1' })
  const url = `http://127.0.0.1:${server.port}`
  const told: string[] = []
  const times: number[] = []
  const count = Number(clients ?? CLIENTS)
  const each = Number(throws ?? THROWS)
  const between = Number(pause ?? BETWEEN_THROWS_MILLISECONDS)
  process.stdout.write(`memory before ${megabytes()} MB\n`)

  const abandoned = (token: string, number: number, decision: unknown): Promise<void> =>
    new Promise((resolve) => {
      const body = JSON.stringify({ number, decision })
      const headers = {
        'content-type': 'application/json',
        authorization: `Bearer ${token}`,
        'content-length': String(body.length),
      }
      const asked = request(`${url}/throw`, { method: 'POST', headers })
      asked.on('error', () => resolve())
      asked.on('close', () => resolve())
      asked.end(body, () => setTimeout(() => asked.destroy(), randomInt(5)))
    })

  const lost: string[] = []
  const tokens: string[] = []
  const play = async (number: number): Promise<void> => {
    let joined: Joined = await joinHost({ url, by: { code: CODE, player: `Player ${number}` } })
    const { token } = joined
    tokens.push(token)
    let state = joined.block.states.at(-1)!
    for (let at = 0; at < each && state.spot; at++) {
      await later(randomInt(Math.max(1, 2 * between)))
      const decision = suggested(state)
      if (number % 3 === 0) {
        await abandoned(token, state.throws.length, decision)
        joined = await joinHost({ url, by: { token } })
        state = joined.block.states.at(-1)!
        if (state.throws.length < at) lost.push(`player ${number} at ${at}`)
        if (state.throws.length > at) continue
      }
      const from = performance.now()
      state = await joined.block.throwNext(state, suggested(state))
      times.push(performance.now() - from)
    }
    told.push(canonicalText(state.throws.slice(0, each).map(({ observation }) => observation)))
  }
  await Promise.all(Array.from({ length: count }, (_, number) => play(number)))
  const sorted = times.sort((a, b) => a - b)
  const at = (share: number): string =>
    sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))]!.toFixed(0)
  process.stdout.write(
    `${count} clients, ${sorted.length} answered throws: median ${at(0.5)} ms, p99 ${at(0.99)} ms, most ${at(1)} ms; throws lost ${lost.length}\n`,
  )
  process.stdout.write(`all saw the same of the same choices: ${new Set(told).size === 1}\n`)
  process.stdout.write(`memory with ${count} clients ${megabytes()} MB\n`)

  const sound = {
    number: 0,
    decision: { ballId: 'x', aim: { feetBoard: 20, targetBoard: 10, speedStep: 0 }, release: 'strike' },
  }
  const bodies = fc.sample(mutated(sound), { numRuns: Number(fuzzed ?? FUZZED), seed: 7 })
  const statuses = new Map<number, number>()
  const leaks: string[] = []
  for (const [index, body] of bodies.entries()) {
    const path = ['throw', 'join', 'entry', 'board.js', '', '../records', 'throw?x=1'][index % 7]!
    const token = [tokens[index % tokens.length]!, 'z'.repeat(32), 'a b', ''][index % 4]!
    const text = index % 5 === 0 ? randomBytes(index % 6000).toString('latin1') : JSON.stringify(body)
    const type = index % 11 === 0 ? 'text/plain' : 'application/json'
    const response = await fetch(`${url}/${path}`, {
      method: path === 'entry' || path === '' || path === 'board.js' ? 'GET' : 'POST',
      headers: { 'content-type': type, ...(token === '' ? {} : { authorization: `Bearer ${token}` }) },
      ...(path === 'entry' || path === '' || path === 'board.js' ? {} : { body: text }),
    })
    const answer = await response.text()
    statuses.set(response.status, (statuses.get(response.status) ?? 0) + 1)
    if (answer.includes(SEED) || /normals|laneBefore|passes|node_modules/.test(answer)) leaks.push(answer.slice(0, 200))
    if (index % 500 === 499) process.stdout.write(`memory after ${index + 1} messages ${megabytes()} MB\n`)
  }
  process.stdout.write(
    `fuzzed: ${[...statuses]
      .sort(([a], [b]) => a - b)
      .map(([status, number]) => `${status} ${number} times`)
      .join(', ')}; leaks ${leaks.length}\n`,
  )
  const alive = await joinHost({ url, by: { code: CODE, player: 'Afterwards' } })
  process.stdout.write(`still answers: ${alive.block.states.length === 1}; entries ${room.board().lines.length}\n`)
  await server.close()
  await room.close()
}
