import { escaped } from './escaped.js'

interface Finding {
  /** Where it is, where that is not plain from the page. */
  readonly place?: string
  readonly words: string
  readonly practise: string
}

/** Findings, numbered, with what to practise under each. */
export function findingsList(findings: readonly Finding[]): string {
  if (findings.length === 0) return '<p>Nothing that cost enough to name.</p>'
  return `<ol class="findings">${findings
    .map(
      ({ place, words, practise }) =>
        `<li>${place === undefined ? '' : `<p class="soft">${escaped(place)}</p>`}<p>${escaped(words)}</p><p class="soft">To practise: ${escaped(practise)}</p></li>`,
    )
    .join('')}</ol>`
}

interface ToldNote {
  readonly game: number
  readonly frame: number
  readonly text: string
}

/** What a coach wrote, each at its frame, under a heading; nothing where nothing was written. */
export function notesList(notes: readonly ToldNote[], heading: 'h2' | 'h3'): string[] {
  if (notes.length === 0) return []
  const items = notes.map(
    ({ game, frame, text }) =>
      `<li><p class="soft">Game ${game}, frame ${frame}</p>${text
        .split('\n')
        .map((line) => `<p>${escaped(line)}</p>`)
        .join('')}</li>`,
  )
  return [`<${heading}>The coach's notes</${heading}>`, `<ul class="findings notes">${items.join('')}</ul>`]
}
