import { expect, it } from 'vitest'
import { pixel } from '../../../src/core/geometry/frames.ts'
import { newJob } from '../../../src/core/job/model/new-job.ts'
import type { Mark } from '../../../src/core/job/model/types.ts'
import { readJob } from '../../../src/core/job/read-job.ts'
import { dimensionTable } from '../../../src/core/ledger/table/dimension-table.ts'
import { tableSchema } from '../../../src/core/ledger/table/table-schema.ts'

const at = (id: string, x: number, y: number): Mark => ({
  id,
  sheet: 'S1',
  how: 'hand',
  sigma: 1,
  kind: 'point',
  pixel: pixel(x, y),
})

/** Six sizes on paper that has shrunk by 4 % up the sheet, and not along it. */
const shrunk = () => {
  const sizes = [1, 2, 3].flatMap((k) => [
    { along: [at(`A${k}`, 100, 100 * k), at(`B${k}`, 100 + 800 * k, 100 * k)], size: 80 * k },
    { along: [at(`C${k}`, 100 * k, 100), at(`D${k}`, 100 * k, 100 + 768 * k)], size: 80 * k },
  ])
  return readJob({
    ...newJob('Shrunk', 'mm'),
    sheets: [
      {
        id: 'S1',
        title: 'One',
        record: {},
        draughting: '0.01 mm',
        scan: { file: 'a.png', sha256: '0'.repeat(64), page: 1, width: 4000, height: 3000 },
      },
    ],
    marks: sizes.flatMap(({ along }) => along),
    views: [
      {
        id: 'V1',
        sheet: 'S1',
        name: 'Plan',
        mapping: 'uniform',
        references: sizes.map(({ along, size }, k) => ({
          id: `R${k + 1}`,
          kind: 'distance',
          marks: along.map(({ id }) => id),
          size: `${size} mm`,
        })),
      },
    ],
  })
}

it('The table names the mapping that its suggestion is about: two scales for paper that shrank one way', () => {
  const table = dimensionTable(shrunk())
  expect(table.views[0]).toMatchObject({ suggests: 'two-axis' })
  expect(table.views[0]?.suggestion).toMatch(
    /^These figured sizes fit better as “Two ways” than as “Same both ways”\.$/,
  )
  expect(tableSchema.parse(table)).toEqual(table)
})
