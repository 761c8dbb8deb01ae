/** A field of numbers, row by row. */
export interface Field {
  readonly width: number
  readonly height: number
  readonly values: Float32Array
}

/** Means over squares of side 2·reach + 1 round each place, of what of them lies in the field. */
export function slidingMean({ width, height, values }: Field, reach: number): Float32Array {
  const across = new Float32Array(values.length)
  meanAlong(values, across, width, 1, height, width, reach)
  const out = new Float32Array(values.length)
  meanAlong(across, out, height, width, width, 1, reach)
  return out
}

/** The greatest value of the squares of side 2·reach + 1 round each place; of a `sign` −1 the least. */
export function slidingExtreme({ width, height, values }: Field, reach: number, sign: 1 | -1): Float32Array {
  const across = new Float32Array(values.length)
  extremeAlong(values, across, width, 1, height, width, reach, sign)
  const out = new Float32Array(values.length)
  extremeAlong(across, out, height, width, width, 1, reach, sign)
  return out
}

function meanAlong(
  from: Float32Array,
  to: Float32Array,
  length: number,
  step: number,
  rows: number,
  apart: number,
  reach: number,
): void {
  for (let row = 0; row < rows; row++) {
    const start = row * apart
    let sum = 0
    let count = 0
    for (let i = 0; i < Math.min(reach, length); i++, count++) sum += from[start + i * step] ?? 0
    for (let i = 0; i < length; i++) {
      if (i + reach < length) {
        sum += from[start + (i + reach) * step] ?? 0
        count++
      }
      if (i - reach - 1 >= 0) {
        sum -= from[start + (i - reach - 1) * step] ?? 0
        count--
      }
      to[start + i * step] = sum / count
    }
  }
}

/** By a queue of what may still become the extreme, so that the reach costs nothing. */
function extremeAlong(
  from: Float32Array,
  to: Float32Array,
  length: number,
  step: number,
  rows: number,
  apart: number,
  reach: number,
  sign: 1 | -1,
): void {
  const queue = new Int32Array(length)
  for (let row = 0; row < rows; row++) {
    const start = row * apart
    let first = 0
    let last = 0
    for (let i = 0; i < length + reach; i++) {
      if (i < length) {
        const value = sign * (from[start + i * step] ?? 0)
        while (last > first && sign * (from[start + (queue[last - 1] ?? 0) * step] ?? 0) <= value) last--
        queue[last++] = i
      }
      const at = i - reach
      if (at < 0) continue
      while ((queue[first] ?? 0) < at - reach) first++
      to[start + at * step] = from[start + (queue[first] ?? 0) * step] ?? 0
    }
  }
}
