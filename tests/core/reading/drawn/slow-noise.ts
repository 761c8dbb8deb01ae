import type { Dice } from './dice.ts'

/** A surface that wanders smoothly between −1 and 1: values at the knots of a square net, smoothed between them. */
export function slowNoise(
  width: number,
  height: number,
  step: number,
  d: Dice,
): (x: number, y: number) => number {
  const across = Math.ceil(width / step) + 2
  const knots = Float32Array.from({ length: across * (Math.ceil(height / step) + 2) }, () => d.between(-1, 1))
  const ease = (t: number) => t * t * (3 - 2 * t)
  return (x, y) => {
    const [u, v] = [x / step, y / step]
    const [i, j] = [Math.floor(u), Math.floor(v)]
    const [s, t] = [ease(u - i), ease(v - j)]
    const at = j * across + i
    const a = (knots[at] ?? 0) * (1 - s) + (knots[at + 1] ?? 0) * s
    const b = (knots[at + across] ?? 0) * (1 - s) + (knots[at + across + 1] ?? 0) * s
    return a * (1 - t) + b * t
  }
}
