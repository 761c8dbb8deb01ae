import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { radians } from '../../../src/core/geometry/angle-units.ts'
import { type Pixel, pixel, screen } from '../../../src/core/geometry/frames.ts'
import {
  alongScan,
  type Camera,
  fitted,
  inSight,
  movedBy,
  onTheSheet,
  onWholePixels,
  toPixel,
  toScreen,
  wholeSheet,
  zoomedAbout,
} from '../../../src/renderer/camera/camera.ts'

const BOX = { width: 900, height: 600 }
const SHEET = { width: 13_600, height: 17_600 }

const anyCamera: fc.Arbitrary<Camera> = fc.record({
  centre: fc
    .tuple(fc.double({ min: 0, max: 13_600, noNaN: true }), fc.double({ min: 0, max: 17_600, noNaN: true }))
    .map(([x, y]) => pixel(x, y)),
  zoom: fc.double({ min: 0.02, max: 60, noNaN: true }),
  turn: fc.double({ min: -Math.PI, max: Math.PI, noNaN: true }).map(radians),
  mirror: fc.boolean(),
})
const anyPlace = fc
  .tuple(fc.double({ min: 0, max: 900, noNaN: true }), fc.double({ min: 0, max: 600, noNaN: true }))
  .map(([x, y]) => screen(x, y))

const plain: Camera = { centre: pixel(100, 200), zoom: 2, turn: radians(0), mirror: false }

describe('where a sheet is looked at from', () => {
  it('shows the pixel it is centred on in the middle of the box', () => {
    expect(toScreen(plain, BOX, pixel(100, 200))).toEqual([450, 300])
    expect(toScreen(plain, BOX, pixel(110, 205))).toEqual([470, 310])
  })

  it('turns clockwise: after a quarter turn, what was to the right is below', () => {
    const [x, y] = toScreen({ ...plain, turn: radians(Math.PI / 2) }, BOX, pixel(110, 200))
    expect(x).toBeCloseTo(450, 9)
    expect(y).toBeCloseTo(320, 9)
  })

  it('mirrors left for right before it turns', () => {
    expect(toScreen({ ...plain, mirror: true }, BOX, pixel(110, 205))).toEqual([430, 310])
  })

  it('finds the very pixel under any place, turned and mirrored as may be', () => {
    fc.assert(
      fc.property(anyCamera, anyPlace, (camera, place) => {
        const [x, y] = toScreen(camera, BOX, toPixel(camera, BOX, place))
        expect(Math.hypot(x - place[0], y - place[1])).toBeLessThan(1e-6)
      }),
    )
  })

  it('drags what is seen with the pointer', () => {
    fc.assert(
      fc.property(anyCamera, anyPlace, (camera, place) => {
        const pixel = toPixel(camera, BOX, place)
        const [x, y] = toScreen(movedBy(camera, 30, -12), BOX, pixel)
        expect(Math.hypot(x - place[0] - 30, y - place[1] + 12)).toBeLessThan(1e-6)
      }),
    )
  })

  it('keeps the pixel under the pointer there while it zooms', () => {
    fc.assert(
      fc.property(
        anyCamera,
        anyPlace,
        fc.double({ min: 0.2, max: 5, noNaN: true }),
        (camera, place, factor) => {
          const pixel = toPixel(camera, BOX, place)
          const [x, y] = toScreen(zoomedAbout(camera, BOX, SHEET, place, factor), BOX, pixel)
          expect(Math.hypot(x - place[0], y - place[1])).toBeLessThan(1e-6)
        },
      ),
    )
  })

  it('zooms in to 64 screen pixels a pixel and out to half of what fits, and no further', () => {
    expect(zoomedAbout(plain, BOX, SHEET, screen(0, 0), 1e9).zoom).toBe(64)
    const out = zoomedAbout(plain, BOX, SHEET, screen(0, 0), 1e-9).zoom
    expect(out).toBeCloseTo(wholeSheet(plain, BOX, SHEET).zoom / 2, 12)
  })

  it('fits the whole sheet into the box however it is turned', () => {
    fc.assert(
      fc.property(anyCamera, (camera) => {
        const corners: Pixel[] = [pixel(0, 0), pixel(13_600, 0), pixel(13_600, 17_600), pixel(0, 17_600)]
        const whole = wholeSheet(camera, BOX, SHEET)
        expect(inSight(whole, BOX, corners, 23.9)).toBe(true)
        expect(inSight(whole, BOX, corners, 25)).toBe(false)
      }),
    )
  })

  it('fits a box of pixels but does not enlarge it beyond what was asked', () => {
    const camera = fitted(plain, BOX, [pixel(1000, 1000), pixel(1001, 1001)], 2)
    expect(camera.zoom).toBe(2)
    expect(camera.centre[0]).toBeCloseTo(1000.5, 9)
  })

  it('never loses the sheet from sight', () => {
    expect(onTheSheet({ ...plain, centre: pixel(-500, 99_999) }, SHEET).centre).toEqual([0, 17_600])
  })

  it('takes right as right on a sheet that is turned by a quarter', () => {
    const [dx, dy] = alongScan({ ...plain, zoom: 1, turn: radians(Math.PI / 2) }, 1, 0)
    expect(dx).toBeCloseTo(0, 12)
    expect(dy).toBeCloseTo(-1, 12)
  })

  it('shown one to one, has each pixel of the scan on one pixel of the screen, and moves less than one for that', () => {
    const densities = fc.constantFrom(1, 1.25, 1.5, 2)
    fc.assert(
      fc.property(anyCamera, densities, (any, density) => {
        const camera = { ...any, zoom: 1 / density, turn: radians(0), mirror: false }
        const sharp = onWholePixels(camera, BOX, density)
        for (const at of toScreen(sharp, BOX, pixel(0, 0))) {
          expect(Math.abs(at * density - Math.round(at * density))).toBeLessThan(1e-6)
        }
        const [x, y] = toScreen(sharp, BOX, camera.centre)
        expect(Math.abs(x - BOX.width / 2) * density).toBeLessThan(0.5 + 1e-6)
        expect(Math.abs(y - BOX.height / 2) * density).toBeLessThan(0.5 + 1e-6)
      }),
    )
  })
})
