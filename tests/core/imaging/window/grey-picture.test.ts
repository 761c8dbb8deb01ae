import { describe, expect, it } from 'vitest'
import {
  type FoundStroke,
  findCircle,
  findCrossing,
  findLine,
  findPoint,
  type GreyPicture,
  type GreyWindow,
  greyOfPixel,
  type NoStroke,
} from '../../../../src/core/imaging/index.ts'
import { greyAt } from '../../../../src/core/imaging/window/grey-at.ts'
import { caseStream } from '../simulate/case-stream.ts'
import { circleCase } from '../simulate/circle-case.ts'
import { crossingCase } from '../simulate/crossing-case.ts'
import { lineCase } from '../simulate/line-case.ts'
import { someLook } from '../simulate/look.ts'
import { pointCase } from '../simulate/point-case.ts'

/** A window cut into tiles, the last ones first: in no order is anything to be found otherwise. */
function inTiles({ left, top, width, height, data }: GreyWindow, across = 37, down = 41): GreyWindow[] {
  const tiles: GreyWindow[] = []
  for (let y = 0; y < height; y += down) {
    for (let x = 0; x < width; x += across) {
      const [w, h] = [Math.min(across, width - x), Math.min(down, height - y)]
      const at = (i: number): number => (y + Math.floor(i / w)) * width + x + (i % w)
      const tile = Float32Array.from({ length: w * h }, (_, i) => data[at(i)] ?? Number.NaN)
      tiles.unshift({ left: left + x, top: top + y, width: w, height: h, data: tile })
    }
  }
  return tiles
}

/** The numbers that say where a stroke is and how surely. */
function told(found: FoundStroke | NoStroke): number[] {
  switch (found.kind) {
    case 'none':
      throw new Error(`It is not found: ${found.because.code}.`)
    case 'point':
      return [...found.pixel, found.across, found.direction, found.shape.width]
    case 'crossing':
      return [...found.pixel, ...found.covariance]
    case 'line':
      return [...found.ends.flat(), found.sigma, found.shape.width]
    default:
      return [...found.centre, found.radius, found.sigma, ...found.covariance]
  }
}

describe('a stroke in a scan that is there in tiles', () => {
  const same = (window: GreyWindow, find: (grey: GreyPicture) => FoundStroke | NoStroke): void => {
    const whole = told(find(window))
    const tiled = told(find(inTiles(window)))
    for (const [i, value] of whole.entries())
      expect(Math.abs((tiled[i] ?? Number.NaN) - value)).toBeLessThan(1e-5)
  }

  it('lies where it lies in the whole, as surely', async () => {
    const random = caseStream(61)
    const look = () => ({ ...someLook('noise', random), width: 5, noise: 4, contrast: 120 })
    const point = await pointCase(look(), random)
    same(point.window, (grey) => findPoint(grey, point.rough))
    const line = await lineCase(look(), random, 0, [300, 300])
    same(line.window, (grey) => findLine(grey, ...line.rough))
    const circle = await circleCase(look(), random, { radii: [90, 90], whole: true })
    same(circle.window, (grey) => findCircle(grey, circle.rough))
    const crossing = await crossingCase(look(), random, 'X')
    same(crossing.window, (grey) => findCrossing(grey, crossing.rough))
  })

  it('is found by what lies along it alone, whatever is missing beside it', async () => {
    const random = caseStream(62)
    const look = { ...someLook('noise', random), width: 5, noise: 4, contrast: 120 }
    const { window, rough, ...drawn } = await circleCase(look, random, { radii: [390, 390], whole: true })
    const [centre, radius] = [drawn.centre, drawn.radius]
    const along = inTiles(window).filter(({ left, top }) => {
      const away = Math.hypot(left + 18.5 - centre[0], top + 20.5 - centre[1])
      return Math.abs(away - radius) < 72 + 28
    })
    expect(along.length).toBeLessThan(0.75 * inTiles(window).length)
    const [whole, ring] = [window, along].map((grey) => told(findCircle(grey, rough)))
    for (const [i, value] of (whole ?? []).entries())
      expect(Math.abs((ring?.[i] ?? Number.NaN) - value)).toBeLessThan(1e-5)
  })
})

describe('a grey value', () => {
  const ramp: GreyWindow = {
    left: 10,
    top: 20,
    width: 6,
    height: 4,
    data: Float32Array.from({ length: 24 }, (_, i) => 7 * (i % 6) + 30 * Math.floor(i / 6)),
  }

  it('is that of its pixel, and none where there is no window', () => {
    for (const grey of [ramp, inTiles(ramp, 4, 3)]) {
      expect(greyOfPixel(grey, 15, 23)).toBe(125)
      expect(greyOfPixel(grey, 16, 23)).toBeNaN()
      expect(greyOfPixel(grey, 12, 19)).toBeNaN()
    }
  })

  it('between the middles of pixels runs evenly from one to the next, across the seam of two windows', () => {
    for (const grey of [ramp, inTiles(ramp, 4, 3)]) {
      expect(greyAt(grey, 14.25, 23.25)).toBeCloseTo(7 * 3.75 + 30 * 2.75, 9)
      expect(greyAt(grey, 15.75, 21)).toBeNaN()
    }
  })
})
