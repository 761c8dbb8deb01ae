import { expect, it } from 'vitest'
import { makeJob } from '../../samples/draw/make-job.ts'
import { dimensionTable } from '../../src/core/ledger/table/dimension-table.ts'
import { held, scaledErrors } from './scaled-errors.ts'

const SHEETS = 200

it('200 sheets drawn anew hold the truth within U in 95 % of their scaled values', () => {
  let values = 0
  let within = 0
  let named = 0
  let cannot = 0
  for (let seed = 1; seed <= SHEETS; seed++) {
    const { job, truth } = makeJob(seed)
    const table = dimensionTable(job)
    const errors = scaledErrors(table, truth)
    values += errors.length
    within += errors.filter(held).length
    const aside = table.views.flatMap((v) =>
      v.references.filter((r) => r.setAside).map((r) => `${v.id} ${r.id}`),
    )
    if (aside.includes(`${truth.badReference.view} ${truth.badReference.id}`)) named++
    cannot += table.views.filter((v) => Object.keys(v.parameters).length === 0).length
  }
  console.log(
    `${SHEETS} sheets: ${within} of ${values} scaled values within U, ${((100 * within) / values).toFixed(2)} %; ` +
      `the misread reference set aside on ${named}; views that could not be calibrated: ${cannot}`,
  )
  expect(values).toBeGreaterThan(20 * SHEETS)
  expect(within / values).toBeGreaterThan(0.93)
  expect(within / values).toBeLessThan(0.97)
  // Every one of these views has sound references enough.
  expect(cannot).toBe(0)
  expect(named / SHEETS).toBeGreaterThan(0.9)
})
