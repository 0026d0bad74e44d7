import type { z } from 'zod'
import { capped, quotable } from './capped.js'
import { nearestOf } from './nearest.js'
import type { LocatedData } from './source-text.js'

/** Marks an issue whose message is a whole sentence and not just what is allowed. */
const WHOLE_SENTENCE = { wholeSentence: true }

/** An issue that says for itself what is wrong, such as a ball outside the rules. */
export function sentenceIssue(path: PropertyKey[], message: string) {
  return { code: 'custom' as const, path, message, params: WHOLE_SENTENCE, input: undefined }
}

/** The issues as `place field: what was found; allowed is ...`, in the order of the file; beyond a few only how many there are. */
export function problemSentences(source: LocatedData, issues: readonly z.core.$ZodIssue[]): string[] {
  const problems = issues.flatMap((issue) => problemsOf(source, issue)).sort((a, b) => a.offset - b.offset)
  return capped(source.name, problems.length, (place) => problems[place].sentence())
}

/** A fault that is worded once it is to be told. */
interface Problem {
  readonly offset: number
  readonly sentence: () => string
}

function problemsOf(source: LocatedData, issue: z.core.$ZodIssue): Problem[] {
  if (issue.code === 'unrecognized_keys') {
    return issue.keys.map((key) =>
      problemAt(source, [...issue.path, key], 'name', () => noSuchField(key, issue.message)),
    )
  }
  if (issue.code === 'custom' && issue.params?.wholeSentence === true) {
    return [problemAt(source, issue.path, 'value', () => issue.message)]
  }
  const wrongValue = (): string => {
    const value = valueAt(source.data, issue.path)
    const found = value === undefined ? 'missing' : `found ${show(value)}`
    return `${found}; allowed is ${issue.message}.`
  }
  return [problemAt(source, issue.path, 'value', wrongValue)]
}

function noSuchField(key: string, allowed: string): string {
  const [near] = nearestOf(quotable(key), allowed.replace(/^one of the fields /, '').split(', '))
  return `there is no such field; allowed is ${allowed}${near === undefined ? '' : `; nearest is ${near}`}.`
}

function problemAt(
  source: LocatedData,
  path: readonly PropertyKey[],
  part: 'value' | 'name',
  words: () => string,
): Problem {
  const { text, offset } = source.place(path, part)
  return { offset, sentence: () => `${text} ${fieldName(path)}: ${words()}` }
}

/** A path in words: lists are counted from 1, as people count lanes and balls. */
function fieldName(path: readonly PropertyKey[]): string {
  if (path.length === 0) return 'the whole file'
  return path
    .map((step) => (typeof step === 'number' ? ` ${step + 1}` : ` > ${quotable(String(step))}`))
    .join('')
    .replace(/^[ >]+/, '')
}

function valueAt(data: unknown, path: readonly PropertyKey[]): unknown {
  let value = data
  for (const step of path) {
    if (typeof value !== 'object' || value === null) return undefined
    value = (value as Record<PropertyKey, unknown>)[step]
  }
  return value
}

function show(value: unknown): string {
  return quotable(JSON.stringify(value) ?? String(value))
}
