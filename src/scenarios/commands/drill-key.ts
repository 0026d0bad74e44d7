import { keyEntry, keyLines } from '../drills/drill-key.js'
import { EXIT } from '../files/text/exit-codes.js'
import { jsonText } from '../files/text/json.js'
import { drillNamed } from '../practice/library-drill.js'
import { type CommandConsole, printText } from './console/console.js'
import { progressOn } from './console/progress.js'

/** What was best at each position of a drill, for the coach. */
export async function drillKeyCommand(
  file: string,
  { json }: { readonly json?: boolean },
  console: CommandConsole,
): Promise<number> {
  const { title, positions } = await drillNamed(file)
  const progress = progressOn(console, 'pricing choices')
  const entries = positions.map((position, place) => {
    const entry = keyEntry(position)
    progress.reached(place + 1, positions.length)
    return entry
  })
  progress.over()
  if (json) printText(console, jsonText({ title, positions: entries }))
  else for (const line of keyLines(title, entries)) console.print(line)
  return EXIT.fine
}
