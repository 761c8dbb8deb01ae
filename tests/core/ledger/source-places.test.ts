import { expect, it } from 'vitest'
import type { Job, Mark } from '../../../src/core/job/model/types.ts'
import { newPlaces, placeOf, placesAfter } from '../../../src/core/ledger/assessment/source-places.ts'
import { point, smallJob } from './small-job.ts'

const job = smallJob()
const withMarks = (marks: readonly Mark[]): Job => ({ ...job, marks: [...marks] })
const more = (n: number): Mark[] => Array.from({ length: n }, (_, i) => point(`X${i}`, [i, i] as never))

it('What was there keeps its place, and what comes stands between its neighbours', () => {
  const before = newPlaces(job)
  const [first, ...rest] = job.marks as [Mark, ...Mark[]]
  const after = placesAfter(withMarks([first, ...more(3), ...rest]), before)
  if (after === null) throw new Error('There was room for three.')
  const at = (id: string): number => placeOf(after.mark, id)
  for (const { id } of job.marks) expect(at(id)).toBe(placeOf(before.mark, id))
  const order = [first.id, 'X0', 'X1', 'X2', ...rest.map(({ id }) => id)].map(at)
  expect([...order].sort((a, b) => a - b)).toEqual(order)
  expect(new Set(order).size).toBe(order.length)
})

it('No more are placed than there is room for, so that none stands among things of another kind', () => {
  const before = newPlaces(job)
  let came = 0
  for (let n = 1; n < 1000; n++) {
    const after = placesAfter(withMarks([...job.marks, ...more(n)]), before)
    if (after === null) break
    came = n
    const last = Math.max(...after.mark.places.values())
    expect(last).toBeLessThan(Math.min(...after.dimension.places.values(), after.dimension.from + 1))
  }
  expect(came).toBeGreaterThan(15)
  expect(came).toBeLessThan(999)
})

it('Where things changed their order there are none: all get new ones', () => {
  expect(placesAfter(withMarks([...job.marks].reverse()), newPlaces(job))).toBeNull()
})
