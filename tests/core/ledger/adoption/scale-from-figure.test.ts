import { describe, expect, it } from 'vitest'
import { pixel } from '../../../../src/core/geometry/frames.ts'
import type { Reference } from '../../../../src/core/job/model/types.ts'
import { dimension, found, point, printed, rowOf, scaled, smallJob } from '../small-job.ts'

const size = (id: string, a: string, b: string, text: string): Reference => ({
  id,
  kind: 'distance',
  marks: [a, b],
  size: text,
})

/** Other marks on the edges that the figured size runs between, and a length of its own. */
const MARKS = [
  point('P', pixel(100.6, 700)),
  point('Q', pixel(3099.2, 700)),
  point('D', pixel(1600, 1500)),
  point('E', pixel(100, 2100)),
  point('F', pixel(3100, 2100)),
]

const rowBeside = (text: string, references: Reference[]) =>
  rowOf(
    smallJob({
      marks: MARKS,
      references,
      dimensions: [dimension('plate', [printed(text), scaled(['P', 'Q'])])],
    }),
    'plate',
  )

describe('a scale that was taken from a figure', () => {
  it('is no witness for it, right or wrong', () => {
    for (const text of ['20"', '21"']) {
      const row = rowBeside(text, [size('R1', 'A', 'B', text)])
      expect(row).toMatchObject({ basis: 'printed', status: 'single' })
      expect(row.evidence[1]?.countsWith).toBe('p')
      expect(row.why).toMatch(/follows the figure, right or wrong, and that it agrees says nothing/)
      expect(row.why).not.toMatch(/would have shown/)
    }
  })

  it('is one for another figure between the same ends, and disputes it', () => {
    expect(rowBeside('21"', [size('R1', 'A', 'B', '20"')]).status).toBe('disputed')
  })

  it('is one where the figure stands elsewhere', () => {
    expect(rowBeside('20"', [size('R1', 'A', 'C', '10"')]).status).toBe('agreed')
  })

  it('shows the less of an error, the more the scale rests on the figure', () => {
    const errorOf = (references: Reference[]): number => {
      const row = rowBeside('20"', references)
      expect(row.status).toBe('agreed')
      return Number(/an error of ([\d.]+)"/.exec(row.why)?.[1])
    }
    const among = errorOf([
      size('R1', 'A', 'B', '20"'),
      size('R2', 'E', 'F', '20.002"'),
      size('R3', 'A', 'F', '24.037"'),
    ])
    const without = errorOf([size('R2', 'E', 'F', '20.002"'), size('R3', 'A', 'F', '24.037"')])
    expect(among / without).toBeGreaterThan(1.2)
  })
})

describe('one sitting that was entered twice', () => {
  it('is one witness, as a single reading that comes out the same is not', () => {
    const twice = (readings: string[]) =>
      rowOf(
        smallJob({ dimensions: [dimension('plate', [found(readings, 'f1'), found(readings, 'f2')])] }),
        'plate',
      )
    expect(twice(['10.02 in', '10.04 in'])).toMatchObject({ status: 'single' })
    expect(twice(['10.02 in', '10.04 in']).why).toContain('the same readings')
    expect(twice(['10.02 in'])).toMatchObject({ status: 'agreed' })
  })
})

describe('figures that differ', () => {
  it('are told apart by which of them governs', () => {
    const row = rowOf(
      smallJob({ dimensions: [dimension('plate', [printed('20"'), printed('21"', 'q')])] }),
      'plate',
    )
    expect(row.why).toMatch(/^The printed figure 20" governs, but printed 21" differs/)
  })
})

describe('what agrees and is surer than what governs', () => {
  const job = (readings: string[]) =>
    smallJob({
      marks: MARKS,
      instruments: [{ id: 'I', name: 'caliper', limit: '0.001"', resolution: '0.001"' }],
      dimensions: [dimension('plate', [scaled(['A', 'D']), found(readings, 'f', { instrument: 'I' })])],
    })

  it('is told with its figure', () => {
    const row = rowOf(job(['13.690', '13.691', '13.690', '13.691']), 'plate')
    expect(row).toMatchObject({ basis: 'scaled', status: 'agreed' })
    expect(row.why).toMatch(/The measured value, 13\.690\d?" ± 0\.00\d+", is surer\./)
  })

  it('lets no figure stand near that it speaks against', () => {
    const near = (readings: string[]) => rowOf(job(readings), 'plate').near
    expect(near(['13.624', '13.625', '13.625', '13.626'])).toBe('13 5/8"')
    expect(near(['13.697', '13.698', '13.697', '13.698'])).toBeUndefined()
  })
})
