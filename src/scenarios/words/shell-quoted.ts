/** An argument as a POSIX shell takes it for one word. */
export function shellQuoted(text: string): string {
  return /^[\w./:@%+=-]+$/.test(text) ? text : `'${text.replaceAll("'", "'\\''")}'`
}
