import { describe, expect, it } from 'vitest'
import { type Pixel, pixel } from '../../../../src/core/geometry/frames.ts'
import type { Mark } from '../../../../src/core/job/model/types.ts'
import { type Feature, featureOf } from '../../../../src/core/measuring/features/feature-of-mark.ts'
import { byPerson } from '../../../../src/core/measuring/features/people.ts'
import { repeatScatter } from '../../../../src/core/measuring/features/repeat-scatter.ts'
import { randomStream } from '../../../../src/core/uncertainty/random.ts'
import { circleBy, type Hands, lineBy, pathBy, pointBy, unsigned } from './simulated-picks.ts'

const base = { id: 'M', sheet: 'S1', sigma: 1 } as const

/** A point picked by these people in turn at these places. */
const point = (...picks: [by: string | undefined, x: number, y: number][]): Mark & { kind: 'point' } => {
  const [[by, x, y] = [undefined, 0, 0], ...again] = picks
  return {
    ...base,
    how: 'hand',
    kind: 'point',
    ...(by === undefined ? {} : { by }),
    pixel: pixel(x, y),
    repeats: again.map(([, px, py]) => pixel(px, py)),
    repeatedBy: again.map(([who]) => (who === undefined ? {} : { by: who })),
  }
}

/** What moves the first point of a feature in x, with the degrees of freedom of each. */
const inX = ({ picking }: Feature) =>
  picking
    .filter(({ point, dx }) => point === 0 && dx !== 0)
    .map(({ dx, source }) => [Math.abs(dx), source.estimate.dof])

describe('picks by person', () => {
  const by = (...who: (string | undefined)[]) =>
    byPerson(who.map((one, i) => ({ pixel: pixel(i, 0), ...(one === undefined ? {} : { by: one }) }))).map(
      (own) => own.map(({ pixel: [x] }) => x),
    )

  it('are told apart by who made them, in whatever sitting', () => {
    expect(by('ada', 'ben', 'ada', 'cora')).toEqual([[0, 2], [1], [3]])
    const sittings = ['forenoon', 'afternoon'].map((sitting) => ({ pixel: pixel(0, 0), by: 'ada', sitting }))
    expect(byPerson(sittings)).toHaveLength(1)
  })

  it('of nobody are those of who is named first', () => {
    expect(by(undefined, 'ada', undefined, 'ben')).toEqual([[0, 1, 2], [3]])
    expect(by(undefined, undefined)).toEqual([[0, 1]])
  })
})

describe('a point that several people picked', () => {
  it('is the mean of what each person picked, as sure as these agree', () => {
    const told = featureOf(point(['ada', 0, 0], ['ada', 0, 2], ['ben', 8, 9]))
    // Means (0, 1) and (8, 9): each coordinate 4 from the mean of both; (16 + 16)·2 over 2 (J − 1) J.
    expect(told.points).toEqual([[4, 5]])
    expect(inX(told)).toEqual([[4, 2]])
    // Within: ±1 in y of one who picked twice, with 2 degrees of freedom; between: 2·8²·(2/3) with 2.
    expect(told.people).toMatchObject({ n: 2, within: 1, by: 'groups' })
  })

  it('is as sure as all picks together where the people differ less than each person does', () => {
    const told = featureOf(point(['ada', -1, 0], ['ada', 1, 0], ['ben', 0, -1], ['ben', 0, 1]))
    const asOne = featureOf(unsigned(point(['ada', -1, 0], ['ada', 1, 0], ['ben', 0, -1], ['ben', 0, 1])))
    expect(told.points).toEqual(asOne.points)
    expect(inX(told)[0]?.[0]).toBeCloseTo(Number(inX(asOne)[0]?.[0]), 12)
    expect(inX(told)[0]?.[1]).toBe(6)
    expect(told.people).toMatchObject({ between: 0, by: 'all' })
  })

  it('each once is as if one had picked it as often: nothing tells the people from their hands', () => {
    const once = point(['ada', 0, 0], ['ben', 3, 4], ['cora', 1, 2])
    const [told, asOne] = [featureOf(once), featureOf(unsigned(once))]
    expect(told.points[0]?.[0]).toBeCloseTo(Number(asOne.points[0]?.[0]), 12)
    expect(inX(told)[0]?.[0]).toBeCloseTo(Number(inX(asOne)[0]?.[0]), 12)
    expect(inX(told)[0]?.[1]).toBe(4)
    expect(told.people).toMatchObject({ n: 3, within: null, between: null, p: null })
  })

  it('in the same place to the last digit keeps its stated sigma', () => {
    const told = featureOf(point(['ada', 5, 5], ['ben', 5, 5], ['ben', 5, 5], ['ben', 5, 5]))
    // Ada's one pick counts as much as Ben's three: (1 + 1/3)/4.
    expect(inX(told)[0]?.[0]).toBeCloseTo(Math.sqrt(1 / 3), 12)
    expect(inX(told)[0]?.[1]).toBe(Number.POSITIVE_INFINITY)
  })
})

