import { isMap, isNode, isScalar, LineCounter, parseDocument } from 'yaml'
import { firstSentence, notationFaults } from './notation-faults.js'
import { ScenarioError } from './scenario-error.js'

/** Where something stands: to be printed, and to be sorted by. */
export interface Place {
  /** `name:line:column`, or `name` alone for data that never was a file. */
  readonly text: string
  readonly offset: number
}

/** Data with a way to say where in its file a field's value, or its name, stands. */
export interface LocatedData {
  readonly data: unknown
  readonly place: (path: readonly PropertyKey[], part: 'value' | 'name') => Place
}

/** Data that was never written in a file, such as a built-in scenario or the one inside a record. */
export function locateNowhere(name: string, data: unknown): LocatedData {
  return { data, place: () => ({ text: name, offset: 0 }) }
}

/**
 * Reads YAML, or JSON, which YAML contains.
 *
 * @throws ScenarioError with every fault of the notation: `name:line:column: sentence`.
 */
export function readSourceText(name: string, text: string): LocatedData {
  const lines = new LineCounter()
  const document = parseDocument(text, { lineCounter: lines, prettyErrors: false })
  const at = (offset: number): string => {
    const { line, col } = lines.linePos(offset)
    return `${name}:${line}:${col}`
  }
  if (document.errors.length > 0) {
    throw new ScenarioError(notationFaults(document.errors).map(({ offset, sentence }) => `${at(offset)}: ${sentence}`))
  }
  let data: unknown
  try {
    data = document.toJS({ maxAliasCount: 100 })
  } catch (fault) {
    throw new ScenarioError([`${name}: ${firstSentence(fault instanceof Error ? fault.message : String(fault))}`])
  }
  return {
    data,
    place: (path, part) => {
      const offset = offsetOf(document, path, part)
      return { text: at(offset), offset }
    },
  }
}

/** Where the value at `path`, or its name, begins; or its nearest parent where it is missing. */
function offsetOf(
  document: ReturnType<typeof parseDocument>,
  path: readonly PropertyKey[],
  part: 'value' | 'name',
): number {
  const parent = path.length > 0 ? document.getIn(path.slice(0, -1), true) : undefined
  const last = path.at(-1)
  if (isMap(parent)) {
    const pair = parent.items.find((item) => isScalar(item.key) && item.key.value === last)
    const node = part === 'name' || !isNode(pair?.value) ? pair?.key : pair.value
    if (isNode(node) && node.range) return node.range[0]
  }
  for (let length = path.length; length >= 0; length--) {
    const node = length === 0 ? document.contents : document.getIn(path.slice(0, length), true)
    if (isNode(node) && node.range) return node.range[0]
  }
  return 0
}
