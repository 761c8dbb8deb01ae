import { describe, expect, it } from 'vitest'
import { pixel } from '../../../../src/core/geometry/frames.ts'
import { findLine, findPoint, type GreyWindow, settledInk } from '../../../../src/core/imaging/index.ts'
import { inkOfSvg } from '../drawn/svg-picture.ts'
import { caseStream } from '../simulate/case-stream.ts'
import { noisy, rounded } from '../simulate/scan.ts'

const SIZE = 200

/** A drawing in SVG, dark on light or as its negative, in a little noise; the ground falls off to one side. */
async function windowOf(drawing: string, negative = false): Promise<GreyWindow> {
  const { width, height, data } = await inkOfSvg(drawing, SIZE, SIZE, 0.7)
  const greys = data.map((share, i) => {
    const grey = (215 - 0.2 * (i % width)) * (1 - share) + 35 * share
    return negative ? 255 - grey : grey
  })
  return rounded(noisy({ width, height, data: greys }, 3, caseStream(5)))
}

const level = (y: number, width: number, colour = 'black') =>
  `<path d="M-10 ${y}L210 ${y}" stroke="${colour}" stroke-width="${width}"/>`
const area = (top: number, bottom: number) =>
  `<rect x="-10" y="${top}" width="220" height="${bottom - top}" fill="black"/>`
const hatching = (width: number, apart: number) =>
  Array.from({ length: Math.ceil(220 / apart) }, (_, i) => level(i * apart, width)).join('')

describe('what is ink in a window', () => {
  it.each([
    ['a thin stroke', level(90.3, 1.5)],
    ['two wide ones with all but the window between them', level(12, 14) + level(188, 14)],
    ['hatching of which a fifth is ink', hatching(3, 15)],
  ])('is what there is less of: %s', async (_, drawing) => {
    expect(settledInk(await windowOf(drawing))).toBe('dark')
    expect(settledInk(await windowOf(drawing, true))).toBe('light')
  })

  it.each([
    ['nothing is drawn', ''],
    ['half of what is hatched is ink', hatching(6, 12)],
    ['an area fills a half', area(96, 210) + level(40.4, 4)],
  ])('is not told where %s', async (_, drawing) => {
    expect(settledInk(await windowOf(drawing))).toBeNull()
  })

  it('is what it is of the whole of a large picture, of which only a part is looked at', () => {
    const [width, height] = [3000, 2000]
    const data = Uint8Array.from({ length: width * height }, (_, i) =>
      Math.floor(i / width) % 50 < 3 ? 60 : 110,
    )
    expect(settledInk({ width, height, data })).toBe('dark')
  })
})

describe('in a window of which an area fills a half', () => {
  const drawing = area(110, 210) + level(40.4, 4) + level(64.4, 4) + level(160.4, 5, 'white')

  it('the strokes beside the area are found, and not the paper between them, whatever is said of ink', async () => {
    const window = await windowOf(drawing)
    for (const ink of [undefined, 'dark'] as const) {
      for (const y of [38, 41, 43]) {
        const point = findPoint(window, pixel(100, y), { ink })
        expect(point.kind === 'point' && point.pixel[1]).toBeCloseTo(40.4, 1)
        const line = findLine(window, pixel(40, y), pixel(160, y), { ink })
        expect(line.kind === 'line' && line.ends[0][1]).toBeCloseTo(40.4, 1)
      }
    }
  })

  it('a white stroke across the area is found when light ones are asked for', async () => {
    const point = findPoint(await windowOf(drawing), pixel(100, 162), { ink: 'light' })
    expect(point.kind === 'point' && point.pixel[1]).toBeCloseTo(160.4, 1)
    expect(findPoint(await windowOf(drawing), pixel(100, 162), { ink: 'dark' }).kind).toBe('none')
  })
})

it('plates drawn in black with thin gaps between them are found each by itself', async () => {
  const window = await windowOf([57.3, 72.3, 87.3].map((y) => level(y, 10)).join(''))
  for (const ink of [undefined, 'dark'] as const) {
    const found = findPoint(window, pixel(100, 71), { ink })
    expect(found.kind === 'point' && found.pixel[1]).toBeCloseTo(72.3, 1)
  }
})
