/** Ink that hangs together, by its upright box: pixels of the picture, right and bottom one past the last. */
export interface Spot {
  readonly left: number
  readonly top: number
  readonly right: number
  readonly bottom: number
  readonly pixels: number
}

/**
 * Spots of ink no side of which is longer than so much, found by flooding each once.
 * @param ink 1 or 0; what was looked at is 0 afterwards
 */
export function takeSpots(ink: Uint8Array, width: number, height: number, largest: number): Spot[] {
  const spots: Spot[] = []
  let stack = new Int32Array(1 << 16)
  for (let start = 0; start < ink.length; start++) {
    if (ink[start] !== 1) continue
    let size = 0
    stack[size++] = start
    ink[start] = 0
    let left = width
    let right = 0
    let top = height
    let bottom = 0
    let pixels = 0
    while (size > 0) {
      const at = stack[--size] ?? 0
      const y = Math.floor(at / width)
      const x = at - y * width
      pixels++
      if (x < left) left = x
      if (x >= right) right = x + 1
      if (y < top) top = y
      if (y >= bottom) bottom = y + 1
      if (size + 8 > stack.length) {
        const larger = new Int32Array(stack.length * 2)
        larger.set(stack)
        stack = larger
      }
      for (let py = y > 0 ? y - 1 : y; py <= y + 1 && py < height; py++)
        for (let px = x > 0 ? x - 1 : x; px <= x + 1 && px < width; px++) {
          const next = py * width + px
          if (ink[next] !== 1) continue
          ink[next] = 0
          stack[size++] = next
        }
    }
    if (right - left <= largest && bottom - top <= largest) spots.push({ left, top, right, bottom, pixels })
  }
  return spots
}
