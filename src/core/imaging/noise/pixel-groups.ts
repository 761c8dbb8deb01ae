import type { Strip } from '../strip/strip.ts'

/** Pixels looked at, at most. */
const MOST = 1500
/** Length of stroke over which ground and contrast count as even, pixels. */
const GROUP = 40

const sizeOf = (strip: Strip, k: number): number =>
  (strip.pieces[k]?.end ?? 0) - (strip.pieces[k]?.first ?? 0)

/** How many pixels some pieces have. */
export const pixelsIn = (strip: Strip, pieces: readonly number[]): number =>
  pieces.reduce((sum, k) => sum + sizeOf(strip, k), 0)

/** Kept pieces about the middle of the strip, as many as have pixels enough. */
export function middlePieces(strip: Strip, kept: readonly boolean[]): number[] {
  const all = strip.pieces.flatMap((_, k) => (kept[k] ? [k] : []))
  const middle = all[Math.floor(all.length / 2)] ?? 0
  const near = [...all].sort((a, b) => Math.abs(a - middle) - Math.abs(b - middle))
  const chosen: number[] = []
  let n = 0
  for (const k of near) {
    const size = sizeOf(strip, k)
    if (n > 0 && n + size > MOST) break
    n += size
    chosen.push(k)
  }
  return chosen
}

/** Neighbouring pieces that are taken as one, so that the ground taken off does not take the noise with it. */
export function groupsOf(strip: Strip, chosen: readonly number[]): number[][] {
  const groups: number[][] = []
  let length = 0
  for (const k of [...chosen].sort((a, b) => a - b)) {
    const piece = strip.pieces[k]
    if (piece === undefined) continue
    const last = groups[groups.length - 1]
    if (last === undefined || length >= GROUP || last[last.length - 1] !== k - 1) {
      groups.push([k])
      length = 0
    } else last.push(k)
    length += piece.to - piece.from
  }
  return groups
}
