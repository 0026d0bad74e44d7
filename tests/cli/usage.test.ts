import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { VERSION } from '../../src/scenarios/store/version.js'
import { POLICIES } from '../../src/sim/analysis/policies/policies.js'
import { FEET_BOARDS, TARGET_BOARDS } from '../../src/sim/world/bowler/aim-boards.js'
import { runCommand } from './in-process.js'

const COMMANDS = [
  'play',
  'auto',
  'trace',
  'room',
  'bag',
  'rack',
  'pattern',
  'debrief',
  'verify',
  'scenario',
  'drill',
  'review',
  'player',
  'progress',
]

// Exit codes as sysexits.h names them: 64 usage, 65 data, 66 no input.
describe('the command line', () => {
  it('tells its version, that of package.json', async () => {
    expect(VERSION).toBe(JSON.parse(readFileSync('package.json', 'utf8')).version)
    expect(await runCommand(['--version'])).toEqual({ exitCode: 0, out: VERSION, err: '' })
  })

  it('helps, with examples, and names every command', async () => {
    const { exitCode, out } = await runCommand(['--help'])
    expect(exitCode).toBe(0)
    expect(out).toContain('Examples:')
    for (const command of COMMANDS) expect(out).toMatch(new RegExp(`^  ${command} `, 'm'))
  })

  it.each(COMMANDS)('%s --help ends with 0', async (command) => {
    const { exitCode, out } = await runCommand([command, '--help'])
    expect(exitCode).toBe(0)
    expect(out).toContain(`Usage: dryboard ${command}`)
  })

  it.each([
    [['play', 'house-forty', '--today'], /--today names its lanes itself; leave out house-forty/],
    [['play', '--today', '--seed', '1'], /'--today' cannot be used with option '--seed/],
    [['play', '--against', 'a.json', '--resume'], /'--against <record>' cannot be used with option '--resume/],
    [['paly'], /unknown command 'paly'.*\n?.*Did you mean play\?/],
    [['rack', '--board', '17.5', '--angle', '5'], /required option '--speed/],
    [['rack', '--board', 'pocket', '--angle', '5', '--speed', '16'], /allowed is a number from -2 to 42/],
    [['rack', '--board', '', '--angle', '5', '--speed', '16'], /allowed is a number from -2 to 42/],
    [['rack', '--board', '17', '--angle', '5', '--speed', '16', '--throws', '1.5'], /allowed is a whole number/],
    [['rack', '--board', '17', '--angle', '5', '--speed', '16', '--standing', '3,11'], /allowed are pins from 1 to 10/],
    [['trace', 'house-forty', '--ball', '1', '--feet', '20.3', '--target', '10'], /whole or half board/],
    [
      ['trace', 'house-forty', '--ball', '1', '--feet', '47', '--target', '10'],
      new RegExp(`board from ${FEET_BOARDS.join(' to ')}`),
    ],
    [
      ['trace', 'house-forty', '--ball', '1', '--feet', '20', '--target', '31'],
      new RegExp(`board from ${TARGET_BOARDS.join(' to ')}`),
    ],
    [['auto', 'house-forty', '--policy', 'clever'], new RegExp(`Allowed choices are ${POLICIES.join(', ')}`)],
    [['auto', 'house-forty'], /required option '--policy/],
    [['pattern'], /missing required argument/],
    [['pattern', 'house-forty', 'more'], /too many arguments/],
  ])('%j is answered on standard error and ends with 64', async (argv, sentence) => {
    const { exitCode, out, err } = await runCommand(argv)
    expect(exitCode).toBe(64)
    expect(out).toBe('')
    expect(err).toMatch(sentence)
  })

  it.each([
    [['pattern', 'nowhere.yaml'], 66],
    [['play', 'nowhere.yaml', '--plain'], 66],
    [['debrief', 'nowhere.json'], 66],
    [['verify', 'nowhere.json'], 66],
    [['room', 'nowhere.yaml'], 66],
    [['bag', 'house-forty', 'nowhere.yaml'], 66],
    [['play', 'house-forty', '--script', 'nowhere.txt'], 66],
    [['pattern', 'package.json'], 65],
    [['debrief', 'package.json'], 65],
  ])('%j ends with %d and sentences that begin with the file', async (argv, code) => {
    const { exitCode, out, err } = await runCommand(argv)
    expect(exitCode).toBe(code)
    expect(out).toBe('')
    for (const sentence of err.split('\n')) expect(sentence).toMatch(/^(nowhere|package)\.\w+:/)
  })
})
