import { SKILLS, type Skill } from '../../../sim/analysis/debrief/findings/skills.js'
import { rounded } from '../../files/text/json.js'
import { ownChoices, ownFrames, perGame, pinsOnSkill, totalCost } from './block-figures.js'
import { estimateOf, type Weighed } from './estimate.js'
import type { PlayerReport } from './player-report.js'
import { type Pooled, pooledMeans } from './pooled.js'
import type { ReviewedBlock } from './reviewed-block.js'
import { suggestedDrill } from './suggested-drill.js'

export type GroupReport = NonNullable<ReturnType<typeof groupReport>>

/**
 * Several players looked at together; null for one. Skills are summed over the group; players are held against each other on one
 * scenario at a time and never across, their figures drawn towards the group's by how little there is of them (`pooled.ts`).
 */
export function groupReport(players: readonly PlayerReport[], blocks: readonly ReviewedBlock[]) {
  if (players.length < 2) return null
  const frames = sum(blocks.map(({ report }) => ownFrames(report)))
  const aGame = (pins: number): number => (frames === 0 ? 0 : rounded((10 * pins) / frames, 2))
  const pinsOn = (skill: Skill): number => sum(blocks.map(({ report }) => pinsOnSkill(report, skill)))
  const skills = SKILLS.map((skill) => ({
    skill,
    pins: rounded(pinsOn(skill), 2),
    mean: aGame(pinsOn(skill)),
    players: players.filter((one) => one.skills.some((own) => own.skill === skill && own.mean > 0)).length,
  })).sort((a, b) => b.pins - a.pins)
  const unnamed = sum(blocks.map(({ report }) => report.untoldPins))
  const total = sum(blocks.map(({ report }) => report.givenAway.total))
  const findings = players.flatMap((one) => one.findings)
  return {
    players: players.length,
    blocks: blocks.length,
    choices: sum(players.map(({ choices }) => choices)),
    costPins: rounded(total, 2),
    costPerGame: aGame(total),
    skills,
    unnamed: { pins: rounded(unnamed, 2), mean: aGame(unnamed) },
    scenarios: scenariosOf(blocks),
    change: groupChange(players),
    suggestedDrill: suggestedDrill(skills, findings),
  }
}

/** Each scenario with the players who played it, who lost least first. */
function scenariosOf(blocks: readonly ReviewedBlock[]) {
  const hashes = [...new Set(blocks.map(({ record }) => record.scenarioHash))]
  return hashes.map((hash) => {
    const here = blocks.filter(({ record }) => record.scenarioHash === hash)
    const names = [...new Set(here.map(({ player }) => player))]
    const of = (name: string): ReviewedBlock[] => here.filter(({ player }) => player === name)
    const pooledOver = (figure: (block: ReviewedBlock) => Weighed): Pooled[] =>
      pooledMeans(names.map((name) => of(name).map(figure).filter(isCounted)))
    const cost = pooledOver(totalCost)
    const bySkill = SKILLS.map((skill) => ({
      skill,
      pooled: pooledOver((block) => perGame(block, pinsOnSkill(block.report, skill))),
    }))
    const unnamed = pooledOver((block) => perGame(block, block.report.untoldPins))
    return {
      scenario: here[0]!.record.name,
      title: here[0]!.report.title,
      players: names
        .map((name, at) => ({
          player: name,
          blocks: of(name).length,
          choices: sum(of(name).map(({ report }) => ownChoices(report))),
          games: of(name).flatMap(({ report }) => report.games),
          /** The player's own mean, and the same drawn towards the group's. */
          own: rounded(estimateOf(of(name).map(totalCost).filter(isCounted)).mean, 2),
          cost: pooledReport(cost[at]!),
          skills: bySkill.map(({ skill, pooled }) => ({ skill, ...pooledReport(pooled[at]!) })),
          unnamed: pooledReport(unnamed[at]!),
        }))
        .sort((a, b) => a.cost.mean - b.cost.mean),
    }
  })
}

const isCounted = ({ weight }: Weighed): boolean => weight > 0

function pooledReport({ mean, quantile, drawnShare }: Pooled) {
  const [low, high] = [quantile(0.025), quantile(0.975)]
  return {
    mean: rounded(mean, 2),
    low: low === null ? null : rounded(Math.max(0, low), 2),
    high: high === null ? null : rounded(high, 2),
    drawnShare: rounded(drawnShare, 2),
  }
}

/** The mean of the players' own changes, of those who played before and after; players, not blocks, are independent. */
function groupChange(players: readonly PlayerReport[]) {
  const changes = players.flatMap(({ change, choices }) =>
    change?.pins == null ? [] : [{ value: change.pins, weight: choices }],
  )
  if (players.every(({ change }) => change === null)) return null
  const { mean, low, high } = estimateOf(changes)
  return {
    players: changes.length,
    pins: changes.length === 0 ? null : rounded(mean, 2),
    low: low === null ? null : rounded(low, 2),
    high: high === null ? null : rounded(high, 2),
  }
}

const sum = (values: readonly number[]): number => values.reduce((all, value) => all + value, 0)
