import { EventEmitter } from 'node:events'
import { type ComingPaste, comingPaste, PASTE_START } from './coming-paste.js'
import { type KeyToken, tokenise } from './key-tokens.js'

/** The part of a terminal's input stream the reader needs. */
export interface KeySource extends EventEmitter {
  setEncoding(encoding: 'utf8'): unknown
  resume(): unknown
  pause(): unknown
}

export interface KeyReaderEvents {
  onInterrupt(): void
  /** Ctrl-L, by custom the wish for a fresh screen. */
  onRedraw?(): void
  /** Ctrl-Z. */
  onSuspend?(): void
  /** Ctrl-\. */
  onQuit?(): void
  /** Nothing more will come: the terminal is gone. */
  onEnd?(): void
}

/**
 * What Ink is given in place of the terminal's input: one key a read, nothing it cannot digest. Pasted text comes apart, in a
 * `paste` event in its turn among the keys.
 */
export interface KeyReader extends EventEmitter {
  readonly isTTY: true
  read(): string | null
  /** Keeps back the keys it says true of, and everything pasted or clicked, until it is called again; null lets all through. */
  hold(isHeld: ((key: string) => boolean) | null): void
  close(): void
}

type Waiting = string | { readonly pasted: string } | MousePress

/** A press of the mouse, its place counted from 0. */
export type MousePress = Extract<KeyToken, { kind: 'mouse' }>

const ESCAPE = '\u001B'
const INTERRUPT = '\u0003'
/** How long an unfinished sequence may wait for its other half (a slow connection) before it counts as the Escape key. */
const ESCAPE_WAIT_MILLISECONDS = 40
/** A string sequence that never ends is dropped beyond this length, so that keys come through again. */
const LONGEST_UNFINISHED = 1 << 16

/** Turns of the event loop React's scheduler needs to draw and to run its effects, with some to spare. */
const TURNS_BETWEEN_KEYS = 6

function afterTurns(turns: number, then: () => void): void {
  if (turns === 0) then()
  else setImmediate(() => afterTurns(turns - 1, then))
}

export function createKeyReader(source: KeySource, events: KeyReaderEvents): KeyReader {
  const waiting: Waiting[] = []
  let isHeld: ((key: string) => boolean) | null = null
  let current: string | null = null
  let unfinished = ''
  let paste: ComingPaste | null = null
  let escapeTimer: NodeJS.Timeout | undefined
  let delivering = false

  const reader: KeyReader = Object.assign(new EventEmitter(), {
    isTTY: true as const,
    setRawMode: () => reader,
    setEncoding: () => reader,
    ref: () => reader,
    unref: () => reader,
    read() {
      const sequence = current
      current = null
      return sequence
    },
    hold(wanted: ((key: string) => boolean) | null) {
      isHeld = wanted
      if (!delivering) deliver()
    },
    close() {
      clearTimeout(escapeTimer)
      source.off('data', onData)
      source.off('end', onEnd)
      source.off('error', onEnd)
      source.pause()
    },
  })

  // Keys that come together are handed over one a turn: Ink joins an Escape with whatever follows it in the same turn,
  // and a component hears a key with the state of its last drawing, which must have happened in between.
  // Keys typed before anybody listens are kept.
  const deliver = () => {
    const place = waiting.findIndex((one) => isHeld === null || (typeof one === 'string' && !isHeld(one)))
    delivering = place >= 0 && reader.listenerCount('readable') > 0
    if (!delivering) return
    const [next] = waiting.splice(place, 1) as [Waiting]
    if (typeof next === 'string') {
      current = next
      reader.emit('readable')
    } else if ('pasted' in next) reader.emit('paste', next.pasted)
    else reader.emit('mouse', next)
    afterTurns(TURNS_BETWEEN_KEYS, deliver)
  }
  reader.on('newListener', (event) => {
    if (event === 'readable') setImmediate(() => delivering || deliver())
  })

  const take = (token: KeyToken) => {
    if (token.kind === 'interrupt') events.onInterrupt()
    else if (token.kind === 'redraw') events.onRedraw?.()
    else if (token.kind === 'mouse') waiting.push(token)
    else if (token.kind === 'suspend') events.onSuspend?.()
    else if (token.kind === 'quit') events.onQuit?.()
    else if (token.kind === 'paste') waiting.push({ pasted: token.text })
    else waiting.push(token.sequence)
  }

  const flushUnfinished = () => {
    if (unfinished === ESCAPE) take({ kind: 'key', sequence: ESCAPE })
    unfinished = ''
    if (!delivering) deliver()
  }

  const onTyped = (input: string) => {
    const { tokens, rest } = tokenise(input)
    tokens.forEach(take)
    if (rest.startsWith(PASTE_START)) {
      unfinished = ''
      paste = comingPaste()
      paste.take(rest.slice(PASTE_START.length))
    } else unfinished = rest.length > LONGEST_UNFINISHED ? '' : rest
    if (!delivering) deliver()
    if (unfinished !== '') escapeTimer = setTimeout(flushUnfinished, ESCAPE_WAIT_MILLISECONDS)
  }

  const onData = (chunk: string) => {
    clearTimeout(escapeTimer)
    if (!paste) return onTyped(unfinished + chunk)
    // Where the end of a paste was lost on the way, Ctrl-C by itself still gets through.
    if (chunk === INTERRUPT) return events.onInterrupt()
    const pasted = paste.take(chunk)
    if (!pasted) return
    paste = null
    take({ kind: 'paste', text: pasted.text })
    onTyped(pasted.typed)
  }

  const onEnd = () => events.onEnd?.()

  source.setEncoding('utf8')
  source.on('data', onData)
  source.on('end', onEnd)
  source.on('error', onEnd)
  source.resume()
  return reader
}
