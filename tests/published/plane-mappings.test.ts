import { beforeAll, describe, expect, it } from 'vitest'
import { calibrate } from '../../src/core/calibration/calibrate.ts'
import { rectangleReference, type StatedSize } from '../../src/core/calibration/reference.ts'
import type { MappingKind } from '../../src/core/job/model/types.ts'
import { measureFeatures } from '../../src/core/measuring/measure-features.ts'
import { exact } from '../../src/core/uncertainty/uncertain.ts'
import { lengthReference, pathMark, pointMark, viewOf, type XY } from '../core/measuring/marks.ts'
import { type Fits, type Homography, openCvFits, through } from './opencv.ts'

let openCv: Fits

beforeAll(async () => {
  openCv = await openCvFits()
})

/** Corners of a rectangle on the part, mm. */
const WIDTH = 300
const HEIGHT = 180
const CORNERS: XY[] = [
  [0, 0],
  [WIDTH, 0],
  [WIDTH, HEIGHT],
  [0, HEIGHT],
]
/** Pairs of points on the part, mm, inside and outside the rectangle. */
const PAIRS: [XY, XY][] = [
  [
    [20, 30],
    [270, 150],
  ],
  [
    [150, 10],
    [150, 170],
  ],
  [
    [-40, 90],
    [340, 95],
  ],
  [
    [10, 170],
    [290, 5],
  ],
]
const distance = (p: XY, q: XY): number => Math.hypot(q[0] - p[0], q[1] - p[1])

/** From the part (mm) to the pixels of tilted photographs: turn, stretch, skew and tilt. */
const CAMERAS: Homography[] = [
  [9.1, 1.2, 410, -1.4, 8.8, 520, 2.1e-4, -1.3e-4, 1],
  [6.5, -2.9, 1300, 3.1, 6.1, 240, -1.6e-4, 3.9e-4, 1],
  [-7.7, 0.3, 3200, 0.2, 8.4, 300, 4.0e-4, 2.2e-4, 1],
]

function calibrated(kind: MappingKind, sizes: StatedSize[]) {
  return calibrate(viewOf(kind, sizes), sizes)
}

function rectangleIn(pixels: XY[]): StatedSize[] {
  const [a, b, c, d] = pixels.map((p, i) => pointMark(`M${i + 1}`, p)) as [
    ReturnType<typeof pointMark>,
    ReturnType<typeof pointMark>,
    ReturnType<typeof pointMark>,
    ReturnType<typeof pointMark>,
  ]
  return rectangleReference('R1', [a, b, c, d], exact(WIDTH), exact(HEIGHT), exact(0))
}

describe('a projective view calibrated from one rectangle agrees with OpenCV on exact points', () => {
  CAMERAS.forEach((camera, i) => {
    it(`findHomography: every length within 1e-6, camera ${i + 1}`, () => {
      const pixels = CORNERS.map((p) => through(camera, p))
      const theirs = openCv.homography(pixels, CORNERS)
      const calibration = calibrated('projective', rectangleIn(pixels))
      const worst = PAIRS.map(([p, q]) => {
        const [pp, qp] = [through(camera, p), through(camera, q)]
        const ours = measureFeatures(calibration, 'distance', [pointMark('P', pp), pointMark('Q', qp)])
        const cv = distance(through(theirs, pp), through(theirs, qp))
        expect(Math.abs(cv / distance(p, q) - 1)).toBeLessThan(1e-6)
        return Math.abs(ours.value / cv - 1)
      })
      console.log(`findHomography, camera ${i + 1}: largest relative difference ${Math.max(...worst)}`)
      expect(Math.max(...worst)).toBeLessThan(1e-6)
    })

    it(`getPerspectiveTransform: the same, from corners that single precision holds, camera ${i + 1}`, () => {
      // Whole pixels are exact in single precision, so that the corners are the same for both.
      const pixels = CORNERS.map((p): XY => {
        const [x, y] = through(camera, p)
        return [Math.round(x), Math.round(y)]
      })
      const theirs = openCv.perspective(pixels, CORNERS)
      const calibration = calibrated('projective', rectangleIn(pixels))
      for (const [p, q] of PAIRS) {
        const [pp, qp] = [through(camera, p), through(camera, q)]
        const ours = measureFeatures(calibration, 'distance', [pointMark('P', pp), pointMark('Q', qp)])
        const cv = distance(through(theirs, pp), through(theirs, qp))
        expect(Math.abs(ours.value / cv - 1)).toBeLessThan(1e-6)
      }
    })

    it(`areas too, camera ${i + 1}`, () => {
      const pixels = CORNERS.map((p) => through(camera, p))
      const calibration = calibrated('projective', rectangleIn(pixels))
      const triangle: XY[] = [
        [30, 20],
        [260, 40],
        [120, 160],
      ]
      const path = pathMark(
        'T',
        triangle.map((p) => through(camera, p)),
        true,
      )
      expect(measureFeatures(calibration, 'area', [path]).value / 15000).toBeCloseTo(
        ((260 - 30) * (160 - 20) - (120 - 30) * (40 - 20)) / 2 / 15000,
        9,
      )
    })
  })
})

