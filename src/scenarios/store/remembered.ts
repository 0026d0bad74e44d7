import { SKILLS, type Skill } from '../../sim/analysis/debrief/findings/skills.js'
import { textAt } from '../files/text/text-at.js'
import { builtInNames } from '../library/library.js'
import { readNotes } from './block-notes.js'
import { summaryOfRecord } from './block-summary.js'
import { debriefsFolder, saidWithRecord } from './data-folder.js'
import type { PastBlock } from './past-blocks.js'
import { readRecord } from './record.js'

/** A skill over the latest blocks. */
export interface SkillHistory {
  readonly skill: Skill
  /** Pins a game, block by block, the latest last. */
  readonly costs: readonly number[]
  readonly mean: number
}

/** What the first screen tells of the blocks bowled before. */
export interface Remembered {
  /** Cost a game of each of the latest blocks that is priced whole, the latest last. */
  readonly costs: readonly number[]
  /** Skills that cost anything in those whose account is worked out, the dearest first. */
  readonly skills: readonly SkillHistory[]
  /** Latest blocks not priced yet. */
  readonly unpriced: number
  readonly lanesMet: number
  readonly lanesOfAll: number
  /** How often called reactions came, against how often they would have, had the player been right as often as sure; null without calls. */
  readonly calls: { readonly count: number; readonly right: number; readonly claimed: number } | null
}

const LATEST = 10
/** A block that was ended sooner tells too little of a game. */
const LEAST_FRAMES = 5
const FRAMES_A_GAME = 10

/** What there is to remember of the player's own blocks, latest first in the list. Nothing is graded for it: what is not priced is only counted. */
export async function rememberedOf(data: string, past: readonly PastBlock[]): Promise<Remembered> {
  const own = past.filter(({ isOwn }) => isOwn)
  const latest = own.filter(({ frames, kind }) => kind !== 'drill' && frames >= LEAST_FRAMES).slice(0, LATEST)
  const told = (await Promise.all(latest.map((block) => tellOf(data, block)))).reverse()
  const whole = told.flatMap(({ costPins, frames }) => (costPins === null ? [] : [aGame(costPins, frames)]))
  const called = told.flatMap(({ calls }) => calls)
  const names = new Set(own.map(({ name }) => name))
  return {
    costs: whole,
    skills: historiesOf(told),
    unpriced: told.filter(({ costPins }) => costPins === null).length,
    lanesMet: builtInNames().filter((name) => names.has(name)).length,
    lanesOfAll: builtInNames().length,
    calls:
      called.length === 0
        ? null
        : {
            count: called.length,
            right: called.filter(({ right }) => right).length,
            claimed: called.reduce((sum, { sure }) => sum + sure, 0),
          },
  }
}

interface Told {
  readonly frames: number
  readonly costPins: number | null
  readonly skillPins: Readonly<Partial<Record<Skill, number>>> | null
  readonly calls: readonly { readonly sure: number; readonly right: boolean }[]
}

async function tellOf(data: string, { path, frames }: PastBlock): Promise<Told> {
  try {
    const summary = await summaryOfRecord(debriefsFolder(data), await readRecord(path))
    const said = await textAt(saidWithRecord(data, path)).catch(() => null)
    const contacts = summary?.contacts ?? []
    const calls = (said === null ? null : readNotes(said))?.calls ?? []
    return {
      frames,
      costPins: summary?.costPins ?? null,
      skillPins: summary?.skillPins ?? null,
      calls: calls.flatMap((call, index) => {
        const came = contacts[index]
        if (!call || came === undefined) return []
        return [{ sure: call.confidencePercent / 100, right: came === call.contact }]
      }),
    }
  } catch {
    // A record that cannot be read is told of where it is opened.
    return { frames, costPins: null, skillPins: null, calls: [] }
  }
}

function historiesOf(told: readonly Told[]): SkillHistory[] {
  const worked = told.flatMap(({ skillPins, frames }) => (skillPins ? [{ skillPins, frames }] : []))
  if (worked.length === 0) return []
  return SKILLS.map((skill) => {
    const costs = worked.map(({ skillPins, frames }) => aGame(skillPins[skill] ?? 0, frames))
    return { skill, costs, mean: costs.reduce((sum, pins) => sum + pins, 0) / costs.length }
  })
    .filter(({ mean }) => mean > 0)
    .sort((a, b) => b.mean - a.mean)
}

const aGame = (pins: number, frames: number): number => (pins * FRAMES_A_GAME) / frames
