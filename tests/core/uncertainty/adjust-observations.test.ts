import { Matrix, solve } from 'ml-matrix'
import { describe, expect, it } from 'vitest'
import {
  type AdjustedObservations,
  adjustObservations,
  type Equations,
} from '../../../src/core/uncertainty/adjust-observations.ts'
import { correlatedNumbers } from '../../../src/core/uncertainty/correlated.ts'
import { covariance, standardUncertainty } from '../../../src/core/uncertainty/covariance.ts'
import { randomStream } from '../../../src/core/uncertainty/random.ts'
import { exact, fromTerms, measured, type Uncertain } from '../../../src/core/uncertainty/uncertain.ts'

function adjusted(result: ReturnType<typeof adjustObservations>): AdjustedObservations {
  if (typeof result === 'string') throw new Error(result)
  return result
}

/** Linear equations B·x + A·p + c = 0. */
const linear =
  (b: readonly (readonly number[])[], c: readonly number[], a: readonly (readonly number[])[] = []) =>
  (values: readonly number[], parameters: readonly number[]): Equations => ({
    misclosure: b.map((row, k) => dot(row, values) + dot(a[k] ?? [], parameters) + (c[k] ?? 0)),
    byObservation: b,
    byParameter: a,
  })

const dot = (a: readonly number[], b: readonly number[]): number =>
  a.reduce((sum, x, i) => sum + x * (b[i] ?? 0), 0)

/**
 * A levelling net between two bench marks at 100.00 and 107.50 ft: seven differences of height, three new points.
 * Ghilani & Wolf, Adjustment Computations, the worked net of the chapter on differential levelling (from memory).
 */
const DIFFERENCES = [5.1, 2.34, -1.25, -6.13, -0.68, -3, 1.7]
const HEIGHTS = [
  [1, 0, 0],
  [-1, 0, 0],
  [0, 0, 1],
  [0, 0, -1],
  [-1, 1, 0],
  [0, 1, 0],
  [0, -1, 1],
]
const BENCH = [-100, 107.5, -107.5, 100, 0, -107.5, 0]
/** The loops and the ways from bench mark to bench mark. */
const LOOPS = [
  [1, 1, 0, 0, 0, 0, 0],
  [0, 0, 1, 1, 0, 0, 0],
  [1, 0, 0, 1, 1, 0, 1],
  [0, 0, -1, 0, 0, 1, 1],
]
const GAPS = [-7.5, 7.5, 0, 0]

const levelled = (us: readonly number[]): Uncertain[] =>
  DIFFERENCES.map((d, i) => measured(d, us[i] ?? 1, `line ${i + 1}`))

/** Observation by its parameters: −l + A·h + c = 0. */
const byHeights = linear(
  DIFFERENCES.map((_, i) => DIFFERENCES.map((_, j) => (i === j ? -1 : 0))),
  BENCH,
  HEIGHTS,
)

describe('a published levelling net', () => {
  const lengths = [4, 3, 2, 3, 2, 2, 2]
  const alike = adjusted(adjustObservations(levelled([1, 1, 1, 1, 1, 1, 1]), byHeights, [105, 104, 106]))
  const byLength = adjusted(
    adjustObservations(levelled(lengths.map((l) => Math.sqrt(l / 12))), byHeights, [105, 104, 106]),
  )

  it('gives the heights and the standard deviation of unit weight, all lines alike', () => {
    expect(alike.parameters.map((h) => h.value.toFixed(3))).toEqual(['105.141', '104.483', '106.188'])
    expect(Math.sqrt(alike.chi2 / alike.dof)).toBeCloseTo(0.05, 3)
    expect(alike.dof).toBe(4)
  })

  it('gives them with weights by the lengths of the lines', () => {
    expect(byLength.parameters.map((h) => h.value.toFixed(3))).toEqual(['105.150', '104.489', '106.197'])
    expect(Math.sqrt(byLength.chi2 / byLength.dof)).toBeCloseTo(0.107, 3)
  })

  it('comes out alike by the conditions of its loops', () => {
    const us = lengths.map((l) => Math.sqrt(l / 12))
    const loops = adjusted(adjustObservations(levelled(us), linear(LOOPS, GAPS)))
    expect(loops.dof).toBe(4)
    expect(loops.chi2).toBeCloseTo(byLength.chi2, 10)
    for (const [i, x] of loops.adjusted.entries()) {
      const other = byLength.adjusted[i] as Uncertain
      expect(x.value).toBeCloseTo(other.value, 10)
      expect(standardUncertainty(x)).toBeCloseTo(standardUncertainty(other), 10)
      expect(loops.residuals[i]).toBeCloseTo(byLength.residuals[i] as number, 10)
      expect(loops.normalised[i]).toBeCloseTo(byLength.normalised[i] as number, 9)
    }
  })
})

