import { escaped } from './escaped.js'
import { PAGE_STYLE } from './page-style.js'

/**
 * A page that needs nothing else: no script, no font, no picture from elsewhere.
 *
 * @param kind of page, where it prints otherwise than others
 */
export function htmlPage(title: string, body: readonly string[], kind: 'group' | '' = ''): string {
  const head = `<meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1"><title>${escaped(title)}</title><style>${PAGE_STYLE}</style>`
  return `<!doctype html>\n<html lang="en"><head>${head}</head>\n<body><main${kind && ` class="${kind}"`}>\n${body.join('\n')}\n</main></body></html>\n`
}

/** What is always said where a report advises on throwing. */
export function cautionsBox(cautions: readonly string[]): string[] {
  if (cautions.length === 0) return []
  return [
    `<section class="cautions" aria-label="Cautions">${cautions.map((words) => `<p class="soft">${escaped(words)}</p>`).join('')}</section>`,
  ]
}

/** One figure with what it is, large. */
export function tile(what: string, figure: string, more = ''): string {
  return `<div><dt>${escaped(what)}</dt><dd>${escaped(figure)}${more && `<small>${escaped(more)}</small>`}</dd></div>`
}

export const tiles = (all: readonly string[]): string => `<dl class="tiles">${all.join('')}</dl>`

/** A table that may be wider than the page, and is then scrolled by hand or by keyboard; cells are HTML already. */
export function tableOf(name: string, heads: readonly string[], rows: readonly (readonly string[])[]): string {
  return scrolled(
    name,
    `<table><thead><tr>${heads.join('')}</tr></thead><tbody>${rows
      .map((cells) => `<tr>${cells.join('')}</tr>`)
      .join('')}</tbody></table>`,
  )
}

/** What may be wider than the page, in a region that the keyboard reaches. */
const scrolled = (name: string, content: string): string =>
  `<div class="scroll" role="region" tabindex="0" aria-label="${escaped(name)}">${content}</div>`

export const cell = (text: string, name = ''): string => `<td${name && ` class="${name}"`}>${escaped(text)}</td>`
export const head = (text: string, name = ''): string =>
  `<th scope="col"${name && ` class="${name}"`}>${escaped(text)}</th>`
export const rowHead = (text: string, name = ''): string =>
  `<th scope="row"${name && ` class="${name}"`}>${escaped(text)}</th>`
