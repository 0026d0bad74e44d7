import fc from 'fast-check'

type Json = null | boolean | number | string | readonly Json[] | { readonly [name: string]: Json }
type Step = string | number

/** Every place in a piece of data that a slip of the pen could touch. */
function placesIn(value: Json, path: readonly Step[] = []): (readonly Step[])[] {
  if (typeof value !== 'object' || value === null) return [path]
  const inside = Array.isArray(value)
    ? value.flatMap((one, index) => placesIn(one, [...path, index]))
    : Object.entries(value).flatMap(([name, one]) => placesIn(one as Json, [...path, name]))
  return path.length === 0 ? inside : [path, ...inside]
}

const slip = fc.oneof(
  fc.constant({ kind: 'delete' as const }),
  fc.jsonValue({ maxDepth: 2 }).map((value) => ({ kind: 'replace' as const, value: value as Json })),
  fc.oneof(fc.integer({ min: -50, max: 5000 }), fc.double({ noNaN: true, noDefaultInfinity: true })).map((value) => ({
    kind: 'replace' as const,
    value: value as Json,
  })),
  fc.string({ maxLength: 12 }).map((name) => ({ kind: 'add' as const, name })),
  fc.constant({ kind: 'double' as const }),
)

/** The data with one to three slips in it: fields lost, replaced, added under other names, list items doubled. */
export function mutated(data: unknown): fc.Arbitrary<Json> {
  const base = JSON.parse(JSON.stringify(data)) as Json
  const places = placesIn(base)
  const one = fc.tuple(fc.nat({ max: places.length - 1 }), slip)
  return fc.array(one, { minLength: 1, maxLength: 3 }).map((slips) => {
    const copy = JSON.parse(JSON.stringify(base)) as Json
    for (const [place, what] of slips) apply(copy, places[place]!, what)
    return copy
  })
}

type Slip = typeof slip extends fc.Arbitrary<infer One> ? One : never

function apply(data: Json, path: readonly Step[], what: Slip): void {
  let parent: unknown = data
  for (const step of path.slice(0, -1)) {
    parent = (parent as Record<Step, unknown> | undefined)?.[step]
    if (typeof parent !== 'object' || parent === null) return
  }
  const holder = parent as Record<Step, unknown>
  const last = path[path.length - 1]!
  if (what.kind === 'delete') {
    if (Array.isArray(holder)) holder.splice(Number(last), 1)
    else delete holder[last]
  } else if (what.kind === 'replace') holder[last] = what.value
  else if (what.kind === 'add') {
    const into =
      typeof holder[last] === 'object' && holder[last] !== null ? (holder[last] as Record<string, unknown>) : holder
    if (Array.isArray(into)) into.push(what.name)
    else if (what.name !== '__proto__') into[what.name] = 1
  } else if (Array.isArray(holder)) holder.push(holder[Number(last)])
}

/** A text with a piece cut out, doubled or overwritten, or cut short. */
export function mangled(text: string): fc.Arbitrary<string> {
  const place = fc.nat({ max: text.length })
  return fc
    .tuple(
      place,
      fc.nat({ max: 40 }),
      fc.constantFrom('cut', 'end', 'double', 'write'),
      fc.string({ unit: 'binary', maxLength: 6 }),
    )
    .map(([at, length, how, written]) => {
      const piece = text.slice(at, at + length)
      if (how === 'end') return text.slice(0, at)
      const middle = { cut: '', double: piece + piece, write: written }[how as 'cut' | 'double' | 'write']
      return text.slice(0, at) + middle + text.slice(at + length)
    })
}
