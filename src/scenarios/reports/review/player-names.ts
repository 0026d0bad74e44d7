import { ScenarioError } from '../../files/text/scenario-error.js'

/** What two spellings of one name have alike: case, outer spaces and the number of inner ones are nothing to it. */
export function nameKey(name: string): string {
  return name.normalize('NFC').trim().replaceAll(/\s+/g, ' ').toLowerCase()
}

/** Names that stand for others, such as "Anny=Ansa", by their keys. @throws ScenarioError */
export function aliasesFrom(texts: readonly string[]): ReadonlyMap<string, string> {
  return new Map(
    texts.map((text) => {
      const [alias = '', name = '', ...more] = text.split('=').map((part) => part.trim())
      if (alias === '' || name === '' || more.length > 0) {
        throw new ScenarioError([`--alias: found ${JSON.stringify(text)}; allowed is ALIAS=NAME, such as Anny=Ansa.`])
      }
      return [nameKey(alias), name]
    }),
  )
}

/** The names of blocks, each player's spelt as in that player's latest block; `names` in order of play. */
export function namedAlike(names: readonly string[], aliases: ReadonlyMap<string, string> = new Map()): string[] {
  const meant = names.map((name) => aliases.get(nameKey(name)) ?? name.trim())
  const latest = new Map(meant.map((name) => [nameKey(name), name]))
  return meant.map((name) => latest.get(nameKey(name))!)
}
