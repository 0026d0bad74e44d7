import { z } from 'zod'
import { PACK_FORMAT, PACK_VERSION, UNSEALING_FORMAT } from './contest-formats.js'
import { moment, packRules } from './contest-rules.js'
import { line, table } from './fields.js'

const hex = (digits: number) => {
  const words = `${digits} hexadecimal digits`
  return z.string({ error: () => words }).regex(new RegExp(`^[0-9a-f]{${digits}}$`), words)
}
const BASE64_WORDS = 'bytes in base64'
const bytes = (most: number) =>
  z
    .string({ error: () => BASE64_WORDS })
    .max(most, BASE64_WORDS)
    .regex(/^[A-Za-z0-9+/]+={0,2}$/, BASE64_WORDS)

const literal = <const Value extends string | number>(value: Value) =>
  z.literal(value, { error: () => (typeof value === 'string' ? `"${value}"` : String(value)) })

const sealed = table(
  {
    kdf: literal('scrypt').describe('RFC 7914.'),
    cost: literal(32768).describe('N.'),
    blockSize: literal(8).describe('r.'),
    parallel: literal(1).describe('p.'),
    salt: bytes(40),
    cipher: literal('aes-256-gcm').describe('NIST SP 800-38D.'),
    nonce: bytes(40),
    tag: bytes(40),
    text: bytes(2_000_000).describe('The seed and the scenario, oil and all, as JSON.'),
  },
  'what is sealed',
).describe('Opened by the passphrase alone; bound to the rest of the pack.')

const contestId = () => hex(24)

/** A contest as it is handed out. */
export const packSchema = table(
  {
    format: literal(PACK_FORMAT),
    version: literal(PACK_VERSION),
    contest: contestId().describe("The contest's own number, drawn once."),
    sealedAt: moment().describe('When the organiser sealed it.'),
    program: line(40).describe('Version of the program that sealed it.'),
    rules: packRules,
    scenario: line(200).describe('What the scenario is called.'),
    lane: line(80).describe("The scenario's title."),
    scenarioHash: line(80).describe('Names all that is in the scenario.'),
    model: line(80).describe('The laws of motion, wear and pins, by a digest of exact results.'),
    carryTable: line(80).describe('What choices are priced by.'),
    gradeRevision: line(80).describe('The revision of the grade that costs are worked out by.'),
    commitment: hex(64).describe(
      'SHA-256 of contest, rules, scenario, model and seed: whoever learns the seed can tell that it was fixed before.',
    ),
    sealed,
    organiser: bytes(100).describe("The organiser's Ed25519 public key, SPKI in DER."),
    signature: bytes(120).describe('Ed25519 (RFC 8032) by the organiser over all the rest, fields in order.'),
  },
  'a contest pack',
)
export type Pack = z.output<typeof packSchema>

/** The organiser's word that a contest is over and its seed may be known. */
export const unsealingSchema = table(
  {
    format: literal(UNSEALING_FORMAT),
    version: literal(PACK_VERSION),
    pack: hex(64).describe("The pack's digest."),
    seed: line(80),
    unsealedAt: moment(),
    signature: bytes(120),
  },
  'an unsealing',
)
export type Unsealing = z.output<typeof unsealingSchema>

/** What is under the seal. */
export const sealedTextSchema = z.strictObject({ seed: z.string().regex(/^[0-9a-f]{64}$/), scenario: z.unknown() })
