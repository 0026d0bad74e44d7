import type { z } from 'zod'
import { nearestOf } from '../text/nearest.js'
import { sentenceIssue } from '../text/problems.js'

/** The fields that are held against each other, as far as they are what they should be. */
interface Written {
  readonly bag?: unknown
  readonly fieldBag?: unknown
  readonly field?: unknown
  readonly takeBalls?: unknown
  readonly fieldFramesBefore?: unknown
}

/**
 * What no field can know alone: balls that are thrown must be there, no two of one name, and what is left to choose must be a choice.
 * It looks at files with other faults too, so that every fault is told at once; so it trusts nothing to be well formed.
 */
export function checkAcross(scenario: Written, context: z.core.$RefinementCtx): void {
  const bag = idsOf(scenario.bag)
  const fieldBag = idsOf(scenario.fieldBag ?? [])
  if (bag && fieldBag) {
    fieldBag.forEach((id, index) => {
      if (bag.includes(id)) {
        context.addIssue(sentenceIssue(['fieldBag', index, 'id'], `The bag already has a ball called ${id}.`))
      }
    })
    checkThrown(scenario.field, [...bag, ...fieldBag], context)
  }
  const { takeBalls, fieldFramesBefore, field } = scenario
  if (bag && typeof takeBalls === 'number' && takeBalls >= bag.length) {
    const sentence = `A bag of ${bag.length} leaves no choice of ${takeBalls}; leave takeBalls out.`
    context.addIssue(sentenceIssue(['takeBalls'], sentence))
  }
  const nobody = field === undefined || (Array.isArray(field) && field.length === 0)
  if (typeof fieldFramesBefore === 'number' && fieldFramesBefore > 0 && nobody) {
    context.addIssue(sentenceIssue(['fieldFramesBefore'], 'There is no field that could have bowled before.'))
  }
}

function checkThrown(field: unknown, ids: readonly string[], context: z.core.$RefinementCtx): void {
  if (!Array.isArray(field)) return
  field.forEach((other: unknown, index) => {
    const { ball } = (other ?? {}) as { readonly ball?: unknown }
    if (typeof ball !== 'string' || ids.includes(ball)) return
    const [near] = nearestOf(ball, ids)
    const hint = near === undefined ? '' : `; nearest is ${near}`
    const sentence = `There is no ball "${ball}" in bag or fieldBag; they hold ${ids.join(', ')}${hint}.`
    context.addIssue(sentenceIssue(['field', index, 'ball'], sentence))
  })
}

/** The balls' ids; null where the list is not one of balls with ids. */
function idsOf(balls: unknown): string[] | null {
  if (!Array.isArray(balls)) return null
  const ids = balls.map((ball: unknown) => ((ball ?? {}) as { readonly id?: unknown }).id)
  return ids.every((id) => typeof id === 'string') ? (ids as string[]) : null
}
