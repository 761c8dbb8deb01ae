import { type Pixel, pixel } from '../../geometry/frames.ts'

/** Where something lies along and across a curve, pixels. */
export interface AlongAcross {
  along: number
  across: number
}

/** How a curve moves across itself, at a place along, with each of its own parameters, and how that changes per pixel along. */
export interface CurveBasis {
  values: Float64Array
  slopes: Float64Array
}

/**
 * A curve that a stroke nearly follows. Places are told along it (pixels from its start) and across it (pixels, towards
 * the right of a straight one as one goes along it, towards the inside of a round one).
 */
export interface ReferenceCurve {
  /** Pixels. */
  length: number
  /** @param out receives where a place lies along and across */
  locate(x: number, y: number, out: AlongAcross): void
  /** The same of a place that may lie too far across: where it does not lie from low to high, false, and out tells nothing. */
  locateWithin(x: number, y: number, low: number, high: number, out: AlongAcross): boolean
  place(along: number, across: number): Pixel
  /** Unit vector across, at a place along. */
  across(along: number): Pixel
  /** The pixels in which a piece of its length lies, this far to both sides: [left, top, right, bottom]. */
  box(from: number, to: number, half: number): [number, number, number, number]
  basisAt(along: number): CurveBasis
  parameters: number
  /** The change of its parameters that moves it across by so much, pixels. */
  shifted(across: number): Float64Array
  /** The curve after its parameters have changed by this much. */
  moved(by: ArrayLike<number>): ReferenceCurve
  /** 1 / radius, towards the right; 0 for a straight one. */
  curvature: number
}

const rightOf = ([dx, dy]: Pixel): Pixel => pixel(-dy, dx)

/** A straight curve; its parameters move its two ends across. */
export function straightCurve(from: Pixel, to: Pixel): ReferenceCurve {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1])
  const dx = (to[0] - from[0]) / length
  const dy = (to[1] - from[1]) / length
  const [nx, ny] = rightOf(pixel(dx, dy))
  const place = (along: number, across: number): Pixel =>
    pixel(from[0] + along * dx + across * nx, from[1] + along * dy + across * ny)
  const locate = (x: number, y: number, out: AlongAcross): void => {
    out.along = (x - from[0]) * dx + (y - from[1]) * dy
    out.across = (x - from[0]) * nx + (y - from[1]) * ny
  }
  return {
    length,
    place,
    parameters: 2,
    curvature: 0,
    locate,
    locateWithin(x, y, low, high, out) {
      locate(x, y, out)
      return out.across >= low && out.across <= high
    },
    across: () => pixel(nx, ny),
    box: (a, b, half) => boxOf([place(a, -half), place(a, half), place(b, -half), place(b, half)], 0),
    basisAt: (along) => ({
      values: Float64Array.of(1 - along / length, along / length),
      slopes: Float64Array.of(-1 / length, 1 / length),
    }),
    shifted: (across) => Float64Array.of(across, across),
    moved: (by) => straightCurve(place(0, by[0] ?? 0), place(length, by[1] ?? 0)),
  }
}

/**
 * A round curve, from an angle over a sweep (radians, x towards y, so clockwise as a scan is seen when above 0); its
 * parameters are centre x, centre y, radius.
 * @param oval makes it a nearly round ellipse, as a circle becomes on paper that has shrunk more one way than the other:
 * the radius at angle φ is longer by oval[0]·cos 2φ + oval[1]·sin 2φ, pixels; both are parameters then. Left out: a circle.
 */
export function roundCurve(
  centre: Pixel,
  radius: number,
  start: number,
  sweep: number,
  oval?: readonly [number, number],
): ReferenceCurve {
  const way = sweep < 0 ? -1 : 1
  const length = Math.abs(sweep) * radius
  const angleAt = (along: number) => start + (way * along) / radius
  const [even, odd] = oval ?? [0, 0]
  const radiusAt = (a: number) =>
    oval === undefined ? radius : radius + even * Math.cos(2 * a) + odd * Math.sin(2 * a)
  const place = (along: number, across: number): Pixel => {
    const a = angleAt(along)
    const r = radiusAt(a) - across
    return pixel(centre[0] + r * Math.cos(a), centre[1] + r * Math.sin(a))
  }
  const middle = start + sweep / 2
  /** At least what the oval adds anywhere. */
  const slack = Math.abs(even) + Math.abs(odd)
  /** From the centre. Of pixels nothing overflows, which is what `Math.hypot` takes its time for. */
  const away = (x: number, y: number): number => {
    const dx = x - centre[0]
    const dy = y - centre[1]
    return Math.sqrt(dx * dx + dy * dy)
  }
  const locate = (x: number, y: number, out: AlongAcross): void => {
    const a = Math.atan2(y - centre[1], x - centre[0])
    const turns = Math.round((a - middle) / (2 * Math.PI))
    out.along = way * (a - turns * 2 * Math.PI - start) * radius
    out.across = radiusAt(a) - away(x, y)
  }
  const parameters = oval === undefined ? 3 : 5
  return {
    length,
    place,
    parameters,
    curvature: 1 / radius,
    locate,
    locateWithin(x, y, low, high, out) {
      const across = radius - away(x, y)
      // Many places of a box round a piece of a circle lie too far across: those need no angle.
      if (across < low - slack || across > high + slack) return false
      locate(x, y, out)
      return out.across >= low && out.across <= high
    },
    across(along) {
      const a = angleAt(along)
      return pixel(-Math.cos(a), -Math.sin(a))
    },
    box(a, b, half) {
      const corners: Pixel[] = []
      for (const s of [a, (a + b) / 2, b]) corners.push(place(s, Math.min(half, radius)), place(s, -half))
      const turn = (b - a) / radius / 2
      const more = 2 * Math.hypot(even, odd)
      return boxOf(corners, more + (radius + half) * (1 - Math.cos(Math.min(turn, Math.PI))))
    },
    basisAt(along) {
      const a = angleAt(along)
      const values = [-Math.cos(a), -Math.sin(a), -1, -Math.cos(2 * a), -Math.sin(2 * a)]
      const slopes = [
        (way * Math.sin(a)) / radius,
        (-way * Math.cos(a)) / radius,
        0,
        (2 * way * Math.sin(2 * a)) / radius,
        (-2 * way * Math.cos(2 * a)) / radius,
      ]
      return {
        values: Float64Array.from(values.slice(0, parameters)),
        slopes: Float64Array.from(slopes.slice(0, parameters)),
      }
    },
    shifted(across) {
      const by = new Float64Array(parameters)
      by[2] = -across
      return by
    },
    moved: (by) =>
      roundCurve(
        pixel(centre[0] + (by[0] ?? 0), centre[1] + (by[1] ?? 0)),
        Math.max(radius + (by[2] ?? 0), 1),
        start,
        sweep,
        oval && [even + (by[3] ?? 0), odd + (by[4] ?? 0)],
      ),
  }
}

function boxOf(corners: readonly Pixel[], more: number): [number, number, number, number] {
  const x = corners.map((c) => c[0])
  const y = corners.map((c) => c[1])
  return [
    Math.floor(Math.min(...x) - more),
    Math.floor(Math.min(...y) - more),
    Math.ceil(Math.max(...x) + more),
    Math.ceil(Math.max(...y) + more),
  ]
}
