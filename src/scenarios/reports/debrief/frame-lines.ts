import { LEDGER_TERMS, shortfallOf } from '../../../sim/analysis/debrief/ledger/ledger.js'
import { KNOWN_LABEL } from '../../../sim/analysis/debrief/throw-account.js'
import type { BallSpecification } from '../../../sim/world/ball/specification.js'
import { type FramePlace, noSuchFrame } from '../../words/frame-place.js'
import { LEDGER_TITLES } from '../../words/ledger-lines.js'
import { oilPicture } from '../../words/oil-picture.js'
import { decisionWords, observationWords, pinWords, shortDecision, signedPins, spotWords } from '../../words/words.js'
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
  const { bag, lanes } = ended.setup
  const tags = account.tags.filter((tag) => tag.game === game && tag.frames.includes(frame))
  const [{ record: first }] = inFrame
  return [
    ...inFrame.flatMap((one) => ['', ...throwLines(one, bag, lanes[one.record.spot.lane].name)]),
    ...(tags.length > 0 ? ['', 'Findings it is part of'] : []),
    ...tags.flatMap(({ words, practise }) => [...wrapped(words, '- '), ...wrapped(`To practise: ${practise}`, '  ')]),
    ...(tags.length > 0 ? account.cautions.flatMap((words) => wrapped(words)) : []),
    '',
    `The oil on ${lanes[first.spot.lane].name} as the first of them met it`,
    ...oilPicture(first.truth.laneBefore.film),
  ]
}

function throwLines(
  { record, fair: graded, account, counted }: DebriefedThrow,
  bag: readonly BallSpecification[],
  lane: string,
): string[] {
  const { spot, decision, standingBefore, standingAfter, observation, truth } = record
  const fair = counted ? graded : null
  return [
    spotWords(spot, lane),
    `  ${counted ? 'thrown' : 'given'}: ${decisionWords(decision, bag)}`,
    ...(fair ? [`  gave away, by what could be known: ${priceWords(fair.givenAwayPins)}`] : []),
    ...(fair && fair.givenAwayPins > 0 ? [`    best: ${decisionWords(fair.best, bag)}`] : []),
    ...(account.graded ? [`  ${KNOWN_LABEL}: ${priceWords(account.graded.knownLostPins)}`] : []),
    ...(account.graded && account.graded.knownLostPins > 0
      ? [`    best: ${decisionWords(account.graded.bestKnown, bag)}`]
      : []),
    `  seen: ${observationWords(observation, standingBefore)}`,
    `  in truth it entered at board ${truth.entryBoard.toFixed(1)}; ${pinWords(standingBefore, standingAfter, spot.ball)}`,
    ...(account.graded ? termLines(account.graded.ledger) : []),
    ...otherLines(account.graded?.alternatives ?? [], bag),
  ]
}

const priceWords = (pins: number): string => (pins < 0.05 ? 'nothing worth calling' : `${pins.toFixed(1)} pins`)

function termLines(ledger: Parameters<typeof shortfallOf>[0]): string[] {
  const terms = LEDGER_TERMS.map((term) => `${LEDGER_TITLES[term]} ${signedPins(-ledger[term])}`)
  return [`  where the pins went: ${terms.join(', ')}; ${signedPins(-shortfallOf(ledger))} in all`]
}

function otherLines(
  alternatives: NonNullable<DebriefedThrow['account']['graded']>['alternatives'],
  bag: readonly BallSpecification[],
): string[] {
  if (alternatives.length === 0) return []
  return [
    '  instead, gained by what could be known / on the oil as it was:',
    ...[...alternatives]
      .sort((a, b) => b.fairGainPins - a.fairGainPins)
      .map(
        ({ what, decision, fairGainPins, knownGainPins }) =>
          `    ${shortDecision(decision, bag).padEnd(18)}${signedPins(fairGainPins).padStart(5)} / ${signedPins(knownGainPins).padStart(5)}  ${OTHER_CHOICE_WORDS[what]}`,
      ),
  ]
}
