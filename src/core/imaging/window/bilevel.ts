import type { GreyWindow } from './grey-window.ts'

/** Whether a window has two grey values at most, as scans of one bit have. */
export const isBilevel = ({ data }: GreyWindow): boolean => hasTwoValues(data)

/** Whether there are just two values among these. */
export function hasTwoValues(data: ArrayLike<number>): boolean {
  const first = data[0]
  let other: number | undefined
  for (let i = 1; i < data.length; i++) {
    const v = data[i]
    if (v === first || v === other) continue
    if (other !== undefined) return false
    other = v
  }
  return other !== undefined
}
