import {
  type Document,
  isMap,
  isNode,
  isScalar,
  isSeq,
  LineCounter,
  type Pair,
  type ParsedNode,
  parseDocument,
  visit,
  type YAMLMap,
} from 'yaml'
import { capped } from './capped.js'
import { firstSentence, type NotationError, notationFaults } from './notation-faults.js'
import { tooMuchToRead } from './notation-size.js'
import { ScenarioError } from './scenario-error.js'
import { type WrongIndent, wrongIndent } from './wrong-indent.js'

/** Where something stands: to be printed, and to be sorted by. */
interface Place {
  /** `name:line:column`, or `name` alone for data that never was a file. */
  readonly text: string
  readonly offset: number
}

/** Data with a way to say where in its file a field's value, or its name, stands. */
export interface LocatedData {
  /** Of the file. */
  readonly name: string
  readonly data: unknown
  readonly place: (path: readonly PropertyKey[], part: 'value' | 'name') => Place
}

/** Data that was never written in a file, such as a built-in scenario or the one inside a record. */
export function locateNowhere(name: string, data: unknown): LocatedData {
  return { name, data, place: () => ({ text: name, offset: 0 }) }
}

/**
 * Reads YAML, or JSON, which YAML contains.
 *
 * @throws ScenarioError with the faults of the notation: `name:line:column: sentence`.
 */
export function readSourceText(name: string, text: string): LocatedData {
  const tooMuch = tooMuchToRead(text)
  if (tooMuch !== null) throw new ScenarioError([`${name}: ${tooMuch}.`])
  const lines = new LineCounter()
  // The parser's own search for names that stand twice takes time with the square of their number.
  const document = parseDocument(text, {
    lineCounter: lines,
    prettyErrors: false,
    uniqueKeys: false,
    logLevel: 'error',
  })
  const at = (offset: number): string => {
    const { line, col } = lines.linePos(offset)
    return `${name}:${line}:${col}`
  }
  const errors = document.errors.length > 0 ? document.errors : repeatedNames(document)
  if (errors.length > 0) {
    const faults = notationFaults(errors)
    const wrong = faults.length > 1 ? wrongIndent(text, lines.linePos(faults[0]!.offset).line) : null
    if (wrong) throw new ScenarioError([`${name}:${wrong.line}:${wrong.found + 1}: ${indentSentence(wrong)}`])
    const sentenceAt = (place: number): string => `${at(faults[place].offset)}: ${faults[place].sentence}`
    throw new ScenarioError(capped(name, faults.length, sentenceAt))
  }
  let data: unknown
  try {
    data = document.toJS({ maxAliasCount: 100 })
  } catch (fault) {
    throw new ScenarioError([`${name}: ${firstSentence(fault instanceof Error ? fault.message : String(fault))}`])
  }
  const offsetOf = offsetsIn(document)
  return {
    name,
    data,
    place: (path, part) => {
      const offset = offsetOf(path, part)
      return { text: at(offset), offset }
    },
  }
}

function indentSentence({ found, fitting }: WrongIndent): string {
  return `This line is not indented like the others of its list or table: found ${spaces(found)}; ${fitting} would fit.`
}

const spaces = (count: number): string => `${count} space${count === 1 ? '' : 's'}`

function repeatedNames(document: Document.Parsed): NotationError[] {
  const found: NotationError[] = []
  visit(document, {
    Map(_, map) {
      const names = new Set<unknown>()
      for (const { key } of map.items) {
        if (!isScalar(key)) continue
        if (names.has(key.value)) found.push({ code: 'DUPLICATE_KEY', message: '', pos: [key.range?.[0] ?? 0, 0] })
        names.add(key.value)
      }
    },
  })
  return found.sort((a, b) => a.pos[0] - b.pos[0])
}

type Pairs = ReadonlyMap<unknown, Pair>

/** Where the value at a path, or its name, begins; or its nearest parent where it is missing. Each table is searched through once. */
function offsetsIn(document: Document.Parsed) {
  const known = new WeakMap<YAMLMap, Pairs>()
  const pairsOf = (map: YAMLMap): Pairs => {
    let pairs = known.get(map)
    if (!pairs) {
      pairs = new Map(map.items.map((pair) => [isScalar(pair.key) ? pair.key.value : pair.key, pair]))
      known.set(map, pairs)
    }
    return pairs
  }
  const root: ParsedNode | null = document.contents
  return (path: readonly PropertyKey[], part: 'value' | 'name'): number => {
    let node: unknown = root
    let offset = root?.range[0] ?? 0
    for (const [depth, step] of path.entries()) {
      const pair = isMap(node) ? pairsOf(node).get(step) : undefined
      const wantsName = part === 'name' && depth === path.length - 1
      const value = pair ? pair.value : isSeq(node) ? node.items[Number(step)] : undefined
      const shown = pair && (wantsName || !isNode(value)) ? pair.key : value
      if (!isNode(shown) || !shown.range) return offset
      offset = shown.range[0]
      node = value
    }
    return offset
  }
}
