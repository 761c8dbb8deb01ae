import { type Screen, screen } from '../../core/geometry/frames.ts'
import { boxCorners, collide, type LetteredBox } from './geometry-on-screen.ts'

/** What lettering over a sheet is kept off, as far as it is known. */
export interface UnderLettering {
  /** Boxes of printed figures on the screen: nothing is lettered over them but what is chosen and has no other place. */
  printed: readonly LetteredBox[]
  /** How much is drawn on the sheet under a place on the screen: 0 for bare paper, 1 for black against white throughout. */
  ink: (box: LetteredBox) => number
  /** Where each figure stood last, by its key: it stays there while that is as good as any. Written to. */
  stood: Map<string, number>
}

/** A sheet of which nothing is known. */
export const bareGround = (): UnderLettering => ({ printed: [], ink: () => 0, stood: new Map() })

/** So far apart at the most are the places in a box that are looked at, as a share of its height. */
const APART = 0.5

/** Places that tell what lies under a box: evenly over all of it. */
export function placesIn(box: LetteredBox): Screen[] {
  const { width, height } = box
  const [origin, right, , down] = boxCorners(box)
  if (origin === undefined || right === undefined || down === undefined) return []
  const across = Math.max(2, Math.min(12, Math.ceil(width / (APART * height))))
  const downwards = 3
  const places: Screen[] = []
  for (let i = 0; i < across; i++) {
    for (let j = 0; j < downwards; j++) {
      const [s, t] = [(i + 0.5) / across, (j + 0.5) / downwards]
      places.push(
        screen(
          origin[0] + s * (right[0] - origin[0]) + t * (down[0] - origin[0]),
          origin[1] + s * (right[1] - origin[1]) + t * (down[1] - origin[1]),
        ),
      )
    }
  }
  return places
}

/** Whether a box lies over a printed figure. */
export const coversPrinted = (box: LetteredBox, { printed }: UnderLettering): boolean =>
  printed.some((figure) => collide(box, figure))
