/** A plate with a hole as it lies on a scan: strokes at known places, drawn here and nowhere else. */

export type XY = readonly [x: number, y: number]

/** Pixels of the scan for each millimetre, along and across the grain of the paper, which has shrunk more one way. */
const ALONG = 5
const ACROSS = 4.97
/** How the sheet lies on the scan, from x towards y. */
export const GRAIN_DEGREES = 1.3
const STROKE = 4
const BLUR = 0.8
const [GROUND, INK, NOISE] = [226, 48, 4]

export const SCAN = { width: 760, height: 540 }

/** True size, millimetres. */
export const PLATE = { width: 120, height: 80 }
export const HOLE = { centre: [56, 38] as XY, diameter: 40 }

const turn = (GRAIN_DEGREES * Math.PI) / 180
const [COS, SIN] = [Math.cos(turn), Math.sin(turn)]
const CORNER: XY = [82.4, 61.7]

/** The pixel that a place on the plate is drawn at; its corner is the origin, x along, y down. */
export const drawnAt = ([x, y]: XY): XY => [
  CORNER[0] + COS * ALONG * x - SIN * ACROSS * y,
  CORNER[1] + SIN * ALONG * x + COS * ACROSS * y,
]

const distanceToSegment = ([x, y]: XY, [ax, ay]: XY, [bx, by]: XY): number => {
  const [dx, dy] = [bx - ax, by - ay]
  const t = Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy)))
  return Math.hypot(x - ax - t * dx, y - ay - t * dy)
}

/** First order in how far it lies from the ellipse that the hole is on the scan; it is nearly a circle. */
const distanceToHole = ([x, y]: XY): number => {
  const [cx, cy] = drawnAt(HOLE.centre)
  const [u, v] = [COS * (x - cx) + SIN * (y - cy), COS * (y - cy) - SIN * (x - cx)]
  const [a, b] = [(ALONG * HOLE.diameter) / 2, (ACROSS * HOLE.diameter) / 2]
  const r = Math.hypot(u / a, v / b)
  return Math.abs(((r - 1) * r) / Math.hypot(u / (a * a), v / (b * b)))
}

/** The share of ink at a distance from the middle of a stroke whose edges are blurred; a logistic stands for the edge. */
const inkAt = (distance: number): number => {
  const edge = (z: number): number => 1 / (1 + Math.exp((-1.702 * z) / BLUR))
  return edge(STROKE / 2 - distance) - edge(-STROKE / 2 - distance)
}

/** Numbers about 0 with standard deviation 1, the same ones for the same seed: twelve uniform ones less their mean. */
function noise(seed: number): () => number {
  let state = seed >>> 0
  const uniform = (): number => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0
    return state / 2 ** 32
  }
  return () => {
    let sum = -6
    for (let i = 0; i < 12; i++) sum += uniform()
    return sum
  }
}

/** The scan, grey values row by row. */
export function drawPlate(seed: number): Uint8Array {
  const corners: XY[] = [
    [0, 0],
    [PLATE.width, 0],
    [PLATE.width, PLATE.height],
    [0, PLATE.height],
  ]
  const sides = corners.map((at, i): [XY, XY] => [drawnAt(at), drawnAt(corners[(i + 1) % 4] ?? at)])
  const random = noise(seed)
  const { width, height } = SCAN
  const grey = new Uint8Array(width * height)
  for (let row = 0; row < height; row++) {
    for (let column = 0; column < width; column++) {
      const centre: XY = [column + 0.5, row + 0.5]
      const distance = Math.min(
        distanceToHole(centre),
        ...sides.map(([from, to]) => distanceToSegment(centre, from, to)),
      )
      grey[row * width + column] = Math.round(GROUND + (INK - GROUND) * inkAt(distance) + NOISE * random())
    }
  }
  return grey
}
