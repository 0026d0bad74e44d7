import { EXIT } from '../files/text/exit-codes.js'
import { withDataFolder } from '../store/data-folder.js'
import { keepPlayerName, playerName } from '../store/player-name.js'
import type { CommandConsole } from './console/console.js'

/** Tells the name that records carry, or keeps one for those to come. */
export async function playerCommand(
  name: string | undefined,
  { data }: { readonly data?: string },
  console: CommandConsole,
): Promise<number> {
  const environment = withDataFolder(console.environment, data)
  if (name === undefined) {
    const player = await playerName(undefined, environment)
    console.print(player ?? 'No name is kept; records tell nobody who played. To keep one: dryboard player NAME')
    return EXIT.fine
  }
  const path = await keepPlayerName(name, environment)
  console.print(`Records from now on are ${name}'s.`)
  console.tell(`Name kept: ${path}`)
  return EXIT.fine
}
