/** What a terminal in bracketed paste mode sends around pasted text. */
export const PASTE_START = '\u001B[200~'
const PASTE_END = '\u001B[201~'

/** Of a longer paste the rest is left out; no line that can be pasted into holds as much. */
const LONGEST_KEPT = 1 << 16

/** A paste whose end has not come yet, however long it is. */
export interface ComingPaste {
  /** What was pasted once its end has come, and what was typed after it; null while it goes on. */
  take(chunk: string): { readonly text: string; readonly typed: string } | null
}

/** A paste of which only the mark at its beginning has been read. */
export function comingPaste(): ComingPaste {
  let text = ''
  /** The end of what came, which may be the beginning of the mark at the end. */
  let tail = ''
  const keep = (more: string) => {
    text = (text + more).slice(0, LONGEST_KEPT)
  }
  return {
    take(chunk) {
      const came = tail + chunk
      const end = came.indexOf(PASTE_END)
      const sure = end < 0 ? Math.max(0, came.length - PASTE_END.length + 1) : end
      keep(came.slice(0, sure))
      tail = came.slice(sure)
      return end < 0 ? null : { text, typed: came.slice(end + PASTE_END.length) }
    },
  }
}
