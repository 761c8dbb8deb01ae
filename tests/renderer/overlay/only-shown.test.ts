import { describe, expect, it } from 'vitest'
import { nextShows, SHOWS } from '../../../src/renderer/bench/shows.ts'
import { displayList } from '../../../src/renderer/overlay/display-list.ts'
import { sampleJob as job, sampleTable as table } from '../sample-job.ts'

const selection = { kind: 'dimension', name: 'flange_bore' } as const
const shown = (over: Partial<Parameters<typeof displayList>[0]>) =>
  displayList({ job, table, sheet: 'sheet-1', station: 'pick', selection, ...over })

describe('What is drawn over a sheet when less is wanted', () => {
  it('is nothing at all, so that nothing of it is hit by a click', () => {
    expect(shown({ shows: 'none' })).toEqual([])
  })

  it('is what is chosen alone', () => {
    const items = shown({ shows: 'chosen' })
    expect(items.length).toBeGreaterThan(0)
    expect(items.every(({ chosen }) => chosen)).toBe(true)
    expect(shown({ shows: 'chosen', selection: null })).toEqual([])
  })

  it('is what belongs to one view, and what is chosen', () => {
    const items = shown({ shows: 'view', view: 'elevation', selection: null })
    expect(items.filter(({ kind }) => kind === 'view').map(({ about }) => about)).toEqual([
      { kind: 'view', id: 'elevation' },
    ])
    const sizes = items.filter((item) => item.kind === 'size')
    expect(sizes.length).toBeGreaterThan(3)
    expect(new Set(sizes.map(({ view }) => view))).toEqual(new Set(['elevation']))
    const all = shown({ selection: null })
    expect(items.length).toBeLessThan(all.length)
    const besides = shown({ shows: 'view', view: 'elevation' })
    expect(besides.some((item) => item.kind === 'size' && item.chosen && item.view !== 'elevation')).toBe(
      true,
    )
  })

  it('goes round from least to most and back to least', () => {
    expect(SHOWS.map(nextShows)).toEqual(['chosen', 'view', 'all', 'none'])
  })
})
