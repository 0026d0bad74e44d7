import type { Tag } from '../../../sim/analysis/debrief/findings/tag.js'
import { type LedgerTerms, shortfallOf } from '../../../sim/analysis/debrief/ledger/ledger.js'
import type { Alternative } from '../../../sim/analysis/debrief/reading/alternatives.js'
import type { LedgerSum } from '../../../sim/analysis/debrief/sums.js'
import { radiansToDegrees } from '../../../sim/units.js'
import type { Decision } from '../../../sim/world/block/types.js'
import { listPins } from '../../../sim/world/pins/leaves.js'
import { tally } from '../../../sim/world/scoring/game.js'
import { jsonText, rounded } from '../../files/text/json.js'
import { isBlockOver } from '../../store/block-over.js'
import type { BlockRecord } from '../../store/record.js'
import { CAUTIONS } from '../../words/cautions.js'
import { evidenceWords } from '../../words/evidence-words.js'
import { findingParagraph, findingWords, type ToldBlock } from '../../words/finding-words.js'
import { luckWords } from '../../words/luck-words.js'
import { SPEED_WORDS, signedPins } from '../../words/words.js'
import type { Debrief, DebriefedThrow } from './debrief.js'

/** What is printed by `debrief --json`: plain data, rounded, the same bytes for the same record and model. */
export type DebriefReport = ReturnType<typeof debriefReport>

export function debriefReport(record: BlockRecord, debrief: Debrief) {
  const { ended, throws, firstBallPins, sparePins, account } = debrief
  const { sums, tags, untoldPins, luck } = account
  const { setup, throws: thrown } = ended
  return {
    scenario: record.name,
    title: record.scenario.title,
    seed: record.seed,
    model: record.model,
    finished: isBlockOver(record.origin.cameToBe, ended),
    games: ended.balls.map((balls) => tally(ended.setup.scoring, balls).total),
    givenAway: {
      firstBalls: rounded(sums.firstBalls.chargedPins, 2),
      spares: rounded(sums.spares.chargedPins, 2),
      total: rounded(sums.block.chargedPins, 2),
    },
    againstTheOil: { firstBalls: rounded(firstBallPins, 2), spares: rounded(sparePins, 2) },
    ledger: {
      frames: sums.frames.map(({ game, frame, ...sum }) => ({ game, frame, ...sumReport(sum) })),
      games: sums.games.map(({ game, ...sum }) => ({ game, ...sumReport(sum) })),
      block: sumReport(sums.block),
    },
    tags: tags.map((tag) => tagReport(tag, { setup, throws: thrown })),
    untoldPins: rounded(untoldPins, 2),
    luck: luck.map((note) => ({
      ...note,
      luckPins: rounded(note.luckPins, 1),
      words: luckWords(note, thrown, setup.games, setup.bowler.hand),
    })),
    cautions: CAUTIONS,
    throws: throws.map(throwReport),
  }
}

export function debriefText(record: BlockRecord, debrief: Debrief): string {
  return jsonText(debriefReport(record, debrief))
}

function tagReport(found: Tag, block: ToldBlock) {
  const { evidence, mend, mendsAll, ...tag } = found
  const words = findingWords(found, block)
  return {
    ...tag,
    pins: rounded(tag.pins, 2),
    evidence: evidence.map((one) => ({
      words: evidenceWords(one, block.setup.bowler.hand),
      value: rounded(one.value, 3),
      unit: one.unit,
    })),
    words: findingParagraph(words),
    seen: words.seen,
    mend: decisionReport(mend),
    mendsAll,
    practise: words.practise,
  }
}

function throwReport({ record, account, fair, counted }: DebriefedThrow) {
  const { spot, decision, standingBefore, standingAfter, truth } = record
  return {
    phase: spot.phase,
    lane: spot.lane + 1,
    game: spot.game,
    frame: spot.frame,
    ball: spot.ball,
    kind: account.kind,
    counted,
    decision: decisionReport(decision),
    standingBefore: listPins(standingBefore),
    standingAfter: listPins(standingAfter),
    entryBoard: rounded(truth.entryBoard, 2),
    entryAngleDegrees: rounded(radiansToDegrees(truth.entryAngleRadians), 2),
    gutter: Number.isFinite(truth.leftLaneFeet),
    fair: fair && {
      givenAwayPins: rounded(fair.givenAwayPins, 3),
      lostPins: rounded(fair.lostPins, 3),
      tooCloseToCallPins: rounded(fair.tooCloseToCallPins, 3),
      stakesPins: rounded(fair.stakesPins, 3),
      informationPins: rounded(fair.informationPins, 3),
      percentile: fair.percentile === null ? null : rounded(fair.percentile, 3),
      best: decisionReport(fair.best),
    },
    known: account.graded && {
      against: 'the best if you could see the oil',
      givenAwayPins: rounded(account.graded.knownLostPins, 3),
      standardErrorPins: rounded(account.graded.knownStandardErrorPins, 3),
      best: decisionReport(account.graded.bestKnown),
    },
    ledger: account.graded && termsReport(account.graded.ledger),
    roadNotTaken: account.graded?.alternatives.map(alternativeReport) ?? [],
  }
}

function decisionReport({ ballId, aim, release }: Decision) {
  return { ball: ballId, feet: aim.feetBoard, target: aim.targetBoard, speed: SPEED_WORDS[aim.speedStep], release }
}

function alternativeReport({ what, decision, fairGainPins, knownGainPins }: Alternative) {
  return {
    what,
    decision: decisionReport(decision),
    fairGainPins: rounded(fairGainPins, 3),
    knownGainPins: rounded(knownGainPins, 3),
  }
}

function sumReport({ ledger, chargedPins }: LedgerSum) {
  return { chargedPins: rounded(chargedPins, 3), ...termsReport(ledger), printed: printedReport(ledger) }
}

/** Terms keep more decimals than any reader needs, so that they still add up to the total. */
function termsReport(ledger: LedgerTerms) {
  return {
    givenAwayPins: rounded(ledger.givenAwayPins, 6),
    patternSwingPins: rounded(ledger.patternSwingPins, 6),
    hiddenPins: rounded(ledger.hiddenPins, 6),
    deliveryPins: rounded(ledger.deliveryPins, 6),
    carryPins: rounded(ledger.carryPins, 6),
    totalPins: rounded(shortfallOf(ledger), 6),
  }
}

/** The parts as every page prints them: + won, - lost. */
function printedReport(ledger: LedgerTerms) {
  return {
    cost: signedPins(-ledger.givenAwayPins),
    realOil: signedPins(-ledger.patternSwingPins),
    costOfNotSeeingTheOil: signedPins(-ledger.hiddenPins),
    delivery: signedPins(-ledger.deliveryPins),
    carry: signedPins(-ledger.carryPins),
    inAll: signedPins(-shortfallOf(ledger)),
  }
}
