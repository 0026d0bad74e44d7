const ALPHABET = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/'

/** Bytes as base64 text (RFC 4648, padded). */
export function bytesToText(bytes: Uint8Array): string {
  const parts: string[] = []
  for (let index = 0; index < bytes.length; index += 3) {
    const left = bytes.length - index
    const three = (bytes[index]! << 16) | ((left > 1 ? bytes[index + 1]! : 0) << 8) | (left > 2 ? bytes[index + 2]! : 0)
    parts.push(
      ALPHABET[three >> 18]! +
        ALPHABET[(three >> 12) & 63]! +
        (left > 1 ? ALPHABET[(three >> 6) & 63]! : '=') +
        (left > 2 ? ALPHABET[three & 63]! : '='),
    )
  }
  return parts.join('')
}

/** The bytes of base64 text; throws RangeError on a character outside the alphabet. */
export function textToBytes(text: string): Uint8Array {
  const end = text.endsWith('==') ? text.length - 2 : text.endsWith('=') ? text.length - 1 : text.length
  const bytes = new Uint8Array(Math.floor((end * 3) / 4))
  let held = 0
  let bits = 0
  let at = 0
  for (let index = 0; index < end; index++) {
    const digit = DIGITS[text.charCodeAt(index)] ?? -1
    if (digit < 0) throw new RangeError(`character ${index + 1} of the table's text is not base64`)
    held = ((held << 6) | digit) & 0xffffff
    bits += 6
    if (bits >= 8) {
      bits -= 8
      bytes[at++] = (held >> bits) & 255
    }
  }
  return bytes
}

const DIGITS: Int8Array = (() => {
  const digits = new Int8Array(128).fill(-1)
  for (let index = 0; index < ALPHABET.length; index++) digits[ALPHABET.charCodeAt(index)] = index
  return digits
})()
