import { Document, isMap, type Node, type YAMLMap } from 'yaml'
import type { ScenarioInput } from '../files/schema/scenario.js'

/** What is said before each field of a scenario file, for one who writes it for the first time. */
const COMMENTS: Readonly<Record<string, string>> = {
  version: ' The version of this file format.',
  title: ' What the block is called, what it is for (shown before it) and anything else worth noting.',
  lanes:
    ' One lane or two. Each has passes of the oil machine, boards counted from the right edge or, as on a sheet, from either (2L-2R),\n feet from the foul line;\n or instead of passes bounds within which the seed draws a pattern:\n   drawn: { lengthFeet: [38, 44], volumeMillilitres: [22, 27], ratio: [2, 6], symmetric: yes }',
  seed: ' The same luck and drawn oil for all who play it; leave it out for a fresh one each time.',
  posted: ' What the player is told of the oil: sheet, length or nothing.',
  bag: ' One to eight balls; covers are solid, hybrid, pearl, urethane and plastic. With takeBalls: 3 the player chooses three of them.',
  bowler:
    ' The bowler: a level (elite, 220, 200, 180, 160, recreational), a hand, a style (stroker, tweener, cranker, two-handed);\n or level: own with figures of your own, as dryboard scenario new --own-bowler writes out. There error is how far one strike ball\n misses from the next and spareError one spare ball (standard deviations, to both sides alike): a bowler who always misses to one side\n by as much mends it with the target; what a lane makes of a miss to either side dryboard room tells.',
  field:
    ' Up to five others on the same lanes, each with a ball of bag or fieldBag and the line they start on, from their own side;\n fieldFramesBefore: 10 lets them bowl ten frames on each lane before the block begins.',
  practiceThrows:
    ' Throws on each lane before the first game, games in the block, and scoring: ten-pin or current-frame.',
}

/** A scenario as YAML to be changed by a person, each part with a word on what may stand there. */
export function commentedScenario(data: ScenarioInput): string {
  const document = new Document(data, { aliasDuplicateObjects: false })
  document.commentBefore =
    ' A Dryboard scenario. Check it with: dryboard scenario check FILE. Play it with: dryboard play FILE.\n An editor completes and checks it by the schema that dryboard scenario schema prints.'
  const root = document.contents as YAMLMap<Node, Node>
  for (const pair of root.items) {
    const comment = COMMENTS[String((pair.key as { value?: unknown }).value)]
    if (comment !== undefined) pair.key.commentBefore = comment
  }
  flowRows(root.get('lanes', true), 'passes')
  return document.toString({ lineWidth: 0 }).trimEnd()
}

/** Writes the rows of a list inside each item of a list on one line each. */
export function flowRows(list: unknown, field: string): void {
  for (const item of (list as { items?: unknown[] } | undefined)?.items ?? []) {
    const rows = isMap(item) ? (item.get(field, true) as { items?: unknown[] } | undefined) : undefined
    for (const row of rows?.items ?? []) if (isMap(row)) row.flow = true
  }
}
