import type { Answer, Position } from '../../sim/analysis/practice/position.js'

export type TypedAnswer =
  | { readonly kind: 'answer'; readonly answer: Answer; readonly sureShare: number | null }
  | { readonly kind: 'quit' }
  | { readonly kind: 'help' }
  | { readonly kind: 'bag' }
  | { readonly kind: 'unclear'; readonly sentence: string }

const WORDS: ReadonlyMap<string, 'quit' | 'help' | 'bag'> = new Map([
  ['q', 'quit'],
  ['quit', 'quit'],
  ['?', 'help'],
  ['help', 'help'],
  ['bag', 'bag'],
])

const unclear = (sentence: string): TypedAnswer => ({ kind: 'unclear', sentence })
const answered = (answer: Answer, sureShare: number | null = null): TypedAnswer => ({
  kind: 'answer',
  answer,
  sureShare,
})

/** Reads one typed line as the answer to a position. */
export function readPracticeAnswer(typed: string, position: Position): TypedAnswer {
  const words = typed.trim().toLowerCase().replaceAll(/[,%]/g, ' ').split(/\s+/).filter(Boolean)
  const asked = words.length === 1 ? WORDS.get(words[0]!) : undefined
  if (asked) return { kind: asked }
  const figures = words.filter((word) => word !== 'to').map(Number)
  if (figures.length === 0 || figures.some((figure) => !Number.isFinite(figure))) {
    return unclear(`"${typed.trim()}" is no answer to this; say figures, or ? for help.`)
  }
  switch (position.kind) {
    case 'decide':
      return choice(figures, position.answers.length)
    case 'throw-or-lane': {
      const [share] = figures
      if (figures.length !== 1 || share! < 0 || share! > 100)
        return unclear('Say one figure from 0 to 100: how much was the delivery.')
      return answered({ kind: 'share', share: share! / 100 })
    }
    case 'call':
      return interval(figures, [1, 39], 'boards from 1 to 39')
    case 'read':
      if (position.question === 'shape' || position.question === 'length') return shares(figures)
      return interval(figures, [0, 200], 'figures from 0 to 200')
  }
}

function choice([place, sure, ...more]: readonly number[], count: number): TypedAnswer {
  if (more.length > 0 || !Number.isInteger(place) || place! < 1 || place! > count) {
    return unclear(`Say one of 1 to ${count} and, if you like, how sure you are.`)
  }
  if (sure !== undefined && !(sure >= 50 && sure <= 100)) return unclear('How sure is from 50 to 100 per cent.')
  return answered({ kind: 'choice', place: place! - 1 }, sure === undefined ? null : sure / 100)
}

function interval(figures: readonly number[], [least, most]: readonly [number, number], allowed: string): TypedAnswer {
  const [low, high] = figures
  if (figures.length !== 2 || low! > high! || low! < least || high! > most)
    return unclear(`Say two ${allowed}, the smaller first.`)
  return answered({ kind: 'interval', low: low!, high: high! })
}

function shares(figures: readonly number[]): TypedAnswer {
  const sum = figures.reduce((all, one) => all + one, 0)
  if (figures.length !== 3 || figures.some((one) => one < 0) || Math.abs(sum - 100) > 1) {
    return unclear('Say three shares from 0 to 100 that add up to 100.')
  }
  return answered({ kind: 'shares', shares: figures.map((one) => one / sum) })
}
