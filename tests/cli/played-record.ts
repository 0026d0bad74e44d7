import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { builtInScenario } from '../../src/scenarios/library/library.js'
import { runCommand } from './in-process.js'

/** House oil for a bowler with one ball, which takes little working out: written into a folder, and where. */
export function oneBallLane(folder: string, practiceThrows = 0): string {
  const house = builtInScenario('house-forty')!
  const path = join(folder, 'one-ball.yaml')
  writeFileSync(path, JSON.stringify({ ...house, bag: house.bag.slice(3, 4), practiceThrows }))
  return path
}

/** The record that play said it kept; empty where it kept none. */
export const keptPath = ({ err }: { readonly err: string }): string => /^Record kept: (.*)$/m.exec(err)?.[1] ?? ''

/** Plays lines without grades and returns the record kept of them. */
export async function playedRecord(
  argv: readonly string[],
  typed: readonly string[],
  environment: Record<string, string> = {},
): Promise<string> {
  return keptPath(await runCommand(['play', ...argv, '--no-grade'], { typed, environment }))
}
