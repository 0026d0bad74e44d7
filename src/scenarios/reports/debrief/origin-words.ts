import type { CameToBe, Origin } from '../../store/origin.js'
import type { BlockRecord } from '../../store/record.js'

export const CAME_TO_BE_WORDS: Readonly<Record<CameToBe, string>> = {
  played: 'played',
  drill: 'a drill',
  'short-block': 'a short block after practice',
  contest: 'a contest',
  auto: 'played by a policy',
  unknown: 'origin unknown',
}

/** Where a block comes from, in one line: how it came to be, when, by which program, and whether its lane was known. */
export function originWords({
  origin,
  program,
  decisions,
}: Pick<BlockRecord, 'origin' | 'program' | 'decisions'>): string {
  return [
    CAME_TO_BE_WORDS[origin.cameToBe],
    whenWords(origin),
    `program ${program}`,
    openedWords(origin),
    ...(origin.copyOf === null ? [] : [`gone on from block ${origin.copyOf}`]),
    madeByWords(decisions),
  ].join(', ')
}

/** Day, hours and zone, as the clock at the keys showed them. */
function whenWords({ begun, ended }: Origin): string {
  if (begun === null) return 'when is unknown'
  const [day, time, zone] = partsOf(begun)
  const end = ended === null ? null : partsOf(ended)
  const until = end === null ? 'still open' : `to ${end[0] === day ? '' : `${end[0]} `}${end[1]}`
  return `${day} ${time} ${until} (${zone === 'Z' ? 'UTC' : `UTC${zone}`})`
}

const partsOf = (at: string): readonly [day: string, time: string, zone: string] => [
  at.slice(0, 10),
  at.slice(11, 16),
  at.slice(19),
]

function openedWords({ openedBefore }: Origin): string {
  if (openedBefore === null) return 'opened before: unknown'
  return openedBefore === 0 ? 'not opened before' : `opened ${openedBefore} times before`
}

function madeByWords(decisions: BlockRecord['decisions']): string {
  const count = (by: string): number => decisions.filter((one) => one.by === by).length
  const told = [
    [count('player'), "the player's own"],
    [count('given'), 'given'],
    [count('policy'), "a policy's"],
    [count('unknown'), 'of an unknown maker'],
  ] as const
  const parts = told.filter(([number]) => number > 0).map(([number, words]) => `${number} ${words}`)
  return parts.length === 0 ? 'no choices' : `choices: ${parts.join(', ')}`
}
