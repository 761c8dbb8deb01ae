import { describe, expect, it } from 'vitest'
import { pixel } from '../../../../src/core/geometry/frames.ts'
import { hasTwoValues } from '../../../../src/core/imaging/window/bilevel.ts'
import { searchWindow } from '../../../../src/core/imaging/window/search-window.ts'
import { windowNoise } from '../../../../src/core/imaging/window/window-noise.ts'
import { caseStream } from '../simulate/case-stream.ts'

describe('the noise of a window', () => {
  const window = (value: (x: number) => number) => {
    const data = Float32Array.from({ length: 200 * 200 }, (_, i) => value(i % 200))
    return { left: 0, top: 0, width: 200, height: 200, data }
  }

  it('is its standard deviation, though the ground slopes and a stroke runs through', () => {
    const random = caseStream(3)
    const noise = windowNoise(
      window((x) => 100 + 0.3 * x + (x > 90 && x < 96 ? 80 : 0) + 6 * random.normal()),
    )
    expect(noise).toBeGreaterThan(5.7)
    expect(noise).toBeLessThan(6.4)
  })

  it('is never none: grey values are rounded', () => expect(windowNoise(window(() => 7))).toBe(0.5))
})

describe('two grey values', () => {
  it('are told from one and from three', () => {
    expect(hasTwoValues([0, 255, 255, 0])).toBe(true)
    expect(hasTwoValues([7, 7, 7])).toBe(false)
    expect(hasTwoValues([0, 255, 128])).toBe(false)
  })
})

describe('the part of a scan that a search looks at', () => {
  it('lies about a point, no farther than the scan goes', () => {
    const { box } = searchWindow([pixel(100.5, 30)], 'point', { reach: 8, scan: { width: 150, height: 400 } })
    expect(box).toEqual([40, 0, 150, 90])
  })

  it('lies all round the circle through three picks', () => {
    const rough = [pixel(200, 100), pixel(300, 200), pixel(200, 300)]
    const { box, looksWithin } = searchWindow(rough, 'circle', { reach: 4 })
    // 2.5 times the reach, and 52 px, beyond a radius of 100.
    expect(box).toEqual([38, 38, 362, 362])
    expect(looksWithin(0, pixel(200, 200))).toBe(false)
    expect(looksWithin(40, pixel(200, 200))).toBe(true)
    expect(looksWithin(0, pixel(200 + 161, 200))).toBe(true)
  })

  it('along a line is not what lies far beside it', () => {
    const { box, looksWithin } = searchWindow([pixel(0, 0), pixel(300, 400)], 'line', { reach: 8 })
    expect(box).toEqual([-60, -60, 360, 460])
    // (−4, 3)/5 across, from the middle.
    expect(looksWithin(0, pixel(150 - 0.8 * 59, 200 + 0.6 * 59))).toBe(true)
    expect(looksWithin(0, pixel(150 - 0.8 * 61, 200 + 0.6 * 61))).toBe(false)
    expect(looksWithin(2, pixel(150 - 0.8 * 61, 200 + 0.6 * 61))).toBe(true)
  })
})
