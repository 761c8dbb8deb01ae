/** A place on a stroke, x to the right and y upward. */
export type StrokePlace = readonly [number, number]

const STEPS = 8

/** Points of a smooth curve through these (Catmull & Rom 1974). */
function throughPoints(points: readonly StrokePlace[]): StrokePlace[] {
  const at = (i: number): StrokePlace => points[Math.min(Math.max(i, 0), points.length - 1)] ?? [0, 0]
  const curve: StrokePlace[] = [at(0)]
  for (let i = 0; i + 1 < points.length; i++) {
    const [p, q, r, s] = [at(i - 1), at(i), at(i + 1), at(i + 2)]
    for (let k = 1; k <= STEPS; k++) {
      const t = k / STEPS
      const along = (c: 0 | 1) =>
        0.5 *
        (2 * q[c] +
          (r[c] - p[c]) * t +
          (2 * p[c] - 5 * q[c] + 4 * r[c] - s[c]) * t * t +
          (3 * q[c] - p[c] - 3 * r[c] + s[c]) * t ** 3)
      curve.push([along(0), along(1)])
    }
  }
  return curve
}

function alongLines(points: readonly StrokePlace[]): StrokePlace[] {
  const all: StrokePlace[] = points.slice(0, 1)
  for (let i = 1; i < points.length; i++) {
    const [a, b] = [points[i - 1] ?? [0, 0], points[i] ?? [0, 0]]
    for (let k = 1; k <= STEPS; k++) {
      const t = k / STEPS
      all.push([a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t])
    }
  }
  return all
}

function alongArc([cx, cy, rx, ry, from, to]: readonly number[]): StrokePlace[] {
  const steps = 36
  return Array.from({ length: steps + 1 }, (_, k) => {
    const turn = (((from ?? 0) + (((to ?? 0) - (from ?? 0)) * k) / steps) * Math.PI) / 180
    return [(cx ?? 0) + (rx ?? 0) * Math.cos(turn), (cy ?? 0) + (ry ?? 0) * Math.sin(turn)] as const
  })
}

/** The points of one stroke as it stands in a skeleton. */
export function strokePoints(stroke: string): StrokePlace[] {
  const [form, ...given] = stroke.split(' ')
  const numbers = given.map(Number)
  if (numbers.some(Number.isNaN))
    throw new Error(`The stroke "${stroke}" has something in it that is no number.`)
  if (form === 'A') return alongArc(numbers)
  const points = Array.from(
    { length: numbers.length / 2 },
    (_, i): StrokePlace => [numbers[2 * i] ?? 0, numbers[2 * i + 1] ?? 0],
  )
  return form === 'C' ? throughPoints(points) : alongLines(points)
}
