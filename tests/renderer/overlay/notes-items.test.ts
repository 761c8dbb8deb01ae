import { describe, expect, it } from 'vitest'
import { radians } from '../../../src/core/geometry/angle-units.ts'
import { type Pixel, pixel, type Screen, screen } from '../../../src/core/geometry/frames.ts'
import type { Selection } from '../../../src/renderer/bench/selection.ts'
import type { Station } from '../../../src/renderer/bench/stations.ts'

import { layOut } from '../../../src/renderer/overlay/lay-out.ts'
import { cloudAlong, layOutNote, noteItems } from '../../../src/renderer/overlay/notes-items.ts'
import { sampleJob } from '../sample-job.ts'

const items = (station: Station, selection: Selection | null = null) =>
  noteItems({ job: sampleJob, sheet: 'sheet-1', station, selection })

const square: Screen[] = [screen(100, 100), screen(300, 100), screen(300, 300), screen(100, 300)]

describe('Notes over a sheet', () => {
  it('are clouds where the sheet is looked over, and triangles where it is measured', () => {
    expect(items('sheet').map(({ cloud }) => cloud)).toEqual(sampleJob.notes.map(() => true))
    expect(items('pick').map(({ cloud }) => cloud)).toEqual(sampleJob.notes.map(() => false))
    expect(items('pick', { kind: 'note', id: 'N1' }).find(({ number }) => number === '1')).toMatchObject({
      chosen: true,
      cloud: true,
    })
  })

  it('are on their own sheet only, and one about a sheet as a whole is not drawn', () => {
    expect(noteItems({ job: sampleJob, sheet: 'sheet-2', station: 'sheet', selection: null })).toEqual([])
    const [note] = sampleJob.notes
    if (note === undefined) throw new Error('The sample has notes.')
    const job = { ...sampleJob, notes: [{ ...note, outline: [] as Pixel[] }] }
    expect(noteItems({ job, sheet: 'sheet-1', station: 'sheet', selection: null })).toEqual([])
  })

  it('bulge outwards, whichever way round their outline was drawn', () => {
    for (const points of [square, [...square].reverse()]) {
      for (const [x, y] of cloudAlong(points)) {
        const inside = x > 100.001 && x < 299.999 && y > 100.001 && y < 299.999
        expect(inside).toBe(false)
        expect(Math.min(x, y)).toBeGreaterThan(100 - 8)
        expect(Math.max(x, y)).toBeLessThan(300 + 8)
      }
    }
  })

  it('are of few enough lines however closely they are seen', () => {
    const far = square.map(([x, y]): Screen => screen(1e6 * x, 1e6 * y))
    expect(cloudAlong(far).length).toBeLessThan(6000)
    expect(cloudAlong([screen(5, 5)]).every(([x, y]) => x === 5 && y === 5)).toBe(true)
  })

  it('keep their number whatever lettering they lie on', () => {
    const camera = { centre: pixel(2600, 1700) as Pixel, zoom: 0.13, turn: radians(0), mirror: false }
    const twice = items('scale').flatMap((item) => [
      item,
      { ...item, about: { kind: 'note', id: 'N9' } as const },
    ])
    const laid = layOut(twice, camera, { width: 848, height: 490 }, () => ({ width: 8, height: 12 }))
    expect(laid.length).toBeGreaterThan(1)
    for (const { figure } of laid) expect(figure).not.toBeNull()
  })

  it('carry their number in a triangle at the upper right corner, as revisions do', () => {
    const [item] = items('sheet')
    if (item === undefined) throw new Error('The sample has notes.')
    const { strokes, figure } = layOutNote(
      item,
      ([x, y]) => screen(x, y),
      () => ({ width: 8, height: 12 }),
    )
    const triangle = strokes.at(-1)?.points ?? []
    const right = Math.max(...item.outline.map(([x]) => x))
    const top = Math.min(...item.outline.map(([, y]) => y))
    expect(triangle).toHaveLength(3)
    expect(triangle[1]?.[0]).toBe(right)
    for (const [, y] of triangle) expect(y).toBeLessThan(top)
    expect(figure?.text).toBe('1')
  })
})
