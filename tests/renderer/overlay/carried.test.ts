import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { radians } from '../../../src/core/geometry/angle-units.ts'
import { pixel, screen } from '../../../src/core/geometry/frames.ts'
import { type Camera, movedBy, toScreen, zoomedAbout } from '../../../src/renderer/camera/camera.ts'
import { carried } from '../../../src/renderer/overlay/carried.ts'

const BOX = { width: 900, height: 500 }
const SHEET = { width: 5200, height: 3420 }
const START: Camera = { centre: pixel(2600, 1700), zoom: 0.5, turn: radians(0.3), mirror: true }

describe('what is drawn over the sheet, while it is moved', () => {
  it('stands where it would be drawn anew, however the sheet is moved and enlarged', () => {
    const way = fc.double({ min: -90, max: 90, noNaN: true })
    const factor = fc.double({ min: 0.8, max: 1.25, noNaN: true })
    const place = fc.tuple(fc.nat(5200), fc.nat(3420)).map(([x, y]) => pixel(x, y))
    fc.assert(
      fc.property(way, way, factor, place, (x, y, by, at) => {
        const now = zoomedAbout(movedBy(START, x, y), BOX, SHEET, screen(300, 200), by)
        const where = carried(START, now, BOX)
        if (where === null) throw new Error('It was not carried.')
        const [oldX, oldY] = toScreen(START, BOX, at)
        const [newX, newY] = toScreen(now, BOX, at)
        expect(where.x + where.scale * oldX).toBeCloseTo(newX, 6)
        expect(where.y + where.scale * oldY).toBeCloseTo(newY, 6)
      }),
    )
  })

  it('is drawn anew when the sheet is turned or mirrored, or was moved or enlarged far', () => {
    expect(carried(START, { ...START, turn: radians(0.31) }, BOX)).toBeNull()
    expect(carried(START, { ...START, mirror: false }, BOX)).toBeNull()
    expect(carried(START, movedBy(START, 400, 0), BOX)).toBeNull()
    expect(carried(START, { ...START, zoom: 1 }, BOX)).toBeNull()
    expect(carried(START, START, { width: 0, height: 0 })).toBeNull()
  })
})
