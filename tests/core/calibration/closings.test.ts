import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { calibrate } from '../../../src/core/calibration/calibrate.ts'
import { closureChecks } from '../../../src/core/calibration/closure-checks.ts'
import {
  distanceReference,
  rectangleReference,
  type StatedSize,
} from '../../../src/core/calibration/reference.ts'
import type { Feature } from '../../../src/core/measuring/features/feature-of-mark.ts'
import { standardUncertainty } from '../../../src/core/uncertainty/covariance.ts'
import { expand } from '../../../src/core/uncertainty/coverage.ts'
import { randomStream } from '../../../src/core/uncertainty/random.ts'
import { exact } from '../../../src/core/uncertainty/uncertain.ts'
import { lengthReference, pointMark, viewOf, type XY } from '../measuring/marks.ts'

const MM_PER_PX = 0.1

const lengthOf = (p: XY, q: XY): number => MM_PER_PX * Math.hypot(q[0] - p[0], q[1] - p[1])

/** Sizes between all pairs of places, picked with an error of 1 px. */
function allPairs(
  places: readonly XY[],
  seed: number,
  off: (pair: number) => number = () => 0,
): StatedSize[] {
  const random = randomStream(seed)
  const marks = places.map(([x, y], i) => pointMark(`M${i}`, [x + random.normal(), y + random.normal()]))
  const pairs = places.flatMap((_, i) => places.slice(0, i).map((_, j): [number, number] => [j, i]))
  return pairs.flatMap(([a, b], k) =>
    distanceReference(
      `R${k}`,
      marks[a] as Feature,
      marks[b] as Feature,
      exact(lengthOf(places[a] as XY, places[b] as XY) + off(k)),
      0.1,
    ),
  )
}

/** Places of which no three are near one line: one in each cell of a grid with a bent middle. */
const places = fc
  .array(fc.tuple(fc.integer({ min: -150, max: 150 }), fc.integer({ min: -150, max: 150 })), {
    minLength: 4,
    maxLength: 6,
  })
  .map((moves): XY[] =>
    moves.map(([dx, dy], i) => {
      const a = (2 * Math.PI * i) / moves.length
      return [2000 + 1500 * Math.cos(a) + dx, 2000 + 1500 * Math.sin(a) + dy]
    }),
  )

describe('lengths between all pairs of some points', () => {
  it('count as many as a figure of so many points has, and the rest closes', () =>
    fc.assert(
      fc.property(places, fc.integer({ min: 1, max: 1e6 }), (points, seed) => {
        const sizes = allPairs(points, seed)
        const calibration = calibrate(viewOf('two-axis', sizes), sizes)
        const free = 2 * points.length - 3
        fc.pre(calibration.used.length === sizes.length)
        expect(calibration.closures).toHaveLength(sizes.length - free)
        expect(calibration.closures.every(({ closes }) => closes)).toBe(true)
        expect(calibration.dof).toBe(free - 2)
        expect(calibration.p).toBeGreaterThan(1e-6)
      }),
      { seed: 11, numRuns: 40 },
    ))

  it('give the same scale with a length that follows from the others and without it', () => {
    const sizes = allPairs(
      [
        [500, 500],
        [3500, 600],
        [3400, 2500],
        [600, 2600],
      ],
      5,
    )
    const [all, without] = [sizes, sizes.slice(0, -1)].map((s) => calibrate(viewOf('two-axis', sizes), s))
    // Lengths bend under picks: a thousandth of what the scale is uncertain by, no more.
    all?.theta.forEach((t, k) => {
      const less = t.value - (without?.theta[k]?.value ?? Number.NaN)
      expect(Math.abs(less)).toBeLessThan(1e-3 * standardUncertainty(t))
    })
    expect(all?.chi2).toBeCloseTo(without?.chi2 ?? Number.NaN, 3)
    expect(all?.dof).toBe(without?.dof)
  })

  it('with one misread by 5 mm name it, and leave it out', () => {
    for (let wrong = 0; wrong < 10; wrong++) {
      const points = [0, 1, 2, 3, 4].map(
        (i): XY => [2000 + 1500 * Math.cos(1.2566 * i + 0.1 * i * i), 2000 + 1500 * Math.sin(1.2566 * i)],
      )
      const sizes = allPairs(points, 40 + wrong, (k) => (k === wrong ? 5 : 0))
      const calibration = calibrate(viewOf('uniform', sizes), sizes)
      expect(calibration.references.filter((r) => r.setAside).map((r) => r.id)).toEqual([`R${wrong}`])
      expect(calibration.closures.some((c) => !c.closes)).toBe(true)
      expect(Math.abs((calibration.theta[0]?.value ?? 0) - MM_PER_PX)).toBeLessThan(0.0002)
    }
  })
})

