import fc from 'fast-check'
import { describe, expect, it, vi } from 'vitest'
import { createKeyReader } from '../../../src/tui/terminal/key-reader.js'
import { tokenise } from '../../../src/tui/terminal/key-tokens.js'
import { fakeKeySource } from './fake-key-source.js'

const keys = (input: string) =>
  tokenise(input).tokens.map((token) => (token.kind === 'key' ? token.sequence : token.kind))

// Sequences as xterm's control sequence document lists them (PC-style function keys, bracketed paste mode).
describe('tokenising terminal input', () => {
  it('splits a run into single keys', () => {
    expect(keys('jj')).toEqual(['j', 'j'])
    expect(keys('\u001B[A\u001B[Bx')).toEqual(['\u001B[A', '\u001B[B', 'x'])
    expect(keys('é日')).toEqual(['é', '日'])
  })

  it('keeps arrows in every form and drops function keys, old mouse reports and answers of the terminal', () => {
    expect(keys('\u001BOA\u001B[1;2C\u001B[Z\u001B[5~')).toEqual(['\u001BOA', '\u001B[1;2C', '\u001B[Z', '\u001B[5~'])
    for (const unknown of [
      '\u001B[1;5P',
      '\u001BOP',
      '\u001B[15~',
      '\u001B[M !!',
      '\u001B[I',
      '\u001B[[A',
      '\u001B[?62;c',
    ]) {
      expect(keys(`a${unknown}b`), JSON.stringify(unknown)).toEqual(['a', 'b'])
    }
    expect(keys('a\u001B]11;rgb:00/00/00\u0007b\u001BP1$r\u001B\\c')).toEqual(['a', 'b', 'c'])
    expect(keys('\u0000\u001d\u001f')).toEqual([])
  })

  it('maps DEL to backspace and any line end to one Enter', () => {
    expect(keys('\u007f\u007f')).toEqual(['\b', '\b'])
    expect(keys('\r\n\n\r')).toEqual(['\r', '\r', '\r'])
  })

  it('keeps a paste apart and Ctrl-C special', () => {
    expect(tokenise('a\u001B[200~two\rlines\u0003\u001B[201~b').tokens).toEqual([
      { kind: 'key', sequence: 'a' },
      { kind: 'paste', text: 'two\rlines\u0003' },
      { kind: 'key', sequence: 'b' },
    ])
    expect(keys('\u0003\f')).toEqual(['interrupt', 'redraw'])
  })

  it('gives the same keys however the input is cut into chunks', () => {
    const piece = fc.constantFrom(
      'a',
      'Z',
      '\u001B[A',
      '\u001BOB',
      '\u001B[1;5P',
      '\u001B[Z',
      '\u001B[200~hi\u001B[201~',
      '\u007f',
      '\u001B]0;t\u0007',
    )
    fc.assert(
      fc.property(fc.array(piece, { maxLength: 12 }), fc.array(fc.nat(60), { maxLength: 6 }), (pieces, cuts) => {
        const input = `${pieces.join('')}q`
        const ends = [...new Set([...cuts.filter((cut) => cut < input.length), input.length])].sort((a, b) => a - b)
        let rest = ''
        let from = 0
        const found: unknown[] = []
        for (const end of ends) {
          const result = tokenise(rest + input.slice(from, end))
          found.push(...result.tokens)
          rest = result.rest
          from = end
        }
        expect(found).toEqual(tokenise(input).tokens)
        expect(rest).toBe('')
      }),
      { numRuns: 300, seed: 11 },
    )
  })
})

function readerOn(events: { onInterrupt?: () => void } = {}) {
  const source = fakeKeySource()
  const reader = createKeyReader(source, { onInterrupt: () => {}, ...events })
  const got: string[] = []
  reader.on('readable', () => {
    for (let key = reader.read(); key !== null; key = reader.read()) got.push(key)
  })
  return { source, reader, got }
}

