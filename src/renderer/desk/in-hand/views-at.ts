import type { Pixel } from '../../../core/geometry/frames.ts'
import type { View } from '../../../core/job/model/types.ts'

/** Whether a pixel lies inside an outline (even-odd rule). */
export function isInside(outline: readonly Pixel[], [x, y]: Pixel): boolean {
  let inside = false
  outline.forEach(([ax, ay], k) => {
    const [bx, by] = outline[(k + 1) % outline.length] ?? [ax, ay]
    if (ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax)) inside = !inside
  })
  return inside
}

/** The views of a sheet in whose outlines a pixel lies. */
export function viewsAt(views: readonly View[], sheet: string, pixel: Pixel): View[] {
  return views.filter(
    (view) => view.sheet === sheet && view.outline !== undefined && isInside(view.outline, pixel),
  )
}
