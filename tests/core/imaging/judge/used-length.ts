import type { Pixel } from '../../../../src/core/geometry/frames.ts'
import type { Profile } from '../../../../src/core/imaging/index.ts'

/** From where to where along a direction, from a place, the stroke was looked at, kept or not, pixels. */
export function usedLength(
  profiles: readonly Profile[],
  place: Pixel,
  direction: number,
): readonly [from: number, to: number] {
  const at = profiles
    .map(({ centre: [x, y] }) => (x - place[0]) * Math.cos(direction) + (y - place[1]) * Math.sin(direction))
    .sort((a, b) => a - b)
  const [first, last] = [at[0] ?? 0, at[at.length - 1] ?? 0]
  const half = at.length > 1 ? (last - first) / (at.length - 1) / 2 : 0
  return [first - half, last + half]
}

/** Whether a pixel lies within the stretch of a straight stroke. */
export const within =
  (place: Pixel, direction: number, [from, to]: readonly [number, number]) =>
  (x: number, y: number): boolean => {
    const s = (x - place[0]) * Math.cos(direction) + (y - place[1]) * Math.sin(direction)
    return s >= from && s <= to
  }

/** Whether a pixel lies nearest to a place that was kept: the pixels that a fit rests on. */
export const nearKept =
  (profiles: readonly Profile[]) =>
  (x: number, y: number): boolean => {
    let kept = false
    let least = Number.POSITIVE_INFINITY
    for (const p of profiles) {
      const squared = (x - p.centre[0]) ** 2 + (y - p.centre[1]) ** 2
      if (squared < least) {
        least = squared
        kept = p.kept
      }
    }
    return kept
  }
