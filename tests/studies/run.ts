import { readdirSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath, pathToFileURL } from 'node:url'

const folder = dirname(fileURLToPath(import.meta.url))
const names = readdirSync(folder)
  .filter((file) => file.endsWith('.ts') && file !== 'run.ts')
  .map((file) => file.slice(0, -3))
  .sort()

const [name, ...args] = process.argv.slice(2)
if (name === undefined || !names.includes(name)) {
  process.stderr.write(`${name ? `There is no study "${name}". ` : ''}Say which study to run: ${names.join(', ')}.\n`)
  process.exitCode = 64
} else {
  const study = (await import(pathToFileURL(join(folder, `${name}.ts`)).href)) as {
    run(args: readonly string[]): void | Promise<void>
  }
  await study.run(args)
}
