import { type Pixel, pixel } from '../../../core/geometry/frames.ts'
import { inWords, reason } from '../../words/window-words.ts'

/** Width and height of an outline that was drawn corner to corner, and where its first corner is; pixels. */
function measured([[left, top] = pixel(0, 0), , [right, bottom] = pixel(0, 0)]: readonly Pixel[]) {
  return { left, top, width: right - left, height: bottom - top }
}

/** Whether nothing lies inside an outline, for its corners are on one line. */
export function isFlat(outline: readonly Pixel[]): boolean {
  const { width, height } = measured(outline)
  return width < 2 || height < 2
}

/** How large an outline is, or what is wrong with it. */
export function OutlineSize({ outline }: { outline: readonly Pixel[] }) {
  const { left, top, width, height } = measured(outline)
  return (
    <p className="block-soft">
      {isFlat(outline)
        ? inWords(reason('picked.flat-outline'))
        : `${width} × ${height} px, from ${left}, ${top}`}
    </p>
  )
}
