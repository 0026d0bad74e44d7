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
    origin.begun === null ? 'when is unknown' : `${origin.begun} to ${origin.ended ?? 'now'}`,
    `program ${program}`,
    openedWords(origin),
    ...(origin.copyOf === null ? [] : [`gone on from block ${origin.copyOf}`]),
    madeByWords(decisions),
  ].join(', ')
}

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
