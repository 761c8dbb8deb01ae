import { cp } from 'node:fs/promises'
import { expect, test } from 'vitest'
import { benchWithScan } from '../fixtures/bench-with-scan.ts'

const SAMPLE = 'samples/deck-ventilator/scans/sheet-1.jpg'

// What stands there is what samples/draw draws.
test('the title block of the sample says what its drawing is, as proposals', async () => {
  const under = await benchWithScan((path) => cp(SAMPLE, path), 'sheet.jpg', {})
  await under.open()
  const labels = await under.ask('read-labels', { sheet: 'S1' })
  const of = (field: string) => labels.filter((one) => one.field === field).map(({ text }) => text)
  expect(of('title')).toEqual(['DECK VENTILATOR'])
  expect(of('number')).toEqual(['1172'])
  expect(of('date')).toContain('14 MARCH 1911')
  expect(of('drawn-by').join()).toMatch(/^E\.?T\.?W/)
  expect(of('scale').length).toBeGreaterThan(0)
  const [title] = labels.filter((one) => one.field === 'title')
  const [x = 0, y = 0] = title?.box ?? []
  expect(Math.hypot(x - 3925, y - 2770)).toBeLessThan(20)
  expect(title?.probability).toBeGreaterThan(0.8)
})
