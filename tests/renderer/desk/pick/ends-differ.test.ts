import { expect, it } from 'vitest'
import { type Pixel, pixel } from '../../../../src/core/geometry/frames.ts'
import { applyEdit } from '../../../../src/core/job/edits/edit.ts'
import { trySlotEnds } from '../../../../src/core/job/from-picks/add-slot.ts'
import { dimensionTable } from '../../../../src/core/ledger/table/dimension-table.ts'
import { endsDifferInWords } from '../../../../src/renderer/desk/pick/ends-differ-words.ts'
import { foundEnd, PER_MM, placesOnEnd, slotJob } from '../../../core/job/from-picks/slot-job.ts'
import { seededMint } from '../../../core/job/ids/seeded-mint.ts'

/** What is said of ends of so many millimetres, each place on them as sure as sigma, pixels. */
function said(one: number, other: number, sigma: number): string {
  const end = (at: Pixel, across: number, top: number) =>
    foundEnd(placesOnEnd(at, (across * PER_MM) / 2, top), sigma)
  const ends = [end(pixel(700, 600), one, Math.PI), end(pixel(900, 600), other, 0)]
  const made = trySlotEnds(slotJob(), { view: 'V1', ends }, 'ends', seededMint(7))
  if ('refused' in made) throw new Error('no ends')
  const [row] = dimensionTable(applyEdit(slotJob(), made.edit).job).rows
  if (row === undefined) throw new Error('no row')
  return endsDifferInWords(row, 'mm')
}

it('says of ends that are not of one size how large each is, and nothing of what may be of one size', () => {
  expect(said(12.1, 14, 0.4)).toMatch(
    /^The two ends are not of one size: ⌀ 12\.1\d* mm ± 0\.\d+ mm and ⌀ 14\.0\d* mm ± 0\.\d+ mm\. /,
  )
  expect(said(12.1, 12.1, 0.4)).toBe('')
  expect(said(12.1, 12.2, 0.4)).toBe('')
  // The same difference, picked more surely.
  expect(said(12.1, 12.2, 0.04)).toMatch(/^The two ends are not of one size/)
  // And what is a difference of 1.9 mm, picked from far off.
  expect(said(12.1, 14, 8)).toBe('')
})