describe('key reader', () => {
  it('delivers one key a turn', async () => {
    const { source, got } = readerOn()
    source.emit('data', 'ab\u001B[A')
    expect(got).toEqual(['a'])
    await vi.waitFor(() => expect(got).toEqual(['a', 'b', '\u001B[A']))
  })

  it('joins a sequence that comes in two pieces, and takes a lone Escape for the key after a moment', async () => {
    const { source, got } = readerOn()
    source.emit('data', '\u001B')
    source.emit('data', '[B')
    expect(got).toEqual(['\u001B[B'])
    source.emit('data', '\u001B')
    expect(got).toHaveLength(1)
    await vi.waitFor(() => expect(got).toEqual(['\u001B[B', '\u001B']))
  })

  it('delivers the key after an Escape too, in order', async () => {
    const { source, got } = readerOn()
    source.emit('data', '\u001Bq')
    source.emit('data', 'z')
    await vi.waitFor(() => expect(got).toEqual(['\u001B', 'q', 'z']))
  })

  it('tells of Ctrl-C and, in its turn, of a paste without delivering them as keys', async () => {
    const onInterrupt = vi.fn()
    const onPaste = vi.fn()
    const { source, reader, got } = readerOn({ onInterrupt })
    reader.on('paste', (text: string) => onPaste(text, [...got]))
    source.emit('data', 'ab\u001B[200~half')
    source.emit('data', ' done\u001B[201~\u0003c')
    expect(onInterrupt).toHaveBeenCalledOnce()
    await vi.waitFor(() => expect(got).toEqual(['a', 'b', 'c']))
    expect(onPaste).toHaveBeenCalledOnce()
    expect(onPaste).toHaveBeenCalledWith('half done', ['a', 'b'])
  })

  it('keeps back what it is told to hold, lets the rest pass, and then delivers it in order', async () => {
    const { source, reader, got } = readerOn()
    reader.hold((key) => key !== '\r')
    source.emit('data', 'kk\rt')
    await vi.waitFor(() => expect(got).toEqual(['\r']))
    await new Promise((done) => setTimeout(done, 30))
    expect(got).toEqual(['\r'])
    reader.hold(null)
    await vi.waitFor(() => expect(got).toEqual(['\r', 'k', 'k', 't']))
  })

  it.each([10, 80_000, 3_000_000])('swallows a paste of %i characters whole, whatever comes in it', async (length) => {
    const onInterrupt = vi.fn()
    const pasted: string[] = []
    const { source, reader, got } = readerOn({ onInterrupt })
    reader.on('paste', (text: string) => pasted.push(text))
    const text = '\r\u0003q\u001B[A\u001B[201'.repeat(Math.ceil(length / 11))
    const sent = `a\u001B[200~${text}\u001B[201~b`
    for (let at = 0; at < sent.length; at += 4096) source.emit('data', sent.slice(at, at + 4096))
    await vi.waitFor(() => expect(got.at(-1)).toBe('b'))
    expect(got).toEqual(['a', 'b'])
    expect(pasted).toHaveLength(1)
    expect(text.startsWith(pasted[0]!)).toBe(true)
    expect(pasted[0]!.length).toBe(Math.min(text.length, 1 << 16))
    expect(onInterrupt).not.toHaveBeenCalled()
  })

  it('lets Ctrl-C through where the end of a paste never came', () => {
    const onInterrupt = vi.fn()
    const { source } = readerOn({ onInterrupt })
    source.emit('data', '\u001B[200~lost')
    source.emit('data', '\u0003')
    expect(onInterrupt).toHaveBeenCalledOnce()
  })

  it('tells of Ctrl-Z, Ctrl-\\ and the end of the input', () => {
    const told: string[] = []
    const source = fakeKeySource()
    createKeyReader(source, {
      onInterrupt: () => {},
      onSuspend: () => told.push('suspend'),
      onQuit: () => told.push('quit'),
      onEnd: () => told.push('end'),
    })
    source.emit('data', '\u001A\u001C')
    source.emit('end')
    expect(told).toEqual(['suspend', 'quit', 'end'])
  })
})
