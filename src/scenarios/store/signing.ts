import {
  createHash,
  createPrivateKey,
  createPublicKey,
  generateKeyPairSync,
  type KeyObject,
  sign,
  verify,
} from 'node:crypto'
import { canonicalText } from './hashes.js'

/** An Ed25519 key (RFC 8032) that signs; its public half as SPKI DER in base64. */
export interface SigningKey {
  readonly secret: KeyObject
  readonly publicText: string
}

const publicTextOf = (secret: KeyObject): string =>
  createPublicKey(secret).export({ type: 'spki', format: 'der' }).toString('base64')

/** A fresh key. */
export function freshKey(): SigningKey {
  const { privateKey } = generateKeyPairSync('ed25519')
  return { secret: privateKey, publicText: publicTextOf(privateKey) }
}

/** A key as a file keeps it: PKCS #8 in PEM. */
export const keyText = ({ secret }: SigningKey): string => secret.export({ type: 'pkcs8', format: 'pem' }).toString()

/** A key out of a file's text; null where it holds no Ed25519 key. */
export function keyFromText(text: string): SigningKey | null {
  try {
    const secret = createPrivateKey(text)
    return secret.asymmetricKeyType === 'ed25519' ? { secret, publicText: publicTextOf(secret) } : null
  } catch {
    return null
  }
}

/** Signs data, whatever the order of its fields. */
export const signatureOf = (data: unknown, { secret }: SigningKey): string =>
  sign(null, Buffer.from(canonicalText(data)), secret).toString('base64')

/** Whether a signature is that of a public key over the data; false too where key or signature are none. */
export function isSignedBy(data: unknown, signature: string, publicText: string): boolean {
  try {
    const key = createPublicKey({ key: Buffer.from(publicText, 'base64'), type: 'spki', format: 'der' })
    if (key.asymmetricKeyType !== 'ed25519') return false
    return verify(null, Buffer.from(canonicalText(data)), key, Buffer.from(signature, 'base64'))
  } catch {
    return false
  }
}

/** What is read out of a public key so that people can tell two apart: 40 bits of its SHA-256 in two groups of letters and digits. */
export function keyCode(publicText: string): string {
  const digits = createHash('sha256').update(publicText).digest('hex').slice(0, 10).toUpperCase()
  return `${digits.slice(0, 5)}-${digits.slice(5)}`
}
