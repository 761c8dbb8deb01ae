import { describe, expect, it } from 'vitest'
import { type Pixel, pixel } from '../../../../src/core/geometry/frames.ts'
import type { Mark, View } from '../../../../src/core/job/model/types.ts'
import { outsideView } from '../../../../src/renderer/desk/in-hand/outside-view.ts'
import { isInside, viewsAt } from '../../../../src/renderer/desk/in-hand/views-at.ts'
import { noPicks, withMark, withPick } from '../../../../src/renderer/picking/picks.ts'

const box = (left: number, top: number, right: number, bottom: number): Pixel[] => [
  pixel(left, top),
  pixel(right, top),
  pixel(right, bottom),
  pixel(left, bottom),
]

const view = (id: string, sheet: string, outline?: Pixel[]): View => ({
  id,
  sheet,
  name: id,
  mapping: 'two-axis',
  references: [],
  ...(outline === undefined ? {} : { outline }),
})

const VIEWS = [
  view('elevation', 'S1', box(0, 0, 100, 100)),
  view('detail', 'S1', box(50, 50, 200, 200)),
  view('plan', 'S2', box(0, 0, 100, 100)),
  view('all', 'S1'),
]

describe('the view under a pick', () => {
  it('is the one in whose outline it lies, on its sheet', () => {
    expect(viewsAt(VIEWS, 'S1', pixel(10, 10)).map(({ id }) => id)).toEqual(['elevation'])
    expect(viewsAt(VIEWS, 'S2', pixel(10, 10)).map(({ id }) => id)).toEqual(['plan'])
    expect(viewsAt(VIEWS, 'S1', pixel(300, 10))).toEqual([])
  })

  it('is not certain where two views overlap', () => {
    expect(viewsAt(VIEWS, 'S1', pixel(75, 75)).map(({ id }) => id)).toEqual(['elevation', 'detail'])
  })

  it('follows an outline that is not convex', () => {
    const corner: Pixel[] = [
      pixel(0, 0),
      pixel(100, 0),
      pixel(100, 20),
      pixel(20, 20),
      pixel(20, 100),
      pixel(0, 100),
    ]
    expect(isInside(corner, pixel(10, 90))).toBe(true)
    expect(isInside(corner, pixel(90, 90))).toBe(false)
  })

  it('is doubted when a pick lies outside, and never for a view without an outline', () => {
    const tool = { kind: 'measure', view: 'elevation', measure: 'distance' } as const
    const picks = withPick(withPick(noPicks(tool), pixel(10, 10)), pixel(150, 10))
    const [elevation, , , all] = VIEWS
    if (elevation === undefined || all === undefined) throw new Error('no view')
    expect(outsideView(elevation, picks, [])).toBe(true)
    expect(outsideView(elevation, withPick(noPicks(tool), pixel(10, 10)), [])).toBe(false)
    expect(outsideView(all, picks, [])).toBe(false)
  })

  it('is doubted when an old mark that is taken lies outside', () => {
    const tool = { kind: 'measure', view: 'elevation', measure: 'distance' } as const
    const [elevation] = VIEWS
    if (elevation === undefined) throw new Error('no view')
    const at = (pixel: Pixel): Mark => ({
      id: 'M1',
      sheet: 'S1',
      kind: 'point',
      how: 'hand',
      sigma: 1,
      pixel,
    })
    for (const [place, outside] of [
      [pixel(150, 10), true],
      [pixel(50, 10), false],
    ] as const) {
      const mark = at(place)
      expect(outsideView(elevation, withMark(noPicks(tool), mark), [mark])).toBe(outside)
    }
  })
})
