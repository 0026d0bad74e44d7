import { spawnSync } from 'node:child_process'
import { existsSync } from 'node:fs'
import { answersToArguments, harmlessArguments } from '../cli/answers-to-arguments.js'
import { answersToSpoiled, complaintAbout } from '../cli/mutated-files.js'
import { KINDS } from '../cli/spoiled-sources.js'

const FILES = 5000
const ARGUMENT_LISTS = 5000
const PROCESSES = 30
const PROGRAM = 'dist/cli.js'

/**
 * Spoils 5,000 files of every kind the program reads and 5,000 argument lists, and counts what was answered, by exit code; complaints
 * should be none. Of files 0 is for slips that left a sound one, 1 for a record that does not come out the same. All is done in one
 * process, whose greatest memory is told too; some argument lists go to the built program as well. Arguments: files, argument lists, and
 * kinds of files, all where none is named. What is spoiled of a contest's key is the organiser's, of a drill's key the drill it is worked out of.
 *
 * The last run, of all 5,000 and 5,000:
 *
 *     scenario   633 files, ended with 0: 62, 65: 571          slowest 0.21 s
 *     record     625 files, ended with 0: 37, 1: 588           slowest 0.38 s
 *     journal    635 files, ended with 0: 51, 65: 584          slowest 0.71 s
 *     drill      618 files, ended with 0: 52, 65: 566          slowest 1.30 s
 *     notes      615 files, ended with 0: 63, 65: 552          slowest 0.35 s
 *     settings   638 files, ended with 0: 180, 65: 458         slowest 0.13 s
 *     kit        605 files, ended with 0: 46, 65: 559          slowest 0.23 s
 *     profile    631 files, ended with 0: 107, 65: 524         slowest 0.15 s
 *     arguments 5000 lists, ended with 0: 1212, 1: 68, 64: 3374, 65: 11, 66: 335   slowest 0.69 s
 *     greatest memory 374 MB, of one process that answers all 10,000, the study's own tools among it
 *     0 complaints
 *
 * Of drills, notes and the two keys, `npm run study spoiled-files 1320 0 drill drill-key notes contest-key`:
 *
 *     drill        305 files, ended with 0: 36, 65: 269        slowest 0.66 s
 *     drill-key    313 files, ended with 0: 40, 65: 271, 66: 2 slowest 0.36 s
 *     notes        342 files, ended with 0: 31, 65: 311        slowest 0.33 s
 *     contest-key  360 files, ended with 0: 45, 65: 315        slowest 0.24 s
 *     0 complaints
 */
export async function run([files, lists, ...named]: readonly string[] = []): Promise<void> {
  const kinds = named.length === 0 ? KINDS : KINDS.filter((kind) => named.includes(kind))
  const answers = await answersToSpoiled(files === undefined ? FILES : Number(files), 1, kinds)
  for (const kind of kinds) {
    const ofKind = answers.filter((one) => one.kind === kind)
    const codes = [0, 1, 65, 66].map((code) => `${code}: ${ofKind.filter((one) => one.exitCode === code).length}`)
    const slowest = Math.max(0, ...ofKind.map((one) => one.processorSeconds))
    process.stdout.write(
      `${kind.padEnd(11)} ${String(ofKind.length).padStart(4)} files, ended with ${codes.join(', ')}; slowest ${slowest.toFixed(2)} s\n`,
    )
  }
  const complaints = answers.map(complaintAbout).filter((one) => one !== null)
  const answered = await answersToArguments(lists === undefined ? ARGUMENT_LISTS : Number(lists), 2)
  const counts = [0, 1, 64, 65, 66, 73].map(
    (code) => `${code}: ${answered.filter((one) => one.exitCode === code).length}`,
  )
  const slowest = Math.max(0, ...answered.map((one) => one.processorSeconds))
  process.stdout.write(
    `arguments   ${answered.length} lists, ended with ${counts.join(', ')}; slowest ${slowest.toFixed(2)} s\n`,
  )
  complaints.push(
    ...answered.flatMap(({ argv, complaint }) => (complaint === null ? [] : [`${JSON.stringify(argv)}: ${complaint}`])),
  )
  process.stdout.write(`greatest memory ${(process.resourceUsage().maxRSS / 1000).toFixed(0)} MB\n`)
  if (answered.length > 0) complaints.push(...complaintsOfProgram())
  process.stdout.write(`${complaints.length} complaints\n${complaints.join('\n')}\n`)
}

/** The same of the built program in processes of its own. */
function complaintsOfProgram(): string[] {
  if (!existsSync(PROGRAM)) return [`${PROGRAM} is not there; npm run build makes it.`]
  return harmlessArguments(PROCESSES, 3).flatMap((argv) => {
    const { status, stderr } = spawnSync(process.execPath, [PROGRAM, ...argv], { input: 'quit\n', encoding: 'utf8' })
    const isRight = status !== null && [0, 1, 64, 65, 66, 73].includes(status) && !/\n\s+at /.test(stderr)
    return isRight ? [] : [`${JSON.stringify(argv)}: the program ends with ${status}: ${stderr.slice(0, 200)}`]
  })
}
