import type { Chance } from './chance.ts'

/** Smooth noise over the plane, roughly within −1 … 1, that varies over `cell` pixels. */
export function valueNoise(chance: Chance, width: number, height: number, cell: number) {
  const columns = Math.ceil(width / cell) + 2
  const rows = Math.ceil(height / cell) + 2
  const grid = Float32Array.from({ length: columns * rows }, () => 2 * chance.uniform() - 1)
  const ease = (t: number) => t * t * (3 - 2 * t)
  return (x: number, y: number): number => {
    const gx = x / cell
    const gy = y / cell
    const i = Math.floor(gx)
    const j = Math.floor(gy)
    const s = ease(gx - i)
    const t = ease(gy - j)
    const at = j * columns + i
    const a = grid[at] ?? 0
    const b = grid[at + 1] ?? 0
    const c = grid[at + columns] ?? 0
    const d = grid[at + columns + 1] ?? 0
    return a + (b - a) * s + (c - a + (a - b - c + d) * s) * t
  }
}
