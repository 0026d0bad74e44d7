import { createCipheriv, createDecipheriv, randomBytes, randomInt, scryptSync } from 'node:crypto'
import type { Pack } from '../../files/schema/contest-pack.js'

const KEY_BYTES = 32
const SALT_BYTES = 16
/** As NIST SP 800-38D recommends for GCM. */
const NONCE_BYTES = 12
const TAG_BYTES = 16
const COST = 32768
const BLOCK_SIZE = 8
const PARALLEL = 1
/** What scrypt needs is 128 · N · r bytes (RFC 7914); a little more is allowed. */
const MOST_MEMORY_BYTES = 64 * 1024 * 1024

type Sealed = Pack['sealed']

const plain = (passphrase: string): string =>
  passphrase
    .normalize('NFKC')
    .trim()
    .toLowerCase()
    .replaceAll(/[\s-]+/g, '-')

const keyFrom = (passphrase: string, salt: Buffer): Buffer =>
  scryptSync(plain(passphrase), salt, KEY_BYTES, { N: COST, r: BLOCK_SIZE, p: PARALLEL, maxmem: MOST_MEMORY_BYTES })

/**
 * Seals a text by a passphrase: scrypt (RFC 7914) makes the key, AES-256-GCM keeps the text secret and bound to `boundTo`.
 * Case, spaces and hyphens of the passphrase do not matter, for it is read out.
 */
export function sealText(text: string, passphrase: string, boundTo: string): Sealed {
  const salt = randomBytes(SALT_BYTES)
  const nonce = randomBytes(NONCE_BYTES)
  const cipher = createCipheriv('aes-256-gcm', keyFrom(passphrase, salt), nonce)
  cipher.setAAD(Buffer.from(boundTo))
  const sealed = Buffer.concat([cipher.update(text, 'utf8'), cipher.final()])
  return {
    kdf: 'scrypt',
    cost: COST,
    blockSize: BLOCK_SIZE,
    parallel: PARALLEL,
    salt: salt.toString('base64'),
    cipher: 'aes-256-gcm',
    nonce: nonce.toString('base64'),
    tag: cipher.getAuthTag().toString('base64'),
    text: sealed.toString('base64'),
  }
}

/** The text under a seal; null where the passphrase is another or something of it was changed. */
export function openedText({ salt, nonce, tag, text }: Sealed, passphrase: string, boundTo: string): string | null {
  try {
    const key = keyFrom(passphrase, Buffer.from(salt, 'base64'))
    const decipher = createDecipheriv('aes-256-gcm', key, Buffer.from(nonce, 'base64'), { authTagLength: TAG_BYTES })
    decipher.setAAD(Buffer.from(boundTo))
    decipher.setAuthTag(Buffer.from(tag, 'base64'))
    return Buffer.concat([decipher.update(Buffer.from(text, 'base64')), decipher.final()]).toString('utf8')
  } catch {
    return null
  }
}

const CONSONANTS = 'bdfgklmnprstvz'
const VOWELS = 'aeiou'
const WORDS = 5
const SYLLABLES = 2

/** A passphrase that can be read out: five words of two syllables, about 61 bits. */
export function freshPassphrase(): string {
  const one = (letters: string): string => letters[randomInt(letters.length)]!
  const word = (): string => Array.from({ length: SYLLABLES }, () => one(CONSONANTS) + one(VOWELS)).join('')
  return Array.from({ length: WORDS }, word).join('-')
}