describe('an affine view calibrated from three lengths agrees with OpenCV', () => {
  it('getAffineTransform: every length within 1e-6', () => {
    const pixels: XY[] = [
      [200, 150],
      [2900, 300],
      [500, 2100],
    ]
    // Quarter millimetres and whole pixels are exact in single precision.
    const parts: XY[] = [
      [10, 20],
      [310.25, -5.5],
      [32.75, 254],
    ]
    const theirs = openCv.affine(pixels, parts)
    const side = (id: string, i: number, j: number): StatedSize[] => {
      const [p, q] = [pixels[i] as XY, pixels[j] as XY]
      return lengthReference(id, p, q, distance(parts[i] as XY, parts[j] as XY))
    }
    const calibration = calibrated('affine', [...side('R1', 0, 1), ...side('R2', 1, 2), ...side('R3', 2, 0)])
    const others: [XY, XY][] = [
      [
        [700, 400],
        [2100, 1500],
      ],
      [
        [100, 1900],
        [2800, 200],
      ],
      [
        [1500, 100],
        [1500, 2300],
      ],
    ]
    for (const [p, q] of others) {
      const ours = measureFeatures(calibration, 'distance', [pointMark('P', p), pointMark('Q', q)])
      expect(Math.abs(ours.value / distance(through(theirs, p), through(theirs, q)) - 1)).toBeLessThan(1e-6)
    }
  })
})

describe('a uniform and a two-axis view in closed form', () => {
  it('uniform: true size over pixels', () => {
    const calibration = calibrated('uniform', lengthReference('R1', [100, 200], [400, 600], 125))
    const ours = measureFeatures(calibration, 'distance', [
      pointMark('P', [0, 0]),
      pointMark('Q', [1200, 900]),
    ])
    expect(ours.value).toBeCloseTo(1500 * 0.25, 9)
  })

  it('two-axis: Pythagoras with a scale along and one across the grain', () => {
    const grain = 3
    const [c, s] = [Math.cos((grain * Math.PI) / 180), Math.sin((grain * Math.PI) / 180)]
    const at = (u: number, v: number): XY => [1000 + c * u - s * v, 800 + s * u + c * v]
    const sizes = [
      ...lengthReference('R1', at(-900, 0), at(900, 0), 1800 * 0.101),
      ...lengthReference('R2', at(0, -700), at(0, 700), 1400 * 0.098),
    ]
    const calibration = calibrate(viewOf('two-axis', sizes, 0, grain), sizes)
    const ours = measureFeatures(calibration, 'distance', [
      pointMark('P', at(-500, -300)),
      pointMark('Q', at(700, 450)),
    ])
    expect(ours.value).toBeCloseTo(Math.hypot(1200 * 0.101, 750 * 0.098), 9)
  })
})
