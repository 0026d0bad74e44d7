import { z } from 'zod'
import { line, listOf, table, wholeFrom } from '../files/schema/fields.js'
import { LOCAL_TIME } from '../files/text/local-time.js'

const hex = (digits: number) => {
  const words = `${digits} hexadecimal digits`
  return z.string({ error: () => words }).regex(new RegExp(`^[0-9a-f]{${digits}}$`), words)
}
const TIME_WORDS = 'a local time with the offset of its zone, such as "2026-03-08T19:04:11+01:00"'
const time = () => z.string({ error: () => TIME_WORDS }).regex(LOCAL_TIME, TIME_WORDS)

const MOST_STARTS = 200

const start = table({ at: time(), throws: wholeFrom(0, 2000) }, 'a start')

/** What the host of a contest vouches for: the chain's last link over all choices and what they left, signed by the organiser. */
const hosted = table({ chain: hex(64), signature: line(120) }, "a host's word")

/** What a record or journal says of the contest it is an entry of. */
export const contestSectionSchema = table(
  {
    /** The pack's digest. */
    pack: hex(64),
    title: line(80),
    deadline: time(),
    /** The entry's own number, drawn once. */
    entry: hex(24),
    /** Each time somebody sat down to it, and after how many throws: the first begins it, the others go on. */
    starts: listOf(start, 1, MOST_STARTS, 'starts'),
    /** The entry's Ed25519 public key, SPKI in DER. */
    key: line(120),
    /** By that key over all of the record but the digest and this. */
    signature: line(120).optional(),
    hosted: hosted.optional(),
  },
  "a contest's entry",
)
export type ContestSection = z.output<typeof contestSectionSchema>
