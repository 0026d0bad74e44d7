/** Attributes that each closing parameter ends (ECMA-48, SGR). */
const CLOSES: Readonly<Record<string, readonly string[]>> = {
  '22': ['1', '2'],
  '23': ['3'],
  '24': ['4'],
  '25': ['5'],
  '27': ['7'],
  '28': ['8'],
  '29': ['9'],
}
const ATTRIBUTE = /^[1-9]$/
const FOREGROUND = /^(3[0-8]|9[0-7])/
const BACKGROUND = /^(4[0-8]|10[0-7])/
/** An underline, an inversion or a line through it shows on a blank cell, in the colour of the ink. */
const INK_ON_BLANK = /^[479]$/

const known = new Map<string, string>()
/** No program sends more styles than this by design; a stream of random ones must not grow without end. */
const MOST_KNOWN = 4096

/**
 * A style after a select-graphic-rendition sequence. Styles are written as the parameters that bring them about from
 * nothing, in a fixed order, so that like styles are equal strings; the plain one is empty.
 */
export function styleAfter(style: string, parameters: string): string {
  const key = `${style}|${parameters}`
  let after = known.get(key)
  if (after === undefined) {
    if (known.size >= MOST_KNOWN) known.clear()
    after = parts(parameters)
      .reduce(apply, style === '' ? [] : parts(style))
      .join(';')
    known.set(key, after)
  }
  return after
}

/** The style as far as it shows on a cell without a glyph. */
export function styleOfBlank(style: string): string {
  if (style === '') return style
  const key = `${style}|blank`
  let shown = known.get(key)
  if (shown === undefined) {
    const all = parts(style)
    shown = all.some((part) => INK_ON_BLANK.test(part)) ? style : all.filter((part) => BACKGROUND.test(part)).join(';')
    known.set(key, shown)
  }
  return shown
}

/** The sequence that leads from one style to another; empty where they are alike. */
export function change(from: string, to: string): string {
  if (from === to) return ''
  const key = `${from}>${to}`
  let sequence = known.get(key)
  if (sequence === undefined) {
    const had = from === '' ? [] : parts(from)
    const wanted = to === '' ? [] : parts(to)
    const isMore = had.every((part) => wanted.includes(part))
    const sent = isMore ? wanted.filter((part) => !had.includes(part)) : ['', ...wanted]
    sequence = `\u001B[${sent.join(';')}m`
    known.set(key, sequence)
  }
  return sequence
}

/** Parameters one by one, a colour's numbers together. */
function parts(parameters: string): string[] {
  const numbers = parameters === '' ? ['0'] : parameters.split(';').map((number) => number || '0')
  const found: string[] = []
  for (let place = 0; place < numbers.length; place++) {
    const isColour = numbers[place] === '38' || numbers[place] === '48'
    const length = !isColour ? 1 : numbers[place + 1] === '2' ? 5 : 3
    found.push(numbers.slice(place, place + length).join(';'))
    place += length - 1
  }
  return found
}

function apply(style: readonly string[], part: string): string[] {
  if (part === '0') return []
  if (part === '39') return style.filter((one) => !FOREGROUND.test(one))
  if (part === '49') return style.filter((one) => !BACKGROUND.test(one))
  const closed = CLOSES[part]
  if (closed) return style.filter((one) => !closed.includes(one))
  const same = ATTRIBUTE.test(part)
    ? (one: string) => one === part
    : FOREGROUND.test(part)
      ? (one: string) => FOREGROUND.test(one)
      : BACKGROUND.test(part)
        ? (one: string) => BACKGROUND.test(one)
        : null
  if (!same) return [...style]
  return [...style.filter((one) => !same(one)), part].sort()
}
