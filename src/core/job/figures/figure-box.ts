/** Where a figure stands on a sheet: [x, y, width, height], pixels of the scan. */
export type BoxOfFigure = readonly [x: number, y: number, width: number, height: number]

/** Boxes that have this share of both in common are round the same figure. */
const SAME = 0.5

/** What two boxes have in common, as a share of what both cover: 1 for the same box, 0 for two apart. */
export function sharedByBoxes(a: BoxOfFigure, b: BoxOfFigure): number {
  const across = Math.min(a[0] + a[2], b[0] + b[2]) - Math.max(a[0], b[0])
  const down = Math.min(a[1] + a[3], b[1] + b[3]) - Math.max(a[1], b[1])
  if (across <= 0 || down <= 0) return 0
  const both = across * down
  return both / (a[2] * a[3] + b[2] * b[3] - both)
}

/** Whether two boxes are round the same figure, each drawn in its own way. */
export const isSameFigure = (a: BoxOfFigure, b: BoxOfFigure): boolean => sharedByBoxes(a, b) >= SAME
