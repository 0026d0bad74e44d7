import { readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'

/** No process has a number this high on any system we know. */
const DEAD_PID = 2 ** 30

/** Leaves the blocks of a folder as they are once the programs that play them have died. */
export function holdersDie(folder: string): void {
  for (const name of readdirSync(folder).filter((one) => one.endsWith('.lock'))) {
    const path = join(folder, name)
    writeFileSync(path, JSON.stringify({ ...JSON.parse(readFileSync(path, 'utf8')), pid: DEAD_PID }))
  }
}
