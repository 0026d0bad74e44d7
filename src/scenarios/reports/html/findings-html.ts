import { escaped } from './escaped.js'

interface Finding {
  readonly words: string
  readonly practise: string
}

/** Findings with what to practise under each. */
export function findingsList(findings: readonly Finding[]): string {
  if (findings.length === 0) return '<p>Nothing that cost enough to name.</p>'
  return `<ul class="findings">${findings
    .map(
      ({ words, practise }) => `<li><p>${escaped(words)}</p><p class="soft">To practise: ${escaped(practise)}</p></li>`,
    )
    .join('')}</ul>`
}

/** What a coach wrote, each at its frame; nothing where nothing was written. */
export function notesList(notes: readonly { game: number; frame: number; text: string }[]): string[] {
  if (notes.length === 0) return []
  const items = notes.map(
    ({ game, frame, text }) =>
      `<li><p class="soft">Game ${game}, frame ${frame}</p>${text
        .split('\n')
        .map((line) => `<p>${escaped(line)}</p>`)
        .join('')}</li>`,
  )
  return ["<h3>The coach's notes</h3>", `<ul class="findings notes">${items.join('')}</ul>`]
}