const random = randomStream(1911)
const hands = (between: number): Hands => ({ picked: [3, 2], scattering: { within: 1, between }, random })
const round: (readonly [number, number])[] = [0, 1, 2, 3, 4, 5].map((i) => [
  1000 + 300 * Math.cos(i),
  1000 + 300 * Math.sin(i),
])
const MARKS: [string, (between: number) => Mark][] = [
  ['point', (between) => pointBy('p', [100, 200], hands(between))],
  [
    'line',
    (between) =>
      lineBy(
        'l',
        [
          [0, 0],
          [500, 0],
          [1000, 0],
        ],
        hands(between),
      ),
  ],
  ['circle', (between) => circleBy('c', [1000, 1000], round, hands(between))],
  [
    'path',
    (between) =>
      pathBy(
        'e',
        [
          [0, 0],
          [900, 0],
          [900, 700],
        ],
        hands(between),
      ),
  ],
]

describe.each(MARKS)('a %s', (_, make) => {
  it('that one person picked is the same whether they are named or not', () => {
    const { by, repeatedBy, ...made } = make(3)
    const again = repeatedBy?.map(() => ({ by: 'ada' }))
    const one = featureOf({ ...made, by: 'ada', repeatedBy: again } as Mark)
    const nobody = featureOf(made as Mark)
    expect(one.points).toEqual(nobody.points)
    expect(one.picking.map(({ dx, dy }) => [dx, dy])).toEqual(nobody.picking.map(({ dx, dy }) => [dx, dy]))
    expect(one.people).toBeUndefined()
    expect(by).not.toBe(undefined)
  })

  it('that people pick far apart is less sure than if all picks were one person’s, and says so', () => {
    const draws = 40
    let [together, asOne] = [0, 0]
    for (let i = 0; i < draws; i++) {
      const made = make(20)
      const told = repeatScatter(made)
      // One hand scatters by a pixel, whatever the people do.
      expect(told?.people).toMatchObject({ n: 2, within: expect.toSatisfy((s: number) => s > 0.2 && s < 3) })
      together += Number(told?.together)
      asOne += Number(repeatScatter(unsigned(made))?.together)
    }
    expect(together).toBeGreaterThan(1.2 * asOne)
  })

  it('that people pick alike differs between them as seldom as chance has it', () => {
    const few = Array.from({ length: 200 }, () => featureOf(make(0)).people?.p ?? Number.NaN)
    const below = few.filter((p) => p < 0.05).length
    // 10 of 200 expected, with a standard deviation of 3.
    expect(below).toBeGreaterThan(0)
    expect(below).toBeLessThan(22)
  })
})

describe('what several people found on a stroke', () => {
  const found = (across: number[], who: string[]): Mark => ({
    ...base,
    how: 'stroke',
    kind: 'point',
    covariance: [1, 0, 0.01],
    by: who[0] ?? '',
    pixel: pixel(100, across[0] ?? 0),
    repeats: across.slice(1).map((y) => pixel(100, y)),
    repeatedBy: who.slice(1).map((by) => ({ by })),
  })

  it('adds their scatter to what the fit leaves open, with as many degrees of freedom as people but one', () => {
    const mark = found([500, 500.02, 500.4, 500.42], ['ada', 'ada', 'ben', 'ben'])
    const { points, picking, people } = featureOf(mark)
    expect(points[0]?.[1]).toBeCloseTo(500.21, 9)
    expect(people).toMatchObject({ n: 2, by: 'groups' })
    expect(people?.within).toBeCloseTo(0.01 * Math.SQRT2, 9)
    const scatter = picking.filter(({ source }) => source.estimate.dof === 1)
    // Means 500.01 and 500.41: half their distance.
    expect(Math.hypot(...scatter.map(({ dy }) => dy))).toBeCloseTo(0.2, 9)
    expect(repeatScatter(mark)?.together).toBeCloseTo(Math.hypot(0.1, 0.2), 9)
    expect(repeatScatter(mark)?.alone).toBeCloseTo(0.1, 9)
  })

  it('as a line or a circle likewise', () => {
    const at = (y: number): Pixel[] => [0, 500, 1000].map((x) => pixel(x, y))
    const line: Mark = {
      ...base,
      how: 'stroke',
      kind: 'line',
      by: 'ada',
      pixels: at(0),
      repeats: [at(0.1), at(2), at(2.1)],
      repeatedBy: [{ by: 'ada' }, { by: 'ben' }, { by: 'ben' }],
    }
    const { points, people } = featureOf(line)
    expect(points.map(([, y]) => y)).toEqual([expect.closeTo(1.05, 9), expect.closeTo(1.05, 9)])
    expect(people).toMatchObject({ n: 2, by: 'groups', between: expect.closeTo(Math.sqrt(2 - 0.0025), 9) })
    const ring = (r: number): Pixel[] =>
      round.map(([x, y]) => pixel(1000 + (x - 1000) * r, 1000 + (y - 1000) * r))
    const circle = {
      ...line,
      kind: 'circle',
      pixels: ring(1),
      repeats: [ring(1), ring(1.02), ring(1.02)],
    } as Mark
    const told = featureOf(circle)
    expect(Math.hypot((told.points[0]?.[0] ?? 0) - 1000, (told.points[0]?.[1] ?? 0) - 1000)).toBeCloseTo(
      303,
      6,
    )
    expect(told.people?.between).toBeCloseTo(6 / Math.SQRT2, 6)
  })
})
