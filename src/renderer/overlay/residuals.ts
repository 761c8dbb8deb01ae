import { type Pixel, pixel, type Vector, vectorLike } from '../../core/geometry/frames.ts'
import type { Reference } from '../../core/job/model/types.ts'
import type { TableReference } from '../../core/ledger/table/table.ts'
import { type MarkShape, mean } from './shape.ts'

/** How far a stated size reaches beyond what the fit makes of it, at its second end. Pixels, not enlarged. */
export interface Residual {
  at: Pixel
  vector: Vector<Pixel>
  /** Why it should be looked at, in a word or two; empty when it should not. */
  wrong: string
  setAside: boolean
}

/** The longest arrow of a view is at most this share of the diagonal of what is measured in it. */
const LONGEST = 0.06

/** Pixels below which a residual is what rounding leaves: enlarged until it is seen, it would show what is not there. */
const LEAST = 0.05

/** Whether a residual is more than rounding leaves. */
export const isSeen = ({ vector: [x, y] }: Residual): boolean => Math.hypot(x, y) >= LEAST

/** The residual arrows of one reference; a rectangle has one for its width and one for its height. */
export function residualsOf(
  reference: Reference,
  shapes: readonly MarkShape[],
  rows: readonly TableReference[],
): Residual[] {
  return rows.flatMap((row) => {
    const ends = endsOf(reference, row.part, shapes)
    if (ends === null || row.fitted === 0 || row.part === 'squareness') return []
    const [a, b] = ends
    const k = row.residual / row.fitted
    const wrong = row.setAside === true ? 'set aside' : row.suspect ? 'suspect' : ''
    return [
      {
        at: b,
        vector: vectorLike(a, (b[0] - a[0]) * k, (b[1] - a[1]) * k),
        wrong,
        setAside: row.setAside === true,
      },
    ]
  })
}

function endsOf(
  { kind }: Reference,
  part: TableReference['part'],
  shapes: readonly MarkShape[],
): [Pixel, Pixel] | null {
  const [first] = shapes
  if (kind === 'diameter') {
    if (first?.kind !== 'circle') return null
    const { centre, radius } = first
    return [pixel(centre[0] - radius, centre[1]), pixel(centre[0] + radius, centre[1])]
  }
  const [a, b, c] = shapes.map((shape) => (shape.kind === 'point' ? shape.at : null))
  if (!a || !b) return null
  if (part !== 'height') return [a, b]
  return c ? [b, c] : null
}

/** How the residuals of a view are drawn. */
export interface Enlargement {
  /** A round number: 1, 2 or 5 times a power of ten. */
  factor: number
  /** Arrows are cut off at this length, pixels of the scan. */
  longest: number
}

/**
 * The enlargement with which the longest residual of a view can be seen. What was set aside does not count: one gross
 * error would leave nothing to be seen of the others.
 */
export function enlargement(residuals: readonly Residual[]): Enlargement {
  if (residuals.length === 0) return { factor: 1, longest: Infinity }
  const middle = mean(residuals.map(({ at }) => at))
  const half = Math.max(...residuals.map(({ at: [x, y] }) => Math.hypot(x - middle[0], y - middle[1])))
  const longest = LONGEST * Math.max(2 * half, 100)
  const used = residuals.filter(({ setAside }) => !setAside)
  const largest = Math.max(0, ...used.map(({ vector: [x, y] }) => Math.hypot(x, y)))
  return { factor: largest < LEAST ? 1 : roundDown(longest / largest), longest }
}

/** A residual as it is drawn, and whether that is less than it comes to. */
export function enlarged(
  { at, vector: [x, y] }: Residual,
  { factor, longest }: Enlargement,
): { vector: Vector<Pixel>; cut: boolean } {
  const length = factor * Math.hypot(x, y)
  const k = length > longest ? (factor * longest) / length : factor
  return { vector: vectorLike(at, k * x, k * y), cut: length > longest }
}

function roundDown(value: number): number {
  if (value <= 1) return 1
  const power = 10 ** Math.floor(Math.log10(value))
  const digit = value / power
  return power * (digit >= 5 ? 5 : digit >= 2 ? 2 : 1)
}
