/** Numbers of 16 bits (IEEE 754 binary16, least byte first) as numbers of 32. */
export function fromHalfFloats(bytes: Uint8Array): Float32Array {
  const halves = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  const values = new Float32Array(bytes.length >> 1)
  for (let i = 0; i < values.length; i++) values[i] = fromHalf(halves.getUint16(2 * i, true))
  return values
}

function fromHalf(half: number): number {
  const sign = half & 0x8000 ? -1 : 1
  const exponent = (half >> 10) & 0x1f
  const fraction = half & 0x3ff
  if (exponent === 0) return sign * fraction * 2 ** -24
  if (exponent === 31) return fraction === 0 ? sign * Number.POSITIVE_INFINITY : Number.NaN
  return sign * (1 + fraction / 1024) * 2 ** (exponent - 15)
}
