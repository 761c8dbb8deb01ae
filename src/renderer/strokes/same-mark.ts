import type { UnnamedMark } from '../../core/job/from-picks/picked-mark.ts'
import { firstPlaces } from '../../core/job/picks/picks-of.ts'
import { shapeOf } from '../overlay/shape.ts'

/** Two picks of one stroke come within so little of each other, pixels; the two edges of a stroke lie further apart. */
const SAME = 1
/** Of circles, whose middle is known less well than their rim. */
const SAME_CENTRE = 2

/** Whether two lines or circles are of one and the same stroke, so that nothing lies between them. */
export function isSameMark(one: UnnamedMark, other: UnnamedMark): boolean {
  const [a, b] = [shapeOf(one), shapeOf(other)]
  if (a?.kind === 'circle' && b?.kind === 'circle') {
    const apart = Math.hypot(a.centre[0] - b.centre[0], a.centre[1] - b.centre[1])
    return apart < SAME_CENTRE && Math.abs(a.radius - b.radius) < SAME_CENTRE + widthOf(one)
  }
  if (a?.kind !== 'segment' || b?.kind !== 'segment') return false
  const [p, q] = a.ends
  const length = Math.hypot(q[0] - p[0], q[1] - p[1])
  if (length === 0) return false
  const normal = [-(q[1] - p[1]) / length, (q[0] - p[0]) / length] as const
  const off = firstPlaces(other).map(([x, y]) => (x - p[0]) * normal[0] + (y - p[1]) * normal[1])
  return off.length > 0 && off.every((far) => Math.abs(far) < SAME)
}

/** Of the rim, whose two edges are of one circle. */
const widthOf = (mark: UnnamedMark): number => mark.stroke?.width ?? 0
