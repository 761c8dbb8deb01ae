const DIGITS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/'

/** Bytes of base64 text without breaks (RFC 4648, section 4). */
export function fromBase64(text: string): Uint8Array {
  const worth = new Uint8Array(128)
  for (let i = 0; i < DIGITS.length; i++) worth[DIGITS.charCodeAt(i)] = i
  const at = (i: number): number => worth[text.charCodeAt(i)] ?? 0
  const digits = text.endsWith('==') ? text.length - 2 : text.endsWith('=') ? text.length - 1 : text.length
  const bytes = new Uint8Array(Math.floor((digits * 3) / 4))
  for (let i = 0, to = 0; i < digits; i += 4) {
    const four = (at(i) << 18) | (at(i + 1) << 12) | (at(i + 2) << 6) | at(i + 3)
    bytes[to++] = four >> 16
    bytes[to++] = four >> 8
    bytes[to++] = four
  }
  return bytes
}
