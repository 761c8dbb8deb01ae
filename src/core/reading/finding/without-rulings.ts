/** Longest stroke of a glyph, and how thick a line may be, pixels. */
export interface RulingLimits {
  readonly longest: number
  readonly thickest: number
}

/** Takes long level and upright lines out of a picture's ink, in place: where a stroke crosses one, it stays. */
export function eraseRulings(
  ink: Uint8Array,
  width: number,
  height: number,
  { longest, thickest }: RulingLimits,
): void {
  const erased = new Uint8Array(ink.length)
  markRulings(ink, erased, width, 1, height, width, longest, thickest)
  markRulings(ink, erased, height, width, width, 1, longest, thickest)
  for (let i = 0; i < ink.length; i++) if (erased[i] === 1) ink[i] = 0
}

/** Runs along one way, `step` from pixel to pixel, of `rows` that begin `apart`. */
function markRulings(
  ink: Uint8Array,
  erased: Uint8Array,
  length: number,
  step: number,
  rows: number,
  apart: number,
  longest: number,
  thickest: number,
): void {
  for (let row = 0; row < rows; row++) {
    let start = -1
    for (let i = 0; i <= length; i++) {
      const on = i < length && ink[row * apart + i * step] === 1
      if (on && start < 0) start = i
      if (on || start < 0) continue
      if (i - start > longest)
        for (let k = start; k < i; k++) {
          const at = row * apart + k * step
          if (thickness(ink, at, row, rows, apart, thickest) <= thickest) erased[at] = 1
        }
      start = -1
    }
  }
}

/** Pixels across the run at a place, counted no further than needed. */
function thickness(
  ink: Uint8Array,
  at: number,
  row: number,
  rows: number,
  apart: number,
  most: number,
): number {
  let n = 1
  for (let r = row - 1, p = at - apart; r >= 0 && n <= most && ink[p] === 1; r--, p -= apart) n++
  for (let r = row + 1, p = at + apart; r < rows && n <= most && ink[p] === 1; r++, p += apart) n++
  return n
}
