import type { z } from 'zod'
import { nearestOf } from './nearest.js'
import type { LocatedData } from './source-text.js'

/** Marks an issue whose message is a whole sentence and not just what is allowed. */
const WHOLE_SENTENCE = { wholeSentence: true }

/** An issue that says for itself what is wrong, such as a ball outside the rules. */
export function sentenceIssue(path: PropertyKey[], message: string) {
  return { code: 'custom' as const, path, message, params: WHOLE_SENTENCE, input: undefined }
}

/** Every issue as `place field: what was found; allowed is ...`, in the order of the file. */
export function problemSentences(source: LocatedData, issues: readonly z.core.$ZodIssue[]): string[] {
  return issues
    .flatMap((issue) => problemsOf(source, issue))
    .sort((a, b) => a.offset - b.offset)
    .map((problem) => problem.sentence)
}

interface Problem {
  readonly offset: number
  readonly sentence: string
}

function problemsOf(source: LocatedData, issue: z.core.$ZodIssue): Problem[] {
  if (issue.code === 'unrecognized_keys') {
    return issue.keys.map((key) => problemAt(source, [...issue.path, key], 'name', noSuchField(key, issue.message)))
  }
  if (issue.code === 'custom' && issue.params?.wholeSentence === true) {
    return [problemAt(source, issue.path, 'value', issue.message)]
  }
  const value = valueAt(source.data, issue.path)
  const found = value === undefined ? 'missing' : `found ${show(value)}`
  return [problemAt(source, issue.path, 'value', `${found}; allowed is ${issue.message}.`)]
}

function noSuchField(key: string, allowed: string): string {
  const [near] = nearestOf(key, allowed.replace(/^one of the fields /, '').split(', '))
  return `there is no such field; allowed is ${allowed}${near === undefined ? '' : `; nearest is ${near}`}.`
}

function problemAt(
  source: LocatedData,
  path: readonly PropertyKey[],
  part: 'value' | 'name',
  sentence: string,
): Problem {
  const { text, offset } = source.place(path, part)
  return { offset, sentence: `${text} ${fieldName(path)}: ${sentence}` }
}

/** A path in words: lists are counted from 1, as people count lanes and balls. */
function fieldName(path: readonly PropertyKey[]): string {
  if (path.length === 0) return 'the whole file'
  return path
    .map((step) => (typeof step === 'number' ? ` ${step + 1}` : ` > ${String(step)}`))
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
  const text = JSON.stringify(value) ?? String(value)
  return text.length > 60 ? `${text.slice(0, 57)}...` : text
}
