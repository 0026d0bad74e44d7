import type { Server } from 'node:http'
import type { AddressInfo } from 'node:net'
import { serve } from '@hono/node-server'
import { getConnInfo } from '@hono/node-server/conninfo'
import { type Context, Hono } from 'hono'
import { bodyLimit } from 'hono/body-limit'
import { secureHeaders } from 'hono/secure-headers'
import { streamSSE } from 'hono/streaming'
import { WriteError } from '../../files/text/atomic-write.js'
import { boardPage } from './board-page.js'
import { rateLimit } from './rate.js'
import { type HostRoom, Refusal } from './room.js'
import { joinSchema, throwSchema } from './wire.js'

const LARGEST_BODY_BYTES = 4096
const LARGEST_HEADER_BYTES = 8192
const REQUEST_MILLISECONDS = 10_000
const MOST_CONNECTIONS = 1000
const MOST_BOARDS = 100
/** A board is told at most so often. */
const BOARD_MILLISECONDS = 500
const HEARTBEAT_MILLISECONDS = 15_000
const BY_TOKEN = { burst: 20, aSecond: 5 }
/** A whole club may sit behind one address. */
const BY_ADDRESS = { burst: 400, aSecond: 100 }

export interface HostServer {
  readonly port: number
  close(): Promise<void>
}

/** Serves a room: join and throw as JSON, and the board as a page with server-sent events. @throws WriteError where the port is taken */
export async function serveRoom(
  room: HostRoom,
  { port, host }: { readonly port: number; readonly host: string },
): Promise<HostServer> {
  const app = new Hono()
  const clock = () => performance.now()
  const byAddress = rateLimit(BY_ADDRESS, clock)
  const byToken = rateLimit(BY_TOKEN, clock)
  let boards = 0

  app.use(
    secureHeaders({
      contentSecurityPolicy: {
        defaultSrc: ["'none'"],
        scriptSrc: ["'self'"],
        styleSrc: ["'unsafe-inline'"],
        connectSrc: ["'self'"],
      },
    }),
  )
  app.use(async (context, next) => {
    if (!byAddress(getConnInfo(context).remote.address ?? ''))
      throw new Refusal(429, 'That is too often; wait a little.')
    context.header('Cache-Control', 'no-store')
    await next()
  })
  app.use(
    bodyLimit({
      maxSize: LARGEST_BODY_BYTES,
      onError: () => {
        throw new Refusal(413, 'That is too long.')
      },
    }),
  )
  app.onError((fault, context) => {
    if (fault instanceof Refusal) return context.json({ error: fault.message }, fault.status)
    if (fault instanceof WriteError) return context.json({ error: `Not kept, so not thrown: ${fault.reason}.` }, 503)
    return context.json({ error: 'Something went wrong on the host.' }, 500)
  })
  app.notFound((context) => context.json({ error: 'There is nothing here.' }, 404))

  app.post('/join', async (context) => {
    const asked = joinSchema.safeParse(await bodyOf(context))
    if (!asked.success) throw new Refusal(400, 'That is no request to join.')
    return context.json(await room.join(asked.data))
  })
  app.get('/entry', async (context) => context.json(await room.back(tokenOf(context, byToken))))
  app.post('/throw', async (context) => {
    const token = tokenOf(context, byToken)
    const asked = throwSchema.safeParse(await bodyOf(context))
    if (!asked.success) throw new Refusal(400, 'That is no throw.')
    return context.json(await room.throwNext(token, asked.data))
  })
  app.get('/', (context) => context.html(boardPage(room.board())))
  app.get('/board.js', (context) =>
    context.body(BOARD_SCRIPT, 200, { 'Content-Type': 'text/javascript; charset=utf-8' }),
  )
  app.get('/board', (context) => {
    if (boards >= MOST_BOARDS) throw new Refusal(503, 'There are boards enough.')
    return streamSSE(context, async (stream) => {
      boards++
      let isOpen = true
      let wake: () => void = () => {}
      let isNew = true
      const unwatch = room.watch(() => {
        isNew = true
        wake()
      })
      stream.onAbort(() => {
        isOpen = false
        wake()
      })
      try {
        while (isOpen) {
          if (isNew) {
            isNew = false
            await stream.writeSSE({ event: 'board', data: JSON.stringify(room.board()) })
          } else await stream.writeSSE({ event: 'alive', data: '' })
          await stream.sleep(BOARD_MILLISECONDS)
          if (!isNew && isOpen)
            await new Promise<void>((resolve) => {
              const timer = setTimeout(resolve, HEARTBEAT_MILLISECONDS)
              wake = () => {
                clearTimeout(timer)
                resolve()
              }
            })
        }
      } finally {
        unwatch()
        boards--
      }
    })
  })

  return new Promise((resolve, reject) => {
    const server = serve(
      {
        fetch: app.fetch,
        port,
        hostname: host,
        serverOptions: {
          requestTimeout: REQUEST_MILLISECONDS,
          headersTimeout: REQUEST_MILLISECONDS,
          maxHeaderSize: LARGEST_HEADER_BYTES,
        },
      },
      (info: AddressInfo) => resolve({ port: info.port, close: () => closed(server as Server) }),
    ) as Server
    server.maxConnections = MOST_CONNECTIONS
    server.on('error', (cause: NodeJS.ErrnoException) =>
      reject(
        new WriteError(`${host}:${port}`, cause.code === 'EADDRINUSE' ? 'something else answers at this port' : cause),
      ),
    )
  })
}

function closed(server: Server): Promise<void> {
  return new Promise((resolve) => {
    server.close(() => resolve())
    server.closeAllConnections()
  })
}

async function bodyOf(context: Context): Promise<unknown> {
  if (!/^application\/json\b/.test(context.req.header('content-type') ?? '')) throw new Refusal(400, 'Send JSON.')
  try {
    return await context.req.json()
  } catch (fault) {
    if (fault instanceof Refusal) throw fault
    throw new Refusal(400, 'That is not JSON.')
  }
}

const TOKEN = /^Bearer ([A-Za-z0-9_-]{32})$/

function tokenOf(context: Context, allowed: (name: string) => boolean): string {
  const token = TOKEN.exec(context.req.header('authorization') ?? '')?.[1]
  if (token === undefined) throw new Refusal(401, 'Say your own code.')
  if (!allowed(token)) throw new Refusal(429, 'That is too often; wait a little.')
  return token
}

/** Keeps the board up to date in the browser; texts are put in as text and never as markup. */
const BOARD_SCRIPT = `const rows = document.querySelector('tbody')
const said = document.querySelector('#said')
const cell = (row, text, name) => { const one = row.insertCell(); one.textContent = text; if (name) one.className = name }
const source = new EventSource('board')
source.addEventListener('board', ({ data }) => {
  const { lines } = JSON.parse(data)
  rows.replaceChildren()
  for (const line of lines) {
    const row = rows.insertRow()
    cell(row, line.player)
    cell(row, String(line.games.reduce((sum, game) => sum + game, 0)), 'n')
    cell(row, line.games.join(' '), 'wide')
    cell(row, line.over ? 'over' : line.frames + ' of ' + line.of, 'n')
  }
  said.textContent = lines.length === 0 ? 'Nobody has joined yet.' : ''
})
source.onopen = () => document.body.classList.remove('lost')
source.onerror = () => { said.textContent = 'The host does not answer; waiting for it.' }
`