describe('angles of a triangle', () => {
  const sum = linear([[1, 1, 1]], [-180])

  it('measured alike share their misclosure alike, and each gains by it', () => {
    const angles = [59.9, 60.2, 60.2].map((a, i) => measured(a, 0.1, `angle ${i}`))
    const { adjusted: to, residuals, normalised, chi2, p } = adjusted(adjustObservations(angles, sum))
    expect(to.map((a) => a.value)).toEqual([
      expect.closeTo(59.8, 12),
      expect.closeTo(60.1, 12),
      expect.closeTo(60.1, 12),
    ])
    expect(residuals).toEqual([0.1, 0.1, 0.1].map((r) => expect.closeTo(r, 12)))
    // V − VBᵀ(BVBᵀ)⁻¹BV = σ²(1 − 1/3).
    for (const a of to) expect(standardUncertainty(a)).toBeCloseTo(0.1 * Math.sqrt(2 / 3), 12)
    // 0.3 over 0.1·√3, which is all that one condition can tell, of each of them alike.
    expect(normalised).toEqual([1, 1, 1].map(() => expect.closeTo(Math.sqrt(3), 12)))
    expect(chi2).toBeCloseTo(3, 12)
    expect(p).toBeCloseTo(0.0833, 4)
  })

  it('have an exact sum whatever they are uncertain by', () => {
    const angles = [measured(59.9, 0.1, 'a'), measured(60.2, 0.3, 'b'), exact(60.2)]
    const { adjusted: to, residuals, normalised } = adjusted(adjustObservations(angles, sum))
    expect(residuals[2]).toBe(0)
    expect(normalised[2]).toBe(0)
    const total = fromTerms(
      to.reduce((s, a) => s + a.value, 0),
      to.flatMap((a) => a.sources),
      to.flatMap((a) => a.coefficients),
    )
    expect(total.value).toBeCloseTo(180, 12)
    expect(standardUncertainty(total)).toBeLessThan(1e-15)
    // Variances 1 : 9 take the misclosure of 0.3 in that proportion.
    expect(residuals[0]).toBeCloseTo(0.03, 12)
    expect(residuals[1]).toBeCloseTo(0.27, 12)
  })
})

describe('against a solution of the whole system at once', () => {
  const random = randomStream(41)
  const draw = (rows: number, columns: number): number[][] =>
    Array.from({ length: rows }, () => Array.from({ length: columns }, () => random.normal()))

  it.each([
    ['conditions alone', 6, 3, 0],
    ['parameters alone', 6, 6, 2],
    ['both together', 7, 5, 2],
  ])('%s, all observations correlated', (_, n, m, u) => {
    const root = new Matrix(draw(n, n))
    const v = root.mmul(root.transpose())
    const [b, a, c] = [draw(m, n), u === 0 ? [] : draw(m, u), draw(1, m)[0] as number[]]
    const observations = correlatedNumbers(draw(1, n)[0] as number[], v.to2DArray(), 'x')
    const ours = adjusted(adjustObservations(observations, linear(b, c, a), Array<number>(u).fill(0)))
    // Stationary where V⁻¹v + Bᵀλ = 0 and Aᵀλ = 0 under B(x + v) + A p + c = 0; the unknowns are v, p, λ.
    const size = n + u + m
    const system = Matrix.zeros(size, size)
    system.setSubMatrix(solve(v, Matrix.eye(n)), 0, 0)
    system.setSubMatrix(new Matrix(b), n + u, 0)
    system.setSubMatrix(new Matrix(b).transpose(), 0, n + u)
    if (u > 0) {
      system.setSubMatrix(new Matrix(a), n + u, n)
      system.setSubMatrix(new Matrix(a).transpose(), n, n + u)
    }
    const values = observations.map((x) => x.value)
    const right = [...Array<number>(n + u).fill(0), ...b.map((row, k) => -(dot(row, values) + (c[k] ?? 0)))]
    const all = solve(system, Matrix.columnVector(right)).to1DArray()
    for (let i = 0; i < n; i++) {
      expect(ours.adjusted[i]?.value).toBeCloseTo((values[i] ?? 0) + (all[i] ?? 0), 8)
      expect(ours.residuals[i]).toBeCloseTo(-(all[i] ?? 0), 8)
    }
    for (let k = 0; k < u; k++) expect(ours.parameters[k]?.value).toBeCloseTo(all[n + k] ?? 0, 8)
    // The leading blocks of its inverse are the cofactors of what is adjusted and, negative, of the parameters.
    const inverse = solve(system, Matrix.eye(size))
    for (let i = 0; i < n; i++) {
      for (let j = 0; j < n; j++) {
        const [x, y] = [ours.adjusted[i] as Uncertain, ours.adjusted[j] as Uncertain]
        expect(covariance(x, y)).toBeCloseTo(inverse.get(i, j), 7)
      }
    }
    expect(ours.dof).toBe(m - u)
    const r = Matrix.columnVector(ours.residuals)
    expect(ours.chi2).toBeCloseTo(r.transpose().mmul(solve(v, r)).get(0, 0), 7)
  })
})

