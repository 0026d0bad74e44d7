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
 * The last run was of 1,500 files and 1,500 argument lists (`npm run study spoiled-files 1500 1500`), on a machine with ten times its load:
 *
 *     scenario   158 files, ended with 0: 19, 65: 139          slowest 0.10 s
 *     record     176 files, ended with 0: 14, 1: 162           slowest 0.33 s
 *     journal    203 files, ended with 0: 17, 65: 186          slowest 0.39 s
 *     drill      199 files, ended with 0: 22, 65: 176, 66: 1   slowest 0.62 s
 *     notes      178 files, ended with 0: 19, 65: 159          slowest 0.46 s
 *     settings   185 files, ended with 0: 59, 65: 126          slowest 0.09 s
 *     kit        184 files, ended with 0: 15, 65: 169          slowest 0.12 s
 *     profile    217 files, ended with 0: 32, 65: 185          slowest 0.15 s
 *     arguments 1500 lists, ended with 0: 390, 64: 998, 65: 3, 66: 109   slowest 0.32 s
 *     greatest memory 296 MB, that of the study's own tools among it
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
