import { spawnSync } from 'node:child_process'
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { setTimeout as wait } from 'node:timers/promises'
import { type KilledPlay, lookedOver } from './kill-moments.js'
import { openScreen } from './killed-screen.js'

const ROOM = 'size=8m'
/** A throw wants a press that comes well after the last result. */
const FRESH_PRESS_MILLISECONDS = 600

export interface FullPlay extends KilledPlay {
  /** Exit code of plain play; on the screen, whether the one clear line was there. */
  readonly said: number | boolean | null
}

/** Whether a disk of a size of our own can be had here. */
export function canMount(): boolean {
  const folder = mkdtempSync(join(tmpdir(), 'dryboard-mount-'))
  const done = mount(folder, 'size=4k')
  if (done) unmount(folder)
  rmSync(folder, { recursive: true, force: true })
  return done
}

const mount = (folder: string, options: string): boolean =>
  spawnSync('mount', ['-t', 'tmpfs', '-o', options, 'tmpfs', folder]).status === 0
const makeRoom = (folder: string): void => void spawnSync('mount', ['-o', `remount,${ROOM}`, folder])
const unmount = (folder: string): void => void spawnSync('umount', ['-l', folder])

/** Plays line by line on a disk of so many kilobytes until it is full, and goes on once there is room. */
export async function playOnFullDisk(kilobytes: number, program: readonly string[]): Promise<FullPlay> {
  const disk = mkdtempSync(join(tmpdir(), 'dryboard-full-'))
  const data = join(disk, 'data')
  mount(disk, `size=${kilobytes}k`)
  try {
    const script = join(tmpdir(), `${disk.split('/').at(-1)}.txt`)
    writeFileSync(script, '\n'.repeat(60))
    const argv = ['play', 'unseen-draw', '--script', script, '--seed', 'full', '--no-grade', '--data', data]
    const { stdout, status } = spawnSync(process.execPath, [...program, ...argv], { encoding: 'utf8' })
    rmSync(script)
    const told = stdout.match(/ Seen: /g)?.length ?? 0
    makeRoom(disk)
    return { ...(await lookedOver(data, told)), said: status }
  } finally {
    unmount(disk)
    rmSync(disk, { recursive: true, force: true })
  }
}

/** The same on the screen: throws until one is refused in one clear line, makes room, and throws that one. */
export async function screenOnFullDisk(kilobytes: number, program: readonly string[]): Promise<FullPlay> {
  const disk = mkdtempSync(join(tmpdir(), 'dryboard-full-'))
  const data = join(disk, 'data')
  mount(disk, `size=${ROOM.slice(5)}`)
  try {
    mkdirSync(join(data, 'config'), { recursive: true })
    writeFileSync(join(data, 'config', 'settings.json'), JSON.stringify({ motion: 'off', mode: 'test', tour: 'seen' }))
    const screen = openScreen(program, ['play', 'house-forty', '--seed', 'full'], data)
    let stands = await settled(screen, '')
    spawnSync('mount', ['-o', `remount,size=${kilobytes + 16}k`, disk])
    let told = 0
    let said = false
    while (told < 12) {
      await wait(FRESH_PRESS_MILLISECONDS)
      screen.press('\r')
      const now = await settled(screen, stands)
      if (now === stands) {
        said = screen.shows().includes('so not thrown')
        break
      }
      stands = now
      told++
    }
    makeRoom(disk)
    await wait(FRESH_PRESS_MILLISECONDS)
    screen.press('\r')
    if ((await settled(screen, stands)) !== stands) told++
    await screen.kill()
    return { ...(await lookedOver(data, told)), said }
  } finally {
    unmount(disk)
    rmSync(disk, { recursive: true, force: true })
  }
}

/** Where the screen stands once it stands elsewhere, or once it has said why not. */
async function settled(screen: ReturnType<typeof openScreen>, before: string): Promise<string> {
  const until = performance.now() + 30_000
  while (performance.now() < until) {
    const now = screen.stands()
    if (now !== '' && now !== before) return now
    if (screen.shows().includes('so not thrown') && before !== '') return before
    await wait(20)
  }
  return before
}
