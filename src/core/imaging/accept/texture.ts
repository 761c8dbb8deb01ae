import type { StripFit } from '../fit/strip-fit.ts'
import type { AlignedProfile } from '../strip/aligned-profile.ts'

/** Ink contrasts more than the weave of cloth or the grain of paper; grey values. */
const STRONGEST_TEXTURE = 70
/** So many more like it close by make a texture; hatching is wider apart. */
const REPEATS = 3
const CLOSE = 3.6
/** Of what is so faint, grey values, one fewer does: no ink is, and cloth is. */
const FAINTEST_INK = 12

/** Whether a faint stroke is one of many alike, side by side and hardly farther apart than they are wide. */
export function isTexture(
  { low, value }: AlignedProfile,
  fit: Pick<StripFit, 'width' | 'contrast'>,
): boolean {
  if (Math.abs(fit.contrast) > STRONGEST_TEXTURE) return false
  const sign = Math.sign(fit.contrast)
  const reach = (REPEATS * CLOSE * fit.width) / 2 + fit.width
  const near: number[] = []
  value.forEach((v, i) => {
    const u = Math.abs(low + i / 2)
    if (u <= reach && !Number.isNaN(v)) near.push(sign * v)
  })
  const sorted = [...near].sort((a, b) => a - b)
  const ground = sorted[Math.floor(sorted.length * 0.1)] ?? 0
  const level = ground + 0.5 * Math.abs(fit.contrast)
  const fall = ground + 0.4 * Math.abs(fit.contrast)
  let runs = 0
  let up = false
  for (const v of near) {
    if (!up && v > level) {
      up = true
      runs++
    } else if (up && v < fall) up = false
  }
  return runs > (Math.abs(fit.contrast) < FAINTEST_INK ? REPEATS - 1 : REPEATS)
}
