const DIGITS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_'
const SHA256_BYTES = 32

/**
 * The name of some content by its SHA-256: `ni:///sha-256;f4OxZX_x_FO5LcGBSKHWXfwtSx-j1ncoSt3SABJtkGk`.
 * Source: RFC 6920 section 3, with base64url and no padding.
 * @param sha256 64 hexadecimal digits
 */
export function niUri(sha256: string): string {
  let bits = ''
  for (const digit of sha256) bits += Number.parseInt(digit, 16).toString(2).padStart(4, '0')
  const sixes = bits.match(/.{1,6}/g) ?? []
  return `ni:///sha-256;${sixes.map((six) => DIGITS[Number.parseInt(six.padEnd(6, '0'), 2)]).join('')}`
}

/** The SHA-256 that a name carries, 64 hexadecimal digits; null when it is no such name. Query and fragment don't matter. */
export function sha256OfNi(iri: string): string | null {
  const [, digest = ''] = /^ni:\/\/[^/]*\/sha-256;([\w-]{43})=?(?:[?#]|$)/i.exec(iri) ?? []
  if (digest === '') return null
  const bits = [...digest].map((digit) => DIGITS.indexOf(digit).toString(2).padStart(6, '0')).join('')
  const nibbles = bits.slice(0, 8 * SHA256_BYTES).match(/.{4}/g) ?? []
  return nibbles.map((nibble) => Number.parseInt(nibble, 2).toString(16)).join('')
}
