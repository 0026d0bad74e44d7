import { SKILL_OF, SKILLS } from '../../../sim/analysis/debrief/findings/skills.js'
import { rounded } from '../../files/text/json.js'
import { ownChoices, ownFrames, perGame, pinsOnSkill, totalCost } from './block-figures.js'
import { changeBetween, type Estimate, estimateOf, meanOf, type Weighed } from './estimate.js'
import { dayOf, type Period } from './period.js'
import type { ReviewedBlock } from './reviewed-block.js'
import { suggestedDrill } from './suggested-drill.js'

const DEAREST = 6

export type PlayerReport = ReturnType<typeof playerReport>

/** One player's blocks in order of play looked at together: what choices cost, in pins a game. */
export function playerReport(player: string, blocks: readonly ReviewedBlock[], { compare }: Period = {}) {
  const costs = blocks.map(totalCost)
  const skills = SKILLS.map((skill) => ({
    skill,
    ...told(blocks.map((block) => perGame(block, pinsOnSkill(block.report, skill)))),
  })).sort((a, b) => b.mean - a.mean)
  const findings = findingsOf(blocks)
  return {
    player,
    blocks: blocks.map(blockReport),
    choices: sum(blocks.map(({ report }) => ownChoices(report))),
    costPins: rounded(sum(blocks.map(({ report }) => report.givenAway.total)), 2),
    givenAway: {
      firstBalls: told(blocks.map((block) => perGame(block, block.report.givenAway.firstBalls))),
      spares: told(blocks.map((block) => perGame(block, block.report.givenAway.spares))),
      total: told(costs),
    },
    skills,
    /** What is charged beside the findings, so that skills and this add up to the total. */
    unnamed: told(blocks.map((block) => perGame(block, block.report.untoldPins))),
    dearest: blocks
      .flatMap(dearThrows)
      .sort((a, b) => b.givenAwayPins - a.givenAwayPins)
      .slice(0, DEAREST),
    progress: progressOf(costs),
    change: compare === undefined ? null : changeOf(blocks, compare),
    findings,
    suggestedDrill: suggestedDrill(skills, findings),
    notes: blocks.flatMap(({ path, notes }) => notes.map((note) => ({ record: path, ...note }))),
    cautions: blocks[0]?.report.cautions ?? [],
  }
}

function blockReport(block: ReviewedBlock) {
  const { path, record, report } = block
  return {
    record: path,
    block: record.block,
    program: record.program,
    origin: record.origin,
    day: dayOf(block),
    ownChoices: ownChoices(report),
    // What was given has no price.
    choices: report.throws.filter(({ phase, fair, counted }) => phase === 'game' && (fair || !counted)).length,
    frames: ownFrames(report),
    title: report.title,
    games: report.games,
    finished: report.finished,
    costPins: report.givenAway.total,
    givenAwayPerGame: rounded(totalCost(block).value, 2),
  }
}

/** Findings of all blocks, dearest first and so numbered. */
function findingsOf(blocks: readonly ReviewedBlock[]) {
  return blocks
    .flatMap((block) =>
      block.report.tags.map(({ kind, game, frames, pins, words, practise }) => ({
        record: block.path,
        title: block.report.title,
        day: dayOf(block),
        kind,
        skill: SKILL_OF[kind],
        game,
        frames,
        pins,
        words,
        practise,
      })),
    )
    .sort((a, b) => b.pins - a.pins)
    .map((finding, place) => ({ number: place + 1, ...finding }))
}

function dearThrows({ path, report }: ReviewedBlock) {
  return report.throws.flatMap(({ fair, counted, game, frame, ball, kind, decision }) =>
    fair && counted && fair.givenAwayPins > 0
      ? [
          {
            record: path,
            game,
            frame,
            ball,
            kind,
            givenAwayPins: rounded(fair.givenAwayPins, 2),
            thrown: decision,
            best: fair.best,
          },
        ]
      : [],
  )
}

/** The last block against those before it; null for a first one. */
function progressOf(costs: readonly Weighed[]) {
  const counted = costs.filter(({ weight }) => weight > 0)
  if (counted.length < 2) return null
  const before = estimateOf(counted.slice(0, -1))
  const last = counted[counted.length - 1]!.value
  return { lastPerGame: rounded(last, 2), before: roundedEstimate(before), changePins: rounded(last - before.mean, 2) }
}

/** Blocks from a day on against those before it. */
function changeOf(blocks: readonly ReviewedBlock[], compare: string) {
  const isLater = (block: ReviewedBlock): boolean => (dayOf(block) ?? '') >= compare
  const [before, after] = [blocks.filter((one) => !isLater(one)), blocks.filter(isLater)].map(countedCosts)
  const change = before!.length > 0 && after!.length > 0 ? changeBetween(meanOf(before!), meanOf(after!)) : null
  return {
    day: compare,
    before: told(before!),
    after: told(after!),
    pins: change && rounded(change.pins, 2),
    low: change?.low == null ? null : rounded(change.low, 2),
    high: change?.high == null ? null : rounded(change.high, 2),
  }
}

const countedCosts = (blocks: readonly ReviewedBlock[]): Weighed[] =>
  blocks.map(totalCost).filter(({ weight }) => weight > 0)

const told = (values: readonly Weighed[]) => roundedEstimate(estimateOf(values.filter(({ weight }) => weight > 0)))

/** Fine enough that whoever rounds it once more prints the figure that stands elsewhere. */
const DECIMALS = 6

/** Nobody gives away less than nothing, whatever a few blocks' interval says. */
export function roundedEstimate({ mean, low, high, blocks }: Estimate): Estimate {
  return {
    mean: rounded(mean, DECIMALS),
    low: low === null ? null : rounded(Math.max(0, low), DECIMALS),
    high: high === null ? null : rounded(high, DECIMALS),
    blocks,
  }
}

const sum = (values: readonly number[]): number => values.reduce((all, value) => all + value, 0)