describe('conditions that are no straight lines', () => {
  /** Angles α, β, γ and the sides a, b over the first two: the sum of the angles, and the law of sines. */
  const triangle = ([al = 0, be = 0, ga = 0, a = 0, b = 0]: readonly number[]): Equations => ({
    misclosure: [al + be + ga - Math.PI, a * Math.sin(be) - b * Math.sin(al)],
    byObservation: [
      [1, 1, 1, 0, 0],
      [-b * Math.cos(al), a * Math.cos(be), 0, Math.sin(be), -Math.sin(al)],
    ],
    byParameter: [],
  })
  const observed = [
    measured(1.02, 0.01, 'α'),
    measured(0.79, 0.01, 'β'),
    measured(1.37, 0.01, 'γ'),
    measured(120.5, 0.8, 'a'),
    measured(99, 0.8, 'b'),
  ]

  it('hold in the end, and no other values that fulfil them lie nearer', () => {
    const { adjusted: to, chi2 } = adjusted(adjustObservations(observed, triangle))
    const at = to.map((x) => x.value)
    for (const f of triangle(at).misclosure) expect(Math.abs(f)).toBeLessThan(1e-9)
    const distance = (values: readonly number[]): number =>
      values.reduce(
        (s, x, i) =>
          s + ((x - (observed[i]?.value ?? 0)) / standardUncertainty(observed[i] as Uncertain)) ** 2,
        0,
      )
    expect(distance(at)).toBeCloseTo(chi2, 9)
    // Neighbours that fulfil them: β, α and b as they like, γ and a as the equations want them.
    for (const [da, db, ds] of [
      [1, 0, 0],
      [0, 1, 0],
      [0, 0, 1],
      [1, -1, 0.5],
      [-1, 0.4, -1],
    ] as const) {
      for (const far of [1e-3, -1e-3]) {
        const [al, be, b] = [(at[0] ?? 0) + far * da, (at[1] ?? 0) + far * db, (at[4] ?? 0) + 80 * far * ds]
        const other = [al, be, Math.PI - al - be, (b * Math.sin(al)) / Math.sin(be), b]
        expect(distance(other)).toBeGreaterThan(chi2)
      }
    }
  })
})

describe('what can’t be adjusted is refused', () => {
  const three = [measured(1, 0.1, 'a'), measured(2, 0.1, 'b'), exact(3)]

  it('a condition that follows from another', () => {
    const twice = linear(
      [
        [1, 1, 0],
        [2, 2, 0],
      ],
      [-3, -6],
    )
    expect(adjustObservations(three, twice)).toBe('dependent')
  })

  it('a condition of exact values alone', () => {
    expect(adjustObservations(three, linear([[0, 0, 1]], [-4]))).toBe('dependent')
  })

  it('a parameter that no equation fixes', () => {
    const loose = linear(
      [
        [1, 0, 0],
        [0, 1, 0],
      ],
      [0, 0],
      [
        [1, 1],
        [2, 2],
      ],
    )
    expect(adjustObservations(three, loose, [0, 0])).toBe('undetermined')
  })
})
