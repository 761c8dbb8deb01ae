import { expect, it } from 'vitest'
import { radians } from '../../../src/core/geometry/angle-units.ts'
import { pixel, screen } from '../../../src/core/geometry/frames.ts'
import { dimensionTable } from '../../../src/core/ledger/table/dimension-table.ts'
import { wholeSheet } from '../../../src/renderer/camera/camera.ts'
import { displayList } from '../../../src/renderer/overlay/display-list.ts'
import { collide, type LetteredBox } from '../../../src/renderer/overlay/geometry-on-screen.ts'
import { layOut } from '../../../src/renderer/overlay/lay-out.ts'
import { largeJob } from '../../bench/large-job.ts'

const lettering = (text: string) => ({ width: 7 * text.length, height: 16 })
const BOX = { width: 720, height: 288 }

it('words of warning lie on no word and no figure, on a sheet with far more of them than there is room for', () => {
  const job = largeJob(500)
  const table = dimensionTable(job)
  const disputed = table.rows.filter(({ status }) => status === 'disputed').length
  const items = displayList({ job, table, sheet: 'S1', station: 'pick', selection: null })
  const start = { centre: pixel(0, 0), zoom: 1, turn: radians(0), mirror: false }
  const laid = layOut(items, wholeSheet(start, BOX, { width: 8000, height: 6000 }), BOX, lettering)
  const words = laid.flatMap(({ word }): LetteredBox[] => {
    if (word === null) return []
    const { width, height } = lettering(word.text)
    return [{ centre: screen(word.at[0] + width / 2, word.at[1]), angle: 0, width, height }]
  })
  const figures = laid.flatMap(({ figure }) => (figure === null ? [] : [figure]))
  expect(words.length).toBeGreaterThan(5)
  expect(words.length).toBeLessThan(disputed)
  expect(figures.length).toBeGreaterThan(0)
  words.forEach((word, k) => {
    for (const other of [...words.slice(k + 1), ...figures]) expect(collide(word, other)).toBe(false)
  })
})
