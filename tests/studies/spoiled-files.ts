import { answersToSpoiled, complaintAbout } from '../cli/mutated-files.js'

const FILES = 2000

/** Spoils 2,000 files and counts what was answered, by exit code; complaints should be none. */
export async function run(): Promise<void> {
  const answers = await answersToSpoiled(FILES, 1)
  for (const kind of ['scenario', 'record', 'journal']) {
    const ofKind = answers.filter((one) => one.kind === kind)
    const codes = [0, 1, 65, 66].map((code) => `${code}: ${ofKind.filter((one) => one.exitCode === code).length}`)
    const slowest = Math.max(...ofKind.map((one) => one.processorSeconds))
    process.stdout.write(
      `${kind.padEnd(9)} ${ofKind.length} files, ended with ${codes.join(', ')}; slowest ${slowest.toFixed(2)} s\n`,
    )
  }
  const complaints = answers.map(complaintAbout).filter((one) => one !== null)
  process.stdout.write(`${complaints.length} complaints\n${complaints.join('\n')}\n`)
}