describe('figures that close on themselves', () => {
  const [A, B, C, D] = (
    [
      [500, 1000],
      [1500, 1001],
      [2300, 1000],
      [500, 3000],
    ] as const
  ).map((place, i) => pointMark('ABCD'[i] as string, place)) as [Feature, Feature, Feature, Feature]
  const size = (id: string, a: Feature, b: Feature, mm: number, graduation = 1) =>
    distanceReference(id, a, b, exact(mm), graduation)
  const calibrated = (...sizes: StatedSize[]) => calibrate(viewOf('two-axis', sizes), sizes)
  const chain = (overall: number, graduation = 1) =>
    calibrated(
      ...size('R1', A, B, 100),
      ...size('R2', B, C, 80),
      ...size('R3', A, C, overall, graduation),
      ...size('R4', A, D, 200),
    )

  it('are a check of the figures where they add up, and no check of the scale', () => {
    const { closures, dof, problem, excess } = chain(180)
    expect(dof).toBe(1)
    expect(problem).toBeUndefined()
    expect(excess).toEqual([])
    expect(closures).toMatchObject([{ kind: 'sum', expected: 180, stated: 180, misclosure: 0, closes: true }])
    expect(closures[0]?.by.map(({ id }) => id)).toEqual(['R1', 'R2'])
    expect(closures[0]?.given.map(({ id }) => id)).toEqual(['R3'])
  })

  it('close where rounding explains what they miss by, and the scale takes it in', () => {
    const { closures, theta, excess } = chain(180.1, 0.1)
    expect(closures).toMatchObject([{ misclosure: expect.closeTo(0.1), closes: true }])
    expect(excess).toHaveLength(2)
    expect(theta[0]?.value).toBeCloseTo(0.10005, 4)
  })

  it('are named where it does not', () => {
    const { closures } = chain(181)
    expect(closures).toMatchObject([
      { kind: 'sum', expected: 180, stated: 181, misclosure: 1, closes: false },
    ])
  })

  it('are one length stated twice, which are compared as the finer is written', () => {
    const [one, ...rest] = [...size('R1', A, B, 100), ...size('R2', B, C, 80), ...size('R4', A, D, 200)]
    const [other] = size('R3', B, A, 100.5, 0.1)
    if (one === undefined || other === undefined) throw new Error('no sizes')
    const { closures, theta, problem } = calibrated(one, ...rest, other)
    expect(closures).toMatchObject([{ kind: 'same', expected: 100, stated: 100.5, closes: false }])
    expect(problem?.code).toBe('misfit.suspects')
    // Either may be right, and the scale covers both.
    for (const right of [one, other]) {
      const [alone] = calibrated(right, ...rest).theta
      const [along] = theta
      if (along === undefined || alone === undefined) throw new Error('no scale')
      expect(Math.abs(along.value - alone.value)).toBeLessThan(expand(along).U)
      expect(standardUncertainty(along)).toBeGreaterThan(standardUncertainty(alone))
    }
  })

  it('are a shape whose diagonal is stated wrong', () => {
    const [a, b, c, d] = (
      [
        [500, 500],
        [3500, 500],
        [3500, 2750],
        [500, 2750],
      ] as const
    ).map((place, i) => pointMark('abcd'[i] as string, place)) as [Feature, Feature, Feature, Feature]
    const corners = [a, b, c, d] as const
    const rectangle = rectangleReference('R1', corners, exact(300), exact(225), exact(0), [1, 1])
    const { closures } = calibrated(...rectangle, ...size('R2', a, c, 378))
    expect(closures).toMatchObject([{ kind: 'shape', stated: 378, closes: false }])
    expect(closures[0]?.expected).toBeCloseTo(375, 3)
    expect(closures[0]?.given.map(({ id }) => id)).toEqual(['R2'])
  })

  it('say nothing of two sides of one rectangle that follow from one another, for they have one figure', () => {
    const [width] = rectangleReference('R1', [A, B, C, D], exact(100), exact(200), exact(0), [1, 1])
    if (width === undefined) throw new Error('no width')
    const closing = { row: 1, factors: [-1, 1], curvature: 0.001 }
    expect(closureChecks([width], { closings: [closing], residuals: [0.1, 0.2] })).toEqual([])
  })

  it('are none where marks lie close to one another but are not the same', () => {
    const sizes = [0, 1, 2].flatMap((k) =>
      lengthReference(`R${k}`, [500, 500 + 3 * k], [3500, 500 + 3 * k], 300),
    )
    const calibration = calibrate(viewOf('uniform', sizes), sizes)
    expect(calibration.closures).toEqual([])
    expect(calibration.dof).toBe(2)
  })
})

describe('lengths along a line, of which the middle mark is picked beside it', () => {
  const [a, b, c] = [pointMark('A', [500, 500]), pointMark('B', [1500, 507]), pointMark('C', [3500, 500])]
  const size = (id: string, from: Feature, to: Feature, mm: number) =>
    distanceReference(id, from, to, exact(mm), 0.0001)
  const [first, second, whole] = [size('R1', a, b, 100), size('R2', b, c, 200), size('R3', a, c, 300)]
  const upright = size('R4', a, pointMark('D', [500, 2500]), 200)

  it.each([
    ['the whole last', [first, second, whole]],
    ['the whole first', [whole, second, first]],
  ])('close by their figures alone, and the parts add up to the whole: %s', (_, along) => {
    const sizes = [...along, upright].flat()
    const [check] = calibrate(viewOf('two-axis', sizes), sizes).closures
    expect(check).toMatchObject({ kind: 'sum', expected: 300, stated: 300, misclosure: 0, closes: true })
    expect(check?.by.map(({ id }) => id).sort()).toEqual(['R1', 'R2'])
    expect(check?.given.map(({ id }) => id)).toEqual(['R3'])
  })
})
