import type { Edges } from '../glyphs/edges.ts'

/** [x, y] */
type Place = readonly [number, number]

/** A page as it is seen when it is turned so that lettering at an angle stands upright: about the page's corner. */
export interface Frame {
  /** Degrees clockwise on the page by which the lettering is turned. */
  readonly angle: number
  readonly toPage: (place: Place) => Place
  readonly fromPage: (place: Place) => Place
}

export function frameAt(angle: number): Frame {
  const turn = (angle * Math.PI) / 180
  const [c, s] = [Math.cos(turn), Math.sin(turn)]
  return {
    angle,
    toPage: ([u, v]) => [u * c - v * s, u * s + v * c],
    fromPage: ([x, y]) => [x * c + y * s, y * c - x * s],
  }
}

/** Edges round a rectangle of the page, as the frame has it. */
export const edgesInFrame = (edges: Edges, { fromPage }: Frame): Edges => moved(edges, fromPage)
/** The same the other way round. */
export const edgesOnPage = (edges: Edges, { toPage }: Frame): Edges => moved(edges, toPage)

function moved({ left, top, right, bottom }: Edges, by: (place: Place) => Place): Edges {
  const corners = [by([left, top]), by([right, top]), by([left, bottom]), by([right, bottom])]
  const [xs, ys] = [corners.map(([x]) => x), corners.map(([, y]) => y)]
  return { left: Math.min(...xs), top: Math.min(...ys), right: Math.max(...xs), bottom: Math.max(...ys) }
}

/** Area that two rectangles share. */
export const sharedArea = (a: Edges, b: Edges): number =>
  Math.max(0, Math.min(a.right, b.right) - Math.max(a.left, b.left)) *
  Math.max(0, Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top))

export const areaOf = ({ left, top, right, bottom }: Edges): number => (right - left) * (bottom - top)
