import { copyFileSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { afterAll, expect, it } from 'vitest'
import { localTime } from '../../src/scenarios/files/text/local-time.js'
import { runCommand } from './in-process.js'
import { oneBallLane } from './played-record.js'

const home = process.cwd()
afterAll(() => process.chdir(home))

/** The commands of the secretary's way, as the demo's README has them; the host's are tried elsewhere. */
const COMMANDS = readFileSync('scenarios-demo/README.md', 'utf8')
  .split("## A contest, the secretary's way")[1]!
  .split('\n## ')[0]!
  .split('\n')
  .filter((line) => /^ {4}dryboard contest (?!host)/.test(line))
  .map((line) => line.trim())

function workplace(): string {
  const work = mkdtempSync(join(tmpdir(), 'dryboard-secretary-'))
  for (const name of ['contest-autumn.yaml', 'contest-entrants.yaml'])
    copyFileSync(resolve(home, 'scenarios-demo', name), join(work, name))
  for (const name of ['entries', 'season']) mkdirSync(join(work, name))
  // The same house oil with one ball of the bag takes little working out.
  oneBallLane(work)
  const rules = join(work, 'contest-autumn.yaml')
  writeFileSync(rules, readFileSync(rules, 'utf8').replace('scenario: house-forty', 'scenario: one-ball.yaml'))
  return work
}

it('goes the secretary’s way, command by command as the README has it', async () => {
  process.chdir(workplace())
  let passphrase = ''
  const environment = { DRYBOARD_DATA: 'secretary' }
  const told: Record<string, string> = {}
  for (const line of COMMANDS) {
    const [command, into] = line.split(' > ')
    const argv = command!.replaceAll('PASSPHRASE', passphrase).split(' ').slice(1)
    const { exitCode, out, err } = await runCommand(argv, { environment, typed: new Array<string>(40).fill('') })
    expect([line, exitCode, exitCode === 0 ? '' : err]).toEqual([line, 0, ''])
    if (into !== undefined) writeFileSync(into, `${out}\n`)
    passphrase = /not before: (\S+)$/m.exec(out)?.[1] ?? passphrase
    const kept = /^Record kept: (.*)$/m.exec(err)?.[1]
    if (kept !== undefined) copyFileSync(kept, join('entries', `${argv[argv.indexOf('--player') + 1]}.json`))
    told[`${argv[1]}${argv.includes('--html') ? ' page' : ''}${argv.includes('--unsealing') ? ' unsealing' : ''}`] = out
  }
  expect(readdirSync('entries')).toEqual(['Ansa.json', 'Brono.json'])
  expect(told.open).toMatch(/The lane is sealed/)
  expect(told.play).not.toMatch(/gives away|Cost |seed /)
  expect(readFileSync('wall.html', 'utf8')).toMatch(/<td><strong>Brono<\/strong>/)
  // Both made the same choices with the same luck, so only the handicap parts them.
  const standings = JSON.parse(readFileSync('season/autumn.json', 'utf8'))
  expect(standings.places.map(({ score }: { score: number }) => score)[0]).toBe(standings.places[1].score)
  expect(told.season).toMatch(/1 +Ansa +2\.0/)
  expect(told['open unsealing']).toMatch(/the seed is the one that was committed to/)
})

it('tells nothing of the lane or the entry while the contest is on, and all of it once unsealed', async () => {
  process.chdir(workplace())
  const environment = { DRYBOARD_DATA: 'ansa' }
  const run = (argv: readonly string[], typed: readonly string[] = []) => runCommand(argv, { environment, typed })
  const soon = localTime(new Date(Date.now() + 3_600_000))
  const rules = readFileSync('contest-autumn.yaml', 'utf8').replace(/^deadline.*$/m, `deadline: "${soon}"`)
  writeFileSync('rules.yaml', rules)
  expect(
    (await run(['contest', 'seal', 'rules.yaml', '--passphrase', 'one two', '--out', 'a.pack.json'])).exitCode,
  ).toBe(0)
  expect((await run(['pattern', 'house-forty'])).exitCode).toBe(0)
  const play = ['contest', 'play', 'a.pack.json', '--passphrase', 'one two', '--player', 'Ansa']
  const first = await run(play, ['', '', 'quit'])
  expect([first.exitCode, first.out]).toEqual([0, expect.stringMatching(/stops here, unfinished/)])
  const lane = ['house-forty']
  for (const argv of [
    ['pattern', ...lane],
    ['room', ...lane],
    ['auto', ...lane, '--policy', 'stay'],
    ['trace', ...lane, '--ball', '1', '--feet', '20', '--target', '11'],
    ['bag', ...lane],
    ['play', ...lane, '--plain'],
  ]) {
    const { exitCode, err } = await run(argv)
    expect([argv[0], exitCode, err]).toEqual([
      argv[0],
      65,
      expect.stringMatching(/^house-forty: this is the lane of the contest "Autumn evening/),
    ])
  }
  expect((await run(['pattern', 'flat-forty-four'])).exitCode).toBe(0)
  expect((await run(['pattern', 'a.pack.json'])).err).toMatch(
    /^a\.pack\.json: this is the pack of a contest, and its lane is sealed/,
  )
  const again = await run(play, ['quit'])
  expect(again.out).toMatch(/goes on after 2 throws, and the entry says so/)
  const handed = await run([...play, '--hand-in'])
  const record = /^Record kept: (.*)$/m.exec(handed.err)![1]!
  expect((await run(['debrief', record, '--quick'])).err).toMatch(/nothing is told of it before/)
  expect((await run(['review', record])).exitCode).toBe(65)
  expect((await run(['play', '--resume', record, '--plain'])).err).toMatch(/handed in to a contest/)
  expect((await run(play)).err).toMatch(/allow no more/)
  mkdirSync('one')
  copyFileSync(record, join('one', 'a.json'))
  const standings = await run(['contest', 'standings', 'one', '--pack', 'a.pack.json', '--passphrase', 'one two'])
  expect(standings.out).toMatch(/Ansa \(a\.json\): it is not finished/)
  const checked = await run(['contest', 'check', 'one/a.json', '--pack', 'a.pack.json', '--passphrase', 'one two'])
  expect(JSON.parse(checked.out)).toMatchObject({
    status: 'unfinished',
    marks: [1, 2].map(() => expect.stringMatching(/^resumed after 2 throws at /)),
  })
  await run(['contest', 'unseal', 'a.pack.json', '--passphrase', 'one two', '--out', 'u.json'])
  expect((await run(['contest', 'open', 'a.pack.json', '--unsealing', 'u.json'])).exitCode).toBe(0)
  expect((await run(['pattern', 'house-forty'])).exitCode).toBe(0)
})
