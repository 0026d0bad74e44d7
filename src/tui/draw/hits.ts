/** What of a screen can be clicked. */
export type Hit =
  | { readonly kind: 'entry'; readonly place: number }
  | { readonly kind: 'field'; readonly place: number }
  | { readonly kind: 'tab'; readonly place: number }
  /** A row of the lane, whose first column is `left` and which has so many. */
  | { readonly kind: 'lane'; readonly board: number; readonly left: number; readonly columns: number }

export interface HitArea {
  readonly hit: Hit
  readonly row: number
  readonly from: number
  readonly to: number
}

const KINDS = ['entry', 'field', 'tab', 'lane'] as const
// A style no terminal knows, which takes no room in a row and is taken out before the row is drawn: 98 and then digits.
const END = '\u001B[989m'
// biome-ignore lint/suspicious/noControlCharactersInRegex: style sequences start with a control character
const MARK = /\u001B\[98(\d)(\d{3})(\d{3})(\d{3})m|\u001B\[989m/g
// biome-ignore lint/suspicious/noControlCharactersInRegex: as above
const STYLE = /\u001B\[[0-9;]*m/g

/** Text that can be clicked. */
export function clickable(text: string, hit: Hit): string {
  const digits = (figure: number) => String(figure).padStart(3, '0')
  const figures = hit.kind === 'lane' ? [hit.board, hit.left, hit.columns] : [hit.place, 0, 0]
  return `\u001B[98${KINDS.indexOf(hit.kind)}${figures.map(digits).join('')}m${text}${END}`
}

/** Finished rows without their marks, and where what can be clicked stands. */
export function takeHits(rows: readonly string[]): { readonly rows: string[]; readonly areas: HitArea[] } {
  const areas: HitArea[] = []
  const bare = rows.map((text, row) => {
    if (!text.includes('\u001B[98')) return text
    let open: { hit: Hit; from: number } | null = null
    for (const match of text.matchAll(MARK)) {
      const at = text.slice(0, match.index).replace(STYLE, '').length
      if (open) areas.push({ ...open, row, to: at })
      open = match[1] === undefined ? null : { hit: hitOf(match), from: at }
    }
    if (open) areas.push({ ...open, row, to: Number.POSITIVE_INFINITY })
    return text.replace(MARK, '')
  })
  return { rows: bare, areas }
}

function hitOf([, kind, ...figures]: RegExpMatchArray): Hit {
  const [first = 0, second = 0, third = 0] = figures.map(Number)
  const name = KINDS[Number(kind)]!
  return name === 'lane' ? { kind: name, board: first, left: second, columns: third } : { kind: name, place: first }
}

/** What stands at a place of the screen, counted from 0; null where nothing can be clicked. */
export const areaAt = (areas: readonly HitArea[], column: number, row: number): HitArea | null =>
  areas.find((area) => area.row === row && column >= area.from && column < area.to) ?? null
