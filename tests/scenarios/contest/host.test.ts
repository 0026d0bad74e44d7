import { readdirSync } from 'node:fs'
import { join } from 'node:path'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { joinHost } from '../../../src/scenarios/contest/host/client.js'
import { type HostRoom, openRoom } from '../../../src/scenarios/contest/host/room.js'
import { type HostServer, serveRoom } from '../../../src/scenarios/contest/host/server.js'
import { checkEntry } from '../../../src/scenarios/contest/standings/check-entry.js'
import { beginScenario } from '../../../src/scenarios/files/scenario/begin-scenario.js'
import { advance } from '../../../src/sim/world/block/advance.js'
import { folder, SEED, sealed, suggested } from './contest-for-tests.js'

const { opened, key } = sealed()
const data = folder()
const CODE = '424242'
const LOCAL = '127.0.0.1'
let room: HostRoom
let server: HostServer
let url: string

async function start(): Promise<void> {
  room = await openRoom({ opened, key, folder: data, joinCode: CODE })
  server = await serveRoom(room, { port: 0, host: LOCAL })
  url = `http://${LOCAL}:${server.port}`
}
async function stop(): Promise<void> {
  await server.close()
  await room.close()
}
beforeAll(start)
afterAll(stop)

const TOKEN = 'q'.repeat(32)
const send = async (path: string, body: unknown, headers: Record<string, string> = {}) => {
  const response = await fetch(`${url}/${path}`, {
    method: 'POST',
    headers: { 'content-type': 'application/json', ...headers },
    body: typeof body === 'string' ? body : JSON.stringify(body),
  })
  return { status: response.status, text: await response.text() }
}
const bearer = (token: string) => ({ authorization: `Bearer ${token}` })

it('throws what the simulator throws, tells only what is seen of it, and vouches for the entry it files', async () => {
  const { block, token } = await joinHost({ url, by: { code: CODE, player: 'Ansa' } })
  let here = block.states[0]!
  let there = beginScenario(opened.scenario, SEED)
  while (here.spot) {
    const decision = suggested(here)
    expect(decision).toEqual(suggested(there))
    here = await block.throwNext(here, decision)
    there = advance(there, decision)
    const [seen, thrown] = [here.throws.at(-1)!, there.throws.at(-1)!]
    expect([seen.observation, seen.standingAfter, here.spot]).toEqual([
      thrown.observation,
      thrown.standingAfter,
      there.spot,
    ])
  }
  expect(here.balls).toEqual(there.balls)
  const [file] = readdirSync(join(data, 'records'))
  const entry = await checkEntry(join(data, 'records', file!), opened, { luck: false, accounts: null })
  expect(entry).toMatchObject({ status: 'ranked', reasons: [], marks: ['hosted'], player: 'Ansa' })
  const back = await fetch(`${url}/entry`, { headers: bearer(token) })
  const text = await back.text()
  // Nothing of oil, luck or seed.
  expect(text).not.toMatch(new RegExp(`truth|normals|laneBefore|passes|drawn|film|${SEED}`))
  expect(room.board().lines).toMatchObject([{ player: 'Ansa', frames: 10, over: true }])
})

it('answers the same message the same, and nothing out of turn', async () => {
  const { block, token } = await joinHost({ url, by: { code: CODE, player: 'Brono' } })
  const decision = suggested(block.states[0]!)
  // Asked again with the same secret, for no answer came, it is the same entry.
  const again = await send('join', { version: 1, token, code: CODE, player: 'Brono' })
  expect([again.status, JSON.parse(again.text).token]).toEqual([200, token])
  const first = await send('throw', { number: 0, decision }, bearer(token))
  expect(first.status).toBe(200)
  expect(await send('throw', { number: 0, decision }, bearer(token))).toEqual(first)
  const other = { ...decision, aim: { ...decision.aim, feetBoard: decision.aim.feetBoard + 1 } }
  expect((await send('throw', { number: 0, decision: other }, bearer(token))).status).toBe(409)
  expect((await send('throw', { number: 5, decision }, bearer(token))).status).toBe(409)
  const all = await Promise.all([1, 1, 1].map((number) => send('throw', { number, decision }, bearer(token))))
  expect(all.map(({ status }) => status)).toEqual([200, 200, 200])
  expect(new Set(all.map(({ text }) => text)).size).toBe(1)
})

it('refuses strangers and nonsense in one sentence, without a trace of itself', async () => {
  const { block, token } = await joinHost({ url, by: { code: CODE, player: 'Cille' } })
  const decision = suggested(block.states[0]!)
  const answers = [
    [403, await send('join', { version: 1, token: TOKEN, code: '000000', player: 'Darro' })],
    [409, await send('join', { version: 1, token: TOKEN, code: CODE, player: 'cille' })],
    [400, await send('join', { version: 1, token: TOKEN, code: CODE, player: 'a\u001b[31m' })],
    [400, await send('join', '{"version":1,')],
    [400, await send('join', { version: 1, token: TOKEN, code: CODE, player: 'Darro', seed: 1 })],
    [401, await send('throw', { number: 0, decision })],
    [401, await send('throw', { number: 0, decision }, bearer('x'.repeat(32)))],
    [400, await send('throw', { number: 0, decision: { ...decision, ballId: '__proto__' } }, bearer(token))],
    [400, await send('throw', { number: 0, decision: { ...decision, ballId: 'no-such' } }, bearer(token))],
    [400, await send('throw', { number: 0, decision, standing: 0 }, bearer(token))],
    [413, await send('throw', 'x'.repeat(5000), bearer(token))],
    [404, await send('seed', {})],
  ] as const
  for (const [status, answer] of answers) {
    const { error, ...rest } = JSON.parse(answer.text)
    expect([answer.status, rest, error]).toEqual([status, {}, expect.stringMatching(/^[^\n]{3,200}\.$/)])
    expect(answer.text).not.toMatch(/\bat .*\.ts|node_modules/)
  }
  expect((await send('throw', { number: 0, decision }, bearer(token))).status).toBe(200)
  const joined = joinHost({ url, by: { token: 'y'.repeat(32) } })
  await expect(joined).rejects.toThrow(/There is no entry of that code/)
})

it('lets players come back after the host was started anew, where they stood', async () => {
  const { block, token } = await joinHost({ url, by: { code: CODE, player: 'Edda' } })
  const after = await block.throwNext(block.states[0]!, suggested(block.states[0]!))
  await stop()
  await start()
  const again = await joinHost({ url, by: { token } })
  const stands = again.block.states.at(-1)!
  expect(stands.throws.map(({ observation }) => observation)).toEqual(
    after.throws.map(({ observation }) => observation),
  )
  const next = await again.block.throwNext(stands, suggested(stands))
  expect(next.throws).toHaveLength(2)
  await expect(joinHost({ url, by: { code: CODE, player: 'Edda' } })).rejects.toThrow(
    /plays here already|has an entry here/,
  )
})

it('shows a board that says who plays and no more, and keeps itself up to date', async () => {
  const page = await fetch(url)
  expect(page.headers.get('content-security-policy')).toContain("default-src 'none'")
  expect(await page.text()).toContain('Edda')
  const controller = new AbortController()
  const stream = await fetch(`${url}/board`, { signal: controller.signal })
  const { value } = await stream.body!.getReader().read()
  const told = new TextDecoder().decode(value)
  controller.abort()
  expect(told).toMatch(/^event: board\ndata: \{/)
  const { lines } = JSON.parse(told.split('\n')[1]!.slice('data: '.length))
  for (const line of lines) expect(Object.keys(line)).toEqual(['player', 'games', 'frames', 'of', 'over'])
})
