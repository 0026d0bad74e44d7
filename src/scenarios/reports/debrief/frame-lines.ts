import { LEDGER_TERMS, shortfallOf } from '../../../sim/analysis/debrief/ledger/ledger.js'
import type { BallSpecification } from '../../../sim/world/ball/specification.js'
import type { Hand } from '../../../sim/world/bowler/profile.js'
import { CAUTIONS } from '../../words/cautions.js'
import { findingParagraph, findingWords } from '../../words/finding-words.js'
import { type FramePlace, noSuchFrame } from '../../words/frame-place.js'
import { LEDGER_PARTS, SHORT_OF_THE_BEST } from '../../words/ledger-words.js'
import { oilPicture } from '../../words/oil-picture.js'
import { fellWords, lineWords, seenParts } from '../../words/throw-words.js'
import { costWords, pinsWords, shortDecision, signedPins, spotWords } from '../../words/words.js'
import { wrapped } from '../../words/wrapped.js'
import type { Debrief, DebriefedThrow } from './debrief.js'
import { OTHER_CHOICE_WORDS } from './road-lines.js'

/**
 * One frame of a debrief: each ball with what was seen, what the choice was worth, what else could have been thrown, and the oil
 * as the first of them met it.
 *
 * @throws ScenarioError when the block has no such frame
 */
export function frameLines({ throws, account, ended }: Debrief, place: FramePlace, path: string): string[] {
  const { game, frame } = place
  const inFrame = throws.filter(({ record: { spot } }) => spot.game === game && spot.frame === frame)
  if (inFrame.length === 0) throw noSuchFrame(path, place)
  const { setup, throws: thrown } = ended
  const { bag, lanes, bowler } = setup
  const tags = account.tags.filter((tag) => tag.game === game && tag.frames.includes(frame))
  const [{ record: first }] = inFrame
  return [
    ...inFrame.flatMap((one) => ['', ...throwLines(one, bag, lanes[one.record.spot.lane].name, bowler.hand)]),
    ...(tags.length > 0 ? ['', 'Findings it is part of'] : []),
    ...tags.flatMap((tag) => {
      const words = findingWords(tag, { setup, throws: thrown })
      return [...wrapped(findingParagraph(words), '- '), ...wrapped(`To practise: ${words.practise}`, '  ')]
    }),
    ...(tags.length > 0 ? CAUTIONS.flatMap((words) => wrapped(words)) : []),
    '',
    `Oil at this shot on ${lanes[first.spot.lane].name}`,
    ...oilPicture(first.truth.laneBefore.film),
  ]
}

function throwLines(
  { record, fair: graded, account, counted }: DebriefedThrow,
  bag: readonly BallSpecification[],
  lane: string,
  hand: Hand,
): string[] {
  const { spot, decision, truth } = record
  const fair = counted ? graded : null
  return [
    spotWords(spot, lane),
    `  ${counted ? 'thrown' : 'given'}: ${lineWords(decision, bag)}`,
    ...(fair ? [`  ${costWords(fair.givenAwayPins).toLowerCase()}`] : []),
    ...(fair && fair.givenAwayPins > 0 ? [`    best from what you had seen: ${lineWords(fair.best, bag)}`] : []),
    ...(account.graded ? [`  ${SHORT_OF_THE_BEST}: ${pinsWords(account.graded.knownLostPins)}`] : []),
    ...(account.graded && account.graded.knownLostPins > 0
      ? [`    best if you could see the oil: ${lineWords(account.graded.bestKnown, bag)}`]
      : []),
    `  seen: ${seenParts(record, hand).join(', ')}`,
    Number.isFinite(truth.leftLaneFeet)
      ? `  in truth: off the lane at ${truth.leftLaneFeet.toFixed(0)} ft. ${fellWords(record, hand)}`
      : `  in truth: entry board ${truth.entryBoard.toFixed(1)}. ${fellWords(record, hand)}`,
    ...(account.graded ? termLines(account.graded.ledger) : []),
    ...otherLines(account.graded?.alternatives ?? [], bag),
  ]
}

function termLines(ledger: Parameters<typeof shortfallOf>[0]): string[] {
  const terms = LEDGER_TERMS.map((term) => `${LEDGER_PARTS[term][0]} ${signedPins(-ledger[term])}`)
  return [`  where the pins went: ${terms.join(', ')}; ${signedPins(-shortfallOf(ledger))} in all`]
}

function otherLines(
  alternatives: NonNullable<DebriefedThrow['account']['graded']>['alternatives'],
  bag: readonly BallSpecification[],
): string[] {
  if (alternatives.length === 0) return []
  return [
    '  instead, pins gained: from what you had seen / on the real oil',
    ...[...alternatives]
      .sort((a, b) => b.fairGainPins - a.fairGainPins)
      .map(
        ({ what, decision, fairGainPins, knownGainPins }) =>
          `    ${shortDecision(decision, bag).padEnd(18)}${signedPins(fairGainPins).padStart(5)} / ${signedPins(knownGainPins).padStart(5)}  ${OTHER_CHOICE_WORDS[what]}`,
      ),
  ]
}
