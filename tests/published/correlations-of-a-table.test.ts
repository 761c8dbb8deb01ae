import { describe, expect, it } from 'vitest'
import { regressionLine } from '../../src/core/geometry/regression-line.ts'
import { tableSources } from '../../src/core/ledger/table/table-sources.ts'
import { correlatedNumbers } from '../../src/core/uncertainty/correlated.ts'
import type { Uncertain } from '../../src/core/uncertainty/uncertain.ts'
import { combined, type ReadTable, readTable } from '../core/ledger/table/documented-reader.ts'
import h2 from './data/gum-h2.json'
import h3 from './data/gum-h3.json'

/** The quantities of an example as rows of a table, out of its JSON. */
function asTable(quantities: Record<string, Uncertain>): ReadTable {
  const named = Object.entries(quantities)
  const { sources, by } = tableSources(named.map(([name, adopted]) => ({ name, adopted, factor: 1 })))
  return readTable(JSON.stringify({ sources, rows: named.map(([name], i) => ({ name, by: by[i] })) }))
}

const mean = (values: number[]): number => values.reduce((s, v) => s + v, 0) / values.length

describe('JCGM 100:2008 H.2 from rows V, I and phi of a table alone', () => {
  // Means of five simultaneous observations with the covariance of the means, 5.2.3 eq. 17.
  const series = [h2.V_volt, h2.I_milliampere.map((i) => i / 1000), h2.phi_radian]
  const n = h2.V_volt.length
  const covariance = series.map((a) =>
    series.map((b) => a.reduce((s, v, i) => s + (v - mean(a)) * ((b[i] ?? 0) - mean(b)), 0) / (n * (n - 1))),
  )
  const [V = 0, I = 0, phi = 0] = series.map(mean)
  const numbers = correlatedNumbers([V, I, phi], covariance, 'simultaneous observations', { dof: n - 1 })
  const table = asTable({ V: numbers[0], I: numbers[1], phi: numbers[2] } as Record<string, Uncertain>)

  const Z = V / I
  const derivatives = {
    R: { V: Math.cos(phi) / I, I: (-Z * Math.cos(phi)) / I, phi: -Z * Math.sin(phi) },
    X: { V: Math.sin(phi) / I, I: (-Z * Math.sin(phi)) / I, phi: Z * Math.cos(phi) },
    Z: { V: 1 / I, I: -Z / I, phi: 0 },
  }
  type Name = keyof typeof derivatives
  const u = (name: Name): number => combined(table, derivatives[name]).u
  /** From u of the sum: u²(a + b) = u²(a) + u²(b) + 2 r u(a) u(b), JCGM 100:2008, eq. 16. */
  const correlation = (a: Name, b: Name): number => {
    const [one, other] = [derivatives[a], derivatives[b]]
    const sum = { V: one.V + other.V, I: one.I + other.I, phi: one.phi + other.phi }
    return (combined(table, sum).u ** 2 - u(a) ** 2 - u(b) ** 2) / (2 * u(a) * u(b))
  }

  it('gives u(R) = 0.071 Ω, u(X) = 0.295 Ω, u(Z) = 0.236 Ω', () => {
    expect(u('R').toFixed(3)).toBe('0.071')
    // 0.29558 unrounded: the table prints 0.295, a unit of the last digit less than it rounds to.
    expect(u('X').toFixed(4)).toBe('0.2956')
    expect(u('Z').toFixed(3)).toBe('0.236')
  })

  it('correlates R, X and Z by −0.588, −0.485 and 0.993', () => {
    expect(correlation('R', 'X').toFixed(3)).toBe('-0.588')
    expect(correlation('R', 'Z').toFixed(3)).toBe('-0.485')
    expect(correlation('X', 'Z').toFixed(3)).toBe('0.993')
  })

  it('rests on four degrees of freedom in all three, since all come from the same five observations', () => {
    for (const name of ['R', 'X', 'Z'] as const) {
      expect(combined(table, derivatives[name]).dof).toBeCloseTo(4, 9)
    }
  })
})

describe('JCGM 100:2008 H.3 from the intercept and the slope as rows of a table alone', () => {
  const line = regressionLine(
    h3.t_celsius.map((t) => t - h3.t0),
    h3.b_celsius,
  )
  const table = asTable({ intercept: line.intercept, slope: line.slope })

  it('gives the correction at 30 °C with u 0.0041 °C, 9 degrees of freedom', () => {
    const { u, dof } = combined(table, { intercept: 1, slope: 30 - h3.t0 })
    expect(u.toFixed(4)).toBe('0.0041')
    expect(dof).toBeCloseTo(9, 9)
  })

  it('has the correlation of −0.930 in it: without it u would be 0.0073 °C', () => {
    const [ua, ub] = [combined(table, { intercept: 1 }).u, combined(table, { slope: 1 }).u]
    const sum = combined(table, { intercept: 1, slope: 1 }).u
    expect(((sum ** 2 - ua ** 2 - ub ** 2) / (2 * ua * ub)).toFixed(3)).toBe('-0.930')
    expect(Math.hypot(ua, (30 - h3.t0) * ub).toFixed(4)).toBe('0.0073')
  })
})
