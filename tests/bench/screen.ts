import { EventEmitter } from 'node:events'
import { setTimeout as wait } from 'node:timers/promises'
import { themeFor } from '../../src/tui/draw/theme.js'
import { startBlock } from '../../src/tui/state/start.js'
import { startingState } from '../../src/tui/state/starting-state.js'
import { idleOnEveryScreen } from '../tui/every-screen.js'
import { fixtureServices, shortScenario } from '../tui/fixtures.js'
import { mountOn } from '../tui/mounted.js'
import { type BenchRow, type Figures, figuresOf, startWatch, type Taken, timesOf } from './measure.js'

const THROWS = 6
const LONGEST_THROW_MILLISECONDS = 6000
const QUIET_MILLISECONDS = 400

interface Picture {
  readonly bytes: number
  /** Since the clock's last tick or the key pressed; null where another picture came between. */
  readonly sinceTick: Taken | null
}

/** The trainer on a terminal that only counts; true colours, the dearest. */
async function sitDown(size: { readonly columns: number; readonly rows: number }) {
  const pictures: Picture[] = []
  let lastPicture = performance.now()
  const target = Object.assign(new EventEmitter(), {
    ...size,
    write(data: string) {
      pictures.push({ bytes: Buffer.byteLength(data), sinceTick: sinceTick?.() ?? null })
      sinceTick = null
      lastPicture = performance.now()
    },
  })
  const services = fixtureServices()
  const home = await startingState(undefined, services)
  const initial = startBlock(home, await shortScenario(), 'bench', services)
  const theme = themeFor({ depth: 'true', characters: 'unicode' })
  sinceTick = startWatch()
  const { type, close } = mountOn(target, { services, theme, initial, noMotion: false })
  return {
    pictures,
    quietMilliseconds: () => performance.now() - lastPicture,
    press(key: string) {
      sinceTick = startWatch()
      type(key)
    },
    close,
  }
}

/** Stopwatch of the latest tick of an interval timer or key; taken off by the picture it leads to. */
let sinceTick: (() => Taken) | null = null

/** Starts a stopwatch whenever an interval timer fires, while `during` runs. */
async function watchingTicks(during: () => Promise<void>): Promise<void> {
  const original = globalThis.setInterval
  const watched = (callback: () => void, milliseconds?: number) =>
    original(() => {
      sinceTick = startWatch()
      callback()
    }, milliseconds)
  globalThis.setInterval = watched as unknown as typeof globalThis.setInterval
  try {
    await during()
  } finally {
    globalThis.setInterval = original
  }
}

/**
 * What a picture takes while a ball is thrown, from the key or the clock's tick to bytes on the terminal, and how many bytes;
 * the first picture of the screen apart, which has all of it to draw.
 */
async function benchAnimation(): Promise<BenchRow[]> {
  return [
    ...(await animationAt({ columns: 80, rows: 24 }, true)),
    ...(await animationAt({ columns: 120, rows: 40 }, false)),
  ]
}

async function animationAt(
  size: { readonly columns: number; readonly rows: number },
  held: boolean,
): Promise<BenchRow[]> {
  const sitting = await sitDown(size)
  await wait(QUIET_MILLISECONDS)
  const first = sitting.pictures.splice(0)
  await watchingTicks(async () => {
    for (let count = 0; count < THROWS; count++) {
      sitting.press('\r')
      await untilQuiet(sitting.quietMilliseconds)
    }
  })
  sitting.close()
  const { pictures } = sitting
  const where = `${size.columns}x${size.rows}`
  const goal = (most: number) => (held ? { goal: { most, of: 'most' as const } } : {})
  return [
    { name: `first picture, ${where}`, unit: 'ms', measured: timesOf(takenBy(first.slice(0, 1))) },
    { name: `bytes of the first picture, ${where}`, unit: 'kB', measured: kilobytesOf(first.slice(0, 1)) },
    { name: `picture of a throw, ${where}`, unit: 'ms', measured: timesOf(takenBy(pictures)), ...goal(16) },
    { name: `bytes of such a picture, ${where}`, unit: 'kB', measured: kilobytesOf(pictures), ...goal(1.5) },
  ]
}

const takenBy = (pictures: readonly Picture[]): Taken[] => pictures.flatMap(({ sinceTick }) => sinceTick ?? [])
const kilobytesOf = (pictures: readonly Picture[]): Figures => figuresOf(pictures.map(({ bytes }) => bytes / 1000))

async function untilQuiet(quietMilliseconds: () => number): Promise<void> {
  const start = performance.now()
  do await wait(50)
  while (quietMilliseconds() < QUIET_MILLISECONDS && performance.now() - start < LONGEST_THROW_MILLISECONDS)
}

/** Timers that run, and pictures drawn, while nobody presses a key, on every screen there is. */
async function benchIdle(): Promise<BenchRow[]> {
  const { idle } = await idleOnEveryScreen()
  const goal = { most: 0, of: 'most' as const }
  return [
    {
      name: 'timers when idle, screen by screen',
      unit: '',
      measured: figuresOf(idle.map(({ timers }) => timers)),
      goal,
    },
    { name: 'pictures when idle, the same', unit: '', measured: figuresOf(idle.map(({ pictures }) => pictures)), goal },
  ]
}

export const benchScreen = async (): Promise<BenchRow[]> => [...(await benchAnimation()), ...(await benchIdle())]
