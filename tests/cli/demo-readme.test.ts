import { cpSync, existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { runCommand } from './in-process.js'
import { oneBallLane } from './played-record.js'

/** The coach's way; the secretary's, which follows it, has a test of its own. */
const [README] = readFileSync('scenarios-demo/README.md', 'utf8').split('## A contest')
const COMMAND = /^ {4}dryboard (.*)$/gm

const folder = mkdtempSync(join(tmpdir(), 'dryboard-demo-'))
const home = process.cwd()
beforeAll(() => process.chdir(folder))
afterAll(() => {
  process.chdir(home)
  rmSync(folder, { recursive: true, force: true })
})

/** Words of a command line as a shell would part them, and the file its output goes to. */
function parted(line: string): { argv: string[]; into: string | undefined } {
  const words = [...line.matchAll(/"([^"]*)"|(\S+)/g)].map(([, quoted, bare]) => quoted ?? bare!)
  const arrow = words.indexOf('>')
  return arrow < 0 ? { argv: words, into: undefined } : { argv: words.slice(0, arrow), into: words[arrow + 1] }
}

/** What is typed into commands that ask: two throws, the first a dear one, then stop. */
const TYPED = ['feet 39 target 30', '', 'quit']
/** Checking in full plays games by four policies, which has tests of its own. */
const shortened = (argv: readonly string[]): readonly string[] =>
  argv[0] === 'scenario' && argv[1] === 'check' ? [...argv, '--quick'] : argv

it('takes the whole way of the demo files’ README, command by command', async () => {
  const commands = [...README!.matchAll(COMMAND)].map(([, line]) => line!)
  expect(commands.length).toBeGreaterThan(15)
  const data = join(folder, 'data')
  const environment = { DRYBOARD_DATA: data }
  for (const line of commands) {
    const { argv, into } = parted(line)
    const { exitCode, out, err } = await runCommand(shortened(argv), { typed: TYPED, environment })
    expect([line, exitCode, exitCode === 0 ? '' : err]).toEqual([line, 0, ''])
    if (into) writeFileSync(into, `${out}\n`)
    if (line.startsWith('scenario new')) {
      // A lane of ordinary figures with one ball, which takes little working out.
      expect(out).toContain('title: 46 ft, 27 mL, 2:1 for a 180 bowler (after flat-forty-four)')
      cpSync(oneBallLane(folder), 'lane.yaml')
    }
    if (line.startsWith('play ')) {
      mkdirSync('inbox/ansa', { recursive: true })
      for (const name of readdirSync(join(data, 'records')))
        cpSync(join(data, 'records', name), join('inbox', 'ansa', name))
      const played = readdirSync(join(data, 'records')).find(
        (name) => /^Ansa-.*-lane-/.test(name) && !isDrill(data, name),
      )
      cpSync(join(data, 'records', played!), 'record.json')
    }
  }
  for (const made of ['key.md', 'frame.html', 'again.yaml', 'group.html', 'progress.html', 'record.notes.json']) {
    expect(existsSync(made), made).toBe(true)
  }
})

const isDrill = (data: string, name: string): boolean =>
  JSON.parse(readFileSync(join(data, 'records', name), 'utf8')).origin.cameToBe === 'drill'
