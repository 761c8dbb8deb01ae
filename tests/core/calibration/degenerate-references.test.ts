import { describe, expect, it } from 'vitest'
import { calibrate } from '../../../src/core/calibration/calibrate.ts'
import { CalibrationError } from '../../../src/core/calibration/calibration-error.ts'
import {
  diameterReference,
  distanceReference,
  type StatedSize,
} from '../../../src/core/calibration/reference.ts'
import type { MappingKind } from '../../../src/core/job/model/types.ts'
import { exact, measured } from '../../../src/core/uncertainty/uncertain.ts'
import { circleMark, lengthReference as length, pointMark, viewOf, type XY } from '../measuring/marks.ts'

const at = (degrees: number, id: string, size = 80, middle: XY = [500, 500]): StatedSize[] => {
  const a = (degrees * Math.PI) / 180
  const [dx, dy] = [400 * Math.cos(a), 400 * Math.sin(a)]
  return length(id, [middle[0] - dx, middle[1] - dy], [middle[0] + dx, middle[1] + dy], size)
}
const [along, across, slanting] = [at(0, 'R1'), at(90, 'R2'), at(45, 'R3')]
const beside = (id: string, y: number): StatedSize[] => at(0, id, 80, [500, y])
const ring = Array.from(
  { length: 8 },
  (_, i): XY => [500 + 200 * Math.cos((Math.PI * i) / 4), 500 + 200 * Math.sin((Math.PI * i) / 4)],
)
const point = pointMark('M1', [100, 100])

const CASES: [name: string, kind: MappingKind, sizes: StatedSize[], says: RegExp][] = [
  ['no reference', 'uniform', [], /no figured sizes. Add the ends of a dimension whose true size is known/],
  ['no reference', 'projective', [], /no figured sizes/],
  ['one, for two scales', 'two-axis', along, /up and down the sheet.*Add a figured size.*right angles/],
  [
    'one upright, for two scales',
    'two-axis',
    across,
    /along the sheet.*Add a figured size.*along the sheet's/,
  ],
  [
    'two parallel, for two scales',
    'two-axis',
    [...along, ...beside('R2', 800)],
    /Add a figured size.*right angles/,
  ],
  ['two parallel at 45°, for two scales', 'two-axis', [...slanting, ...at(45, 'R4')], /Add a figured size/],
  [
    'two at ±45°, alike for two scales',
    'two-axis',
    [...at(45, 'R1'), ...at(135, 'R2')],
    /Add a figured size/,
  ],
  [
    'two, for three scales',
    'affine',
    [...along, ...across],
    /Add a figured size that runs at about (45|135)°/,
  ],
  [
    'three parallel, for three scales',
    'affine',
    [...along, ...beside('R2', 700), ...beside('R3', 900)],
    /Add a figured size that runs/,
  ],
  ['three in two directions', 'affine', [...along, ...across, ...at(90, 'R3')], /runs at about (45|135)°/],
  [
    'six through one point',
    'projective',
    [0, 30, 60, 90, 120, 150].flatMap((d, i) => at(d, `R${i}`)),
    /tilt of the sheet free.*Add a rectangle, or known lengths in other parts/,
  ],
  [
    'four, for five',
    'projective',
    [0, 40, 80, 120].flatMap((d, i) => at(d, `R${i}`)),
    /tilt.*Add a rectangle/,
  ],
  [
    'six parallel',
    'projective',
    [0, 1, 2, 3, 4, 5].flatMap((i) => beside(`R${i}`, 100 + 150 * i)),
    /Add a figured size that runs|Add a rectangle/,
  ],
  [
    'no length on the sheet',
    'uniform',
    length('R1', [300, 300], [300, 300], 50),
    /figured size R1 has no size/,
  ],
  [
    'no length, among good ones',
    'uniform',
    [...along, ...length('R2', [300, 300], [300, 300], 50)],
    /figured size R2 has no size on the sheet.*Pick its marks again/,
  ],
  ['one mark for both ends', 'uniform', distanceReference('R1', point, point, exact(40)), /figured size R1/],
  [
    'a true size of nothing',
    'uniform',
    length('R1', [0, 0], [500, 0], 0),
    /figured size R1 is stated to be 0 mm/,
  ],
  ['a negative true size', 'uniform', length('R1', [0, 0], [500, 0], -4), /stated to be -4 mm/],
  [
    'a circle of no size',
    'uniform',
    diameterReference('R1', circleMark('K', ring), exact(0)),
    /R1 is stated/,
  ],
  [
    'lengths that contradict one another',
    'affine',
    [...along, ...across, ...at(45, 'R3', 190)],
    /contradict one another.*Check their figures and marks/,
  ],
  [
    'lengths that break the triangle',
    'affine',
    [...at(0, 'R1'), ...at(60, 'R2'), ...at(120, 'R3', 300)],
    /contradict one another/,
  ],
  [
    'two sizes a hundred times apart for lines alike',
    'uniform',
    [...length('R1', [100, 100], [1100, 100], 50), ...length('R2', [100, 500], [1100, 500], 5000)],
    /disagree so much.*uncertain by 98 %.*Check their figures and marks/,
  ],
  [
    'ends five pixels apart',
    'uniform',
    length('R1', [100, 100], [105, 100], 50),
    /uncertain by 28 %.*longer/,
  ],
]

describe('references that do not fix a mapping are an error in words, never a number', () => {
  it.each(CASES)('%s, %s', (_, kind, sizes, says) => {
    const calibrated = () => calibrate(viewOf(kind, sizes), sizes)
    expect(calibrated).toThrow(CalibrationError)
    expect(calibrated).toThrow(says)
  })

  it('and the least that does fix it is none', () => {
    for (const [kind, sizes] of [
      ['uniform', along],
      ['uniform', diameterReference('R1', circleMark('K', ring), exact(40))],
      ['two-axis', [...along, ...across]],
      ['two-axis', [...along, ...at(70, 'R2')]],
      ['affine', [...along, ...across, ...slanting]],
    ] as const) {
      const calibration = calibrate(viewOf(kind, sizes), sizes)
      for (const { value } of calibration.theta) expect(Number.isFinite(value)).toBe(true)
      expect(calibration.theta[0]?.value).toBeCloseTo(0.1, 9)
    }
  })
})

it('sizes that share an error beside which nothing tells them apart are refused in words too', () => {
  const guess = measured(80, 1e9, 'a guess')
  const [p, q, r] = [pointMark('A', [100, 100]), pointMark('B', [900, 100]), pointMark('C', [100, 900])]
  const sizes = [...distanceReference('R1', p, q, guess), ...distanceReference('R2', p, r, guess)]
  expect(() => calibrate(viewOf('uniform', sizes), sizes)).toThrow(CalibrationError)
})

it('a sheet never comes out mirrored, however unlike its figured sizes say that it is one way and the other', () => {
  const sizes = [
    ...length('R1', [0, 0], [500, 0], 200),
    ...length('R2', [0, 0], [0, 2000], 50),
    ...length('R3', [0, 0], [1500, 1500], Math.hypot(600, 37.5)),
  ]
  for (const kind of ['two-axis', 'affine'] as const) {
    const { theta } = calibrate(viewOf(kind, sizes), sizes)
    expect(theta[0]?.value).toBeCloseTo(0.4, 5)
    expect(theta.at(-1)?.value).toBeCloseTo(0.025, 5)
  }
})
