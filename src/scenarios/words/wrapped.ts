const WIDTH = 100

/** Text broken between words into lines of at most 100 characters, the later ones indented like the first one's text. */
export function wrapped(text: string, first = '', later = ' '.repeat(first.length)): string[] {
  const lines: string[] = []
  let line = first
  for (const word of text.split(' ')) {
    const isEmpty = line === (lines.length === 0 ? first : later)
    if (!isEmpty && line.length + 1 + word.length > WIDTH) {
      lines.push(line)
      line = later + word
    } else line += isEmpty ? word : ` ${word}`
  }
  return [...lines, line]
}
