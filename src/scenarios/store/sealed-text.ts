import { createHash } from 'node:crypto'

const HEAD = /^\{"format":"([a-z-]+)","version":(\d+),"digest":"([0-9a-f]{64})","kept":/

/** Figures worked out before, as JSON with a digest of them, so that what was changed since is worked out anew and not believed. */
export function sealedText(format: string, version: number, kept: string): string {
  return `{"format":"${format}","version":${version},"digest":"${digestOf(kept)}","kept":${kept}}\n`
}

/** What was sealed; null where the text is of another kind or version, or was changed. */
export function unsealed(format: string, version: number, text: string): string | null {
  const head = HEAD.exec(text)
  if (head?.[1] !== format || Number(head[2]) !== version) return null
  const kept = text.slice(head[0].length, -2)
  return digestOf(kept) === head[3] && text.endsWith('}\n') ? kept : null
}

const digestOf = (text: string): string => createHash('sha256').update(text).digest('hex')
