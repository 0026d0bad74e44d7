import { EventEmitter } from 'node:events'
import type { KeySource } from '../../../src/tui/terminal/key-reader.js'

/** A standard input that says what a test emits on it as `data`. */
export const fakeKeySource = (): KeySource =>
  Object.assign(new EventEmitter(), { setEncoding() {}, resume() {}, pause() {} })
