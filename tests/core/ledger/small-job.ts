import { type Pixel, pixel } from '../../../src/core/geometry/frames.ts'
import type { Dimension, Evidence, Job, Mark, Reference } from '../../../src/core/job/model/types.ts'
import { readJob } from '../../../src/core/job/read-job.ts'
import { dimensionTable } from '../../../src/core/ledger/table/dimension-table.ts'
import type { TableRow } from '../../../src/core/ledger/table/table.ts'

/** A point mark. */
export const point = (id: string, pixel: Pixel, more: Partial<Mark> = {}): Mark =>
  ({ id, sheet: 'S1', how: 'hand', sigma: 1, kind: 'point', pixel, ...more }) as Mark

/**
 * A job with one view at half size, one reference of 20 in over 3000 px, and no draughting error:
 * one inch is 150 px.
 */
export function smallJob(parts: Partial<Job> & { references?: Reference[] } = {}): Job {
  const { references, ...rest } = parts
  return readJob({
    format: 'scantling-job',
    version: 1,
    title: 'Test job',
    unit: 'in',
    people: [],
    instruments: [],
    sheets: [
      {
        id: 'S1',
        title: 'Sheet 1',
        record: {},
        scan: { file: 'a.png', sha256: 'a'.repeat(64), page: 1, width: 5000, height: 4000, dpi: 300 },
        draughting: '0 mm',
      },
    ],
    views: [
      {
        id: 'V1',
        sheet: 'S1',
        name: 'Elevation',
        drawnScale: 0.5,
        mapping: 'uniform',
        references: references ?? [{ id: 'R1', kind: 'distance', marks: ['A', 'B'], size: '20"' }],
      },
    ],
    marks: [
      point('A', pixel(100, 100)),
      point('B', pixel(3100, 100)),
      point('C', pixel(1600, 100)),
      ...(rest.marks ?? []),
    ],
    dimensions: rest.dimensions ?? [],
    relations: rest.relations ?? [],
    notes: [],
    ...Object.fromEntries(
      Object.entries(rest).filter(([k]) => !['marks', 'dimensions', 'relations'].includes(k)),
    ),
  })
}

export const dimension = (name: string, evidence: Evidence[], more: Partial<Dimension> = {}): Dimension => ({
  name,
  label: name,
  kind: 'length',
  evidence,
  ...more,
})

export const printed = (text: string, id = 'p', more: object = {}): Evidence => ({
  id,
  basis: 'printed',
  text,
  ...more,
})
export const scaled = (marks: string[], id = 's', more: object = {}): Evidence => ({
  id,
  basis: 'scaled',
  view: 'V1',
  measure: 'distance',
  marks,
  ...more,
})
export const found = (readings: string[], id = 'f', more: object = {}): Evidence => ({
  id,
  basis: 'found',
  readings,
  ...more,
})
export const derived = (formula: string, id = 'd', more: object = {}): Evidence => ({
  id,
  basis: 'derived',
  formula,
  ...more,
})

export function rowOf(job: Job, name: string): TableRow {
  const row = dimensionTable(job).rows.find((r) => r.name === name)
  if (row === undefined) throw new Error(`no row ${name}`)
  return row
}
