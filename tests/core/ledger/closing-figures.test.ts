import { describe, expect, it } from 'vitest'
import { pixel } from '../../../src/core/geometry/frames.ts'
import type { Reference } from '../../../src/core/job/model/types.ts'
import { dimensionTable } from '../../../src/core/ledger/table/dimension-table.ts'
import { tableSchema } from '../../../src/core/ledger/table/table-schema.ts'
import { dimension, point, scaled, smallJob } from './small-job.ts'

const size = (id: string, a: string, b: string, text: string): Reference => ({
  id,
  kind: 'distance',
  marks: [a, b],
  size: text,
})

/** A view of one inch to 30 px: A–C–B along, with C 0.2 px off, and D above A. */
function viewOf(...references: Reference[]) {
  const job = smallJob({
    marks: [point('M', pixel(1360, 100.2)), point('D', pixel(100, 2100))],
    dimensions: [dimension('d', [scaled(['C', 'D'])])],
    references,
  })
  const table = dimensionTable(job)
  expect(tableSchema.parse(table)).toEqual(table)
  const [view] = table.views
  if (view === undefined) throw new Error('no view')
  return { ...view, table }
}

describe('figured sizes that close on themselves', () => {
  it('are said to check the figures where they add up', () => {
    const { problem, remarks, dof } = viewOf(
      size('R1', 'A', 'M', `3'-6"`),
      size('R2', 'M', 'B', `4'-10"`),
      size('R3', 'A', 'B', `8'-4"`),
    )
    expect(problem).toBeUndefined()
    expect(dof).toBe(1)
    expect(remarks).toContain(`3'-6" and 4'-10" add up to 8'-4", as is printed: the figures agree.`)
  })

  it('are named, with what they miss by, where they do not', () => {
    const { problem, closings, table } = viewOf(
      size('R1', 'A', 'M', `3'-6"`),
      size('R2', 'M', 'B', `4'-10"`),
      size('R3', 'A', 'B', `8'-4 1/4"`),
    )
    expect(problem).toMatch(/^3'-6" and 4'-10" add up to 8'-4", but 8'-4 1\/4" is printed: out by 1\/4"\. /)
    expect(closings).toMatchObject([
      { kind: 'sum', by: ['R1', 'R2'], given: ['R3'], expected: 100, stated: 100.25, closes: false },
    ])
    expect(table.cautions.some((caution) => caution.includes('out by 1/4"'))).toBe(true)
  })

  it('are said to lie within the rounding of the figures', () => {
    const { problem, remarks } = viewOf(
      size('R1', 'A', 'M', '1067 mm'),
      size('R2', 'M', 'B', '1473 mm'),
      size('R3', 'A', 'B', '2540.3 mm'),
    )
    expect(problem).toBeUndefined()
    expect(remarks?.at(-1)).toMatch(
      / add up to 100", but 2540\.3 mm, 100\.0\d+", is printed: that is within the rounding of the figures\.$/,
    )
  })

  it('are two readings of one figure', () => {
    const { problem } = viewOf(size('R1', 'A', 'B', '8\'-4"'), size('R2', 'B', 'A', '8\'-4 1/2"'))
    expect(problem).toMatch(
      /^8'-4" is printed, and between the same marks 8'-4 1\/2" is printed: out by 1\/2"\./,
    )
  })

  it('check nothing but the figures where they alone scale the view', () => {
    const { dof, p, remarks } = viewOf(size('R1', 'A', 'B', '100"'), size('R2', 'B', 'A', '100"'))
    expect(dof).toBe(0)
    expect(p).toBeNull()
    expect(remarks).toContain(
      '100" (R1) and 100" (R2) give one length between the same marks, and say the same, 100".',
    )
  })

  it('and whatever else is absurd about figured sizes is told in words', () => {
    const least = '1/99999999999999999999"'
    const finely = viewOf(
      size('R1', 'A', 'M', '10"'),
      size('R2', 'B', 'A', least),
      size('R3', 'M', 'B', '1.000000000000000001"'),
      size('R4', 'M', 'B', least),
      size('R5', 'A', 'M', least),
    )
    expect(finely.problem).toMatch(/\.$/)
    const shared = viewOf(
      size('R1', 'A', 'M', least),
      size('R2', 'M', 'A', '1000000"'),
      size('R3', 'M', 'A', least),
      size('R4', 'A', 'M', '99999999999999999999 m'),
    )
    expect(shared.problem).toMatch(/\.$/)
    const marks = ['F', 'G'].map((id, i) => point(id, pixel(100 + 2000 * i, 3000), { sigma: 1e300 }))
    const job = smallJob({ marks, references: [size('R1', 'F', 'G', '10"')] })
    expect(dimensionTable(job).views[0]?.problem).toContain('beyond all bounds')
  })
})
