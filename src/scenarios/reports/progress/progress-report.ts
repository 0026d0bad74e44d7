import type { CalledThrow } from '../../../sim/analysis/debrief/calls.js'
import { SKILLS, type Skill } from '../../../sim/analysis/debrief/findings/skills.js'
import { rounded } from '../../files/text/json.js'
import type { PracticeSummary } from '../../practice/practice-summary.js'
import { ownChoices, perGame, pinsOnSkill, totalCost } from '../review/block-figures.js'
import { type Estimate, estimateOf, type Weighed } from '../review/estimate.js'
import { dayOf } from '../review/period.js'
import { roundedEstimate } from '../review/player-report.js'
import type { ReviewedBlock } from '../review/reviewed-block.js'
import { calibrationOf } from './calibration.js'
import { stretchesOf } from './stretches.js'

/** All that is looked at for somebody's progress. What practice adds comes in here and nowhere else. */
export interface ProgressSources {
  /** Blocks that are priced, each counted once, in order of play. */
  readonly blocks: readonly ReviewedBlock[]
  readonly calls: readonly CalledThrow[]
  /** Blocks that nobody has priced yet. */
  readonly unpriced: number
  /** What practice says of the skills, in the same pins a game; null where there is none. */
  readonly practice: PracticeSummary | null
}

/** What choices cost over time by skill, how well calls held, drills done and lanes met. */
export type ProgressReport = ReturnType<typeof progressReport>

export function progressReport({ blocks, calls, unpriced, practice }: ProgressSources) {
  const counted = blocks.filter(({ report }) => ownChoices(report) > 0)
  return {
    blocks: counted.length,
    unpriced,
    choices: sum(counted.map(({ report }) => ownChoices(report))),
    first: dayOfFirst(counted),
    last: dayOfFirst([...counted].reverse()),
    cost: told(counted.map(totalCost)),
    skills: SKILLS.map((skill) => ({ skill, ...told(counted.map((block) => skillCost(block, skill))) })).sort(
      (a, b) => b.mean - a.mean,
    ),
    stretches: stretchesOf(counted).map(({ name, within }) => ({
      name,
      blocks: within.length,
      choices: sum(within.map(({ report }) => ownChoices(report))),
      cost: told(within.map(totalCost)),
      skills: SKILLS.map((skill) => ({ skill, ...told(within.map((block) => skillCost(block, skill))) })),
    })),
    calibration: calibrationOf(calls),
    drills: drillsOf(counted),
    shortBlocks: shortBlocksOf(counted),
    lanes: lanesOf(counted),
    practice,
  }
}

const skillCost = (block: ReviewedBlock, skill: Skill): Weighed => perGame(block, pinsOnSkill(block.report, skill))

function dayOfFirst(blocks: readonly ReviewedBlock[]): string | null {
  return blocks.map(dayOf).find((day) => day !== null) ?? null
}

const told = (values: readonly Weighed[]): Estimate => roundedEstimate(estimateOf(values))

/** Drills together: positions answered and what the answers cost. */
function drillsOf(blocks: readonly ReviewedBlock[]) {
  const drills = blocks.filter(({ record }) => record.origin.cameToBe === 'drill')
  const priced = drills.flatMap(({ report }) =>
    report.throws.flatMap(({ fair, counted }) => (fair && counted ? [fair] : [])),
  )
  return {
    positions: drills.length,
    choices: priced.length,
    asGoodAsTheBest: priced.filter(({ givenAwayPins }) => givenAwayPins === 0).length,
    costPins: rounded(sum(priced.map(({ givenAwayPins }) => givenAwayPins)), 2),
  }
}

/** The short blocks that practice ended with, each in order of play: whether what was practised stuck. */
function shortBlocksOf(blocks: readonly ReviewedBlock[]) {
  const short = blocks.filter(({ record }) => record.origin.cameToBe === 'short-block')
  return {
    blocks: short.length,
    choices: sum(short.map(({ report }) => ownChoices(report))),
    cost: told(short.map(totalCost)),
    each: short.map((block) => ({ day: dayOf(block), perGame: rounded(totalCost(block).value, 1) })),
  }
}

/** Every lane met, the one played most first. */
function lanesOf(blocks: readonly ReviewedBlock[]) {
  const titles = [...new Set(blocks.map(({ report }) => report.title))]
  return titles
    .map((title) => {
      const here = blocks.filter(({ report }) => report.title === title)
      const games = here.flatMap(({ record, report }) =>
        report.finished && record.origin.cameToBe !== 'short-block' ? report.games : [],
      )
      return {
        title,
        scenario: here[0]!.record.name,
        blocks: here.length,
        bestGame: games.length === 0 ? null : Math.max(...games),
        cost: told(here.map(totalCost)),
      }
    })
    .sort((a, b) => b.blocks - a.blocks)
}

const sum = (values: readonly number[]): number => values.reduce((all, value) => all + value, 0)
