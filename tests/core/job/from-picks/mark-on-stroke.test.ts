import { describe, expect, it } from 'vitest'
import { type Pixel, pixel } from '../../../../src/core/geometry/frames.ts'
import type { Profile, StrokeLine, StrokePoint } from '../../../../src/core/imaging/index.ts'
import { markOnStroke } from '../../../../src/core/job/from-picks/mark-on-stroke.ts'

const looks = {
  shape: { width: 4.12345, blur: 0.6, contrast: 160, dark: true, noise: 2 },
  section: { at: [], seen: [], fitted: [] },
}
const profiles = (places: readonly Pixel[], kept: boolean): Profile[] =>
  places.map((centre) => ({ centre, sigma: 0.1, kept }))

describe('a point on a stroke, as a job keeps it,', () => {
  const level: StrokePoint = {
    kind: 'point',
    reading: 'left',
    pixel: pixel(380.00049, 280.30051),
    across: 0.05,
    direction: 0,
    profiles: [],
    ...looks,
  }

  it('is uncertain across the stroke as found and along it as pointed at', () => {
    expect(markOnStroke(level, [pixel(380, 281)], 1.5)).toEqual({
      how: 'stroke',
      sigma: 1.5,
      kind: 'point',
      pixel: [380, 280.301],
      covariance: [2.25, 0, 0.0025],
      stroke: { as: 'point', reading: 'left', rough: [[380, 281]], width: 4.123 },
    })
  })

  it('has its covariance turned with the stroke', () => {
    const mark = markOnStroke({ ...level, direction: Math.PI / 4 }, [pixel(380, 281)], 1)
    const [half, off] = [(1 + 0.0025) / 2, (1 - 0.0025) / 2]
    expect(mark).toMatchObject({ sigma: 1 })
    if (mark.kind !== 'point') throw new Error('It is a point.')
    const { covariance } = mark
    expect(covariance?.[0]).toBeCloseTo(half, 4)
    expect(covariance?.[1]).toBeCloseTo(off, 4)
    expect(covariance?.[2]).toBeCloseTo(half, 4)
  })
})

describe('a line on a stroke, as a job keeps it,', () => {
  const along = (count: number): Pixel[] => Array.from({ length: count }, (_, i) => pixel(300 + i, 280.3))
  const lineOf = (kept: readonly Pixel[], leftOut: readonly Pixel[]): StrokeLine => ({
    kind: 'line',
    reading: 'centre',
    ends: [pixel(300, 280.3), pixel(440, 280.3)],
    sigma: 0.1,
    profiles: [...profiles(kept, true), ...profiles(leftOut, false)],
    ...looks,
  })
  const rough = [pixel(320, 281), pixel(440, 279)]

  it('goes through the centres of its profiles, with those apart that do not lie on it', () => {
    expect(markOnStroke(lineOf(along(7), [pixel(380.71234, 283)]), rough, 1)).toEqual({
      how: 'stroke',
      kind: 'line',
      sigma: 0.1,
      pixels: along(7),
      stroke: {
        as: 'line',
        reading: 'centre',
        rough,
        width: 4.123,
        leftOut: [[380.712, 283]],
      },
    })
  })

  it('is thinned from end to end to no more centres than a job keeps, each counting for more', () => {
    const mark = markOnStroke(lineOf(along(256), along(100)), rough, 1)
    if (mark.kind !== 'line') throw new Error('It is a line.')
    expect(mark.pixels).toHaveLength(64)
    expect([mark.pixels[0], mark.pixels[63]]).toEqual([
      [300, 280.3],
      [555, 280.3],
    ])
    // 256 centres of 0.1 px are worth as much as 64 of half of that.
    expect(mark.sigma).toBe(0.05)
    expect(mark.stroke?.leftOut).toHaveLength(64)
  })
})
