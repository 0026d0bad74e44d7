import { createHash } from 'node:crypto'
import { readFile } from 'node:fs/promises'
import { join } from 'node:path'
import { z } from 'zod'
import type { BowlerAverage } from '../../sim/analysis/explore/bowler-average.js'
import type { Comparison } from '../../sim/analysis/explore/same-luck.js'
import type { Scenario } from '../files/scenario/scenario.js'
import { replaceFile } from '../files/text/replace-file.js'
import { GRADE_REVISION } from './grade-revision.js'
import { carryTableHash, scenarioHash } from './hashes.js'
import { modelFingerprint } from './model-fingerprint.js'
import { sealedText, unsealed } from './sealed-text.js'
import { VERSION } from './version.js'

/** A kind of figures that took long to work out and depend on a scenario and a few words alone. */
interface Kind<Figures> {
  readonly format: string
  readonly ending: string
  readonly schema: z.ZodType<Figures>
}

const block = z.strictObject({
  games: z.array(z.array(z.array(z.int().min(0).max(10)).max(3)).max(10)),
  lostPins: z.number().min(0),
})

/** What others score on a block's luck; asked for by its seed. */
export const COMPARISONS: Kind<Comparison> = {
  format: 'dryboard-comparison',
  ending: 'comparison',
  schema: z.strictObject({ thumb: block, fair: block, known: block }),
}

/** What a scenario's bowler averages; asked for by the number of games. */
export const AVERAGES: Kind<BowlerAverage> = {
  format: 'dryboard-average',
  ending: 'average',
  schema: z.strictObject({
    games: z.int().min(1),
    mean: z.number().min(0).max(300),
    halfWidth: z.number().min(0).nullable(),
  }),
}

const FORMAT_VERSION = 1

/** Named by all they come from, so that figures of another model or another way of choosing are not found any more. */
function pathOf<Figures>(folder: string, kind: Kind<Figures>, { data }: Scenario, asked: string): string {
  const made = [VERSION, GRADE_REVISION, modelFingerprint(), carryTableHash(), scenarioHash(data), asked].join('\n')
  return join(folder, `${createHash('sha256').update(made).digest('hex').slice(0, 32)}.${kind.ending}.json`)
}

/** Keeps figures among the debriefs, where they can be thrown away. @throws WriteError */
export async function keepFigures<Figures>(
  folder: string,
  kind: Kind<Figures>,
  of: { readonly scenario: Scenario; readonly asked: string },
  figures: Figures,
): Promise<void> {
  const text = sealedText(kind.format, FORMAT_VERSION, JSON.stringify(figures))
  await replaceFile(pathOf(folder, kind, of.scenario, of.asked), text)
}

/** Figures as kept; null where there are none that fit, which can always be worked out anew. */
export async function readFigures<Figures>(
  folder: string,
  kind: Kind<Figures>,
  of: { readonly scenario: Scenario; readonly asked: string },
): Promise<Figures | null> {
  try {
    const file = await readFile(pathOf(folder, kind, of.scenario, of.asked), 'utf8')
    const text = unsealed(kind.format, FORMAT_VERSION, file)
    const checked = text === null ? null : kind.schema.safeParse(JSON.parse(text))
    return checked?.success ? checked.data : null
  } catch {
    return null
  }
}
