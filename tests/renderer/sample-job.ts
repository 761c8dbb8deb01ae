import sample from '../../samples/deck-ventilator/job.json' with { type: 'json' }
import type { Dimension, Job } from '../../src/core/job/model/types.ts'
import { readJob } from '../../src/core/job/read-job.ts'
import { dimensionTable } from '../../src/core/ledger/table/dimension-table.ts'
import type { TableRow } from '../../src/core/ledger/table/table.ts'

/** The job that a person meets first. */
export const sampleJob: Job = readJob(sample)

export const sampleTable = dimensionTable(sampleJob)

export function sampleDimension(name: string): Dimension {
  const dimension = sampleJob.dimensions.find((one) => one.name === name)
  if (dimension === undefined) throw new Error(`The sample has no dimension ${name}.`)
  return dimension
}

export function sampleRow(name: string): TableRow {
  const row = sampleTable.rows.find((one) => one.name === name)
  if (row === undefined) throw new Error(`The sample's table has no row ${name}.`)
  return row
}
