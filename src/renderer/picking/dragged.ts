import { type Pixel, pixel } from '../../core/geometry/frames.ts'
import type { MarkNeed } from '../../core/job/model/mark-needs.ts'
import { isOpen, type Picks, wanted } from './picks.ts'
import { isCornerToCorner, isSlot, type Tool } from './tool.ts'

/** Tools whose marks are picked one by one: each is an act of its own. */
const ONE_BY_ONE: ReadonlySet<Tool['kind']> = new Set(['look', 'repeat'])

/**
 * The picks that one drag makes: both ends of a distance, two places along a line, or, from rim to rim across a circle, three places
 * round it; or the two round ends of a slot. Null where a drag makes none: in the middle of a mark, along a path, or where one place only is wanted.
 * @param from, to pixels of the scan
 */
export function draggedPicks(picks: Picks, from: Pixel, to: Pixel): Pixel[] | null {
  const need = wanted(picks)
  if (need === null || isOpen(picks) || ONE_BY_ONE.has(picks.tool.kind)) return null
  return isCornerToCorner(picks.tool) ? null : picksOf(need, picks, from, to)
}

function picksOf(need: MarkNeed, picks: Picks, from: Pixel, to: Pixel): Pixel[] | null {
  switch (need) {
    case 'line':
      return [from, to]
    case 'circle':
      if (isSlot(picks.tool)) return picks.features.length === 0 ? [from, to] : null
      return acrossCircle(from, to)
    case 'point':
      return wantsTwoPoints(picks) ? [from, to] : null
    default:
      return null
  }
}

/** Whether both points of a distance are still to be picked. */
const wantsTwoPoints = ({ tool, features }: Picks): boolean =>
  features.length === 0 &&
  ((tool.kind === 'measure' && tool.measure === 'distance') ||
    (tool.kind === 'reference' && tool.reference === 'distance'))

/**
 * Three places on the circle that has its diameter between two. A hand that misses the middle by a tenth of the radius
 * makes it too small by half a hundredth: near enough for the rim to be found.
 */
function acrossCircle([ax, ay]: Pixel, [bx, by]: Pixel): Pixel[] {
  const [x, y] = [(ax + bx) / 2, (ay + by) / 2]
  return [pixel(ax, ay), pixel(x - (by - ay) / 2, y + (bx - ax) / 2), pixel(bx, by)]
}
