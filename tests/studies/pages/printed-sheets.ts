import { inflateSync } from 'node:zlib'

/** Sheets of a print, and those of them on which nothing is written. */
export interface PrintedSheets {
  readonly count: number
  readonly empty: number
}

const OBJECT = /(\d+) 0 obj\r?\n?([\s\S]*?)endobj/g
const STREAM = /stream\r?\n([\s\S]*?)\r?\nendstream/
/** Operators that show text: ISO 32000-1, 9.4.3, table 109. */
const TEXT_SHOWN = /\bT[jJ]\b/

/**
 * Looks through a PDF whose page objects are plain, as those of Chromium are (ISO 32000-1, 7.7.3.3: a page's `Contents` is the stream
 * with its marks).
 *
 * @throws Error where no page is found
 */
export function printedSheets(pdf: Buffer): PrintedSheets {
  const objects = new Map([...pdf.toString('latin1').matchAll(OBJECT)].map(([, number, body]) => [number!, body!]))
  const pages = [...objects.values()].filter((body) => /\/Type\s*\/Page\b/.test(body))
  if (pages.length === 0) throw new Error('This print has no page that can be found.')
  const isEmpty = (page: string): boolean => {
    const contents = objects.get(/\/Contents\s+(\d+) 0 R/.exec(page)?.[1] ?? '') ?? ''
    const marks = STREAM.exec(contents)?.[1] ?? ''
    const text = /\/FlateDecode/.test(contents) ? inflateSync(Buffer.from(marks, 'latin1')).toString('latin1') : marks
    return !TEXT_SHOWN.test(text)
  }
  return { count: pages.length, empty: pages.filter(isEmpty).length }
}
