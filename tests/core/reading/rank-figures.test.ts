import fc from 'fast-check'
import { beforeAll, describe, expect, it } from 'vitest'
import { parseFigure } from '../../../src/core/quantity/parse/parse-figure.ts'
import { type HardFigure, rankFigures } from '../../../src/core/reading/ranking/rank-figures.ts'
import { newSource } from '../../../src/core/uncertainty/source.ts'
import { fromTerms } from '../../../src/core/uncertainty/uncertain.ts'
import { bruteForce, lattices } from './all-texts.ts'
import { type Band, bandOf, bands, count, truthOf } from './bands.ts'
import { simulateHardFigures } from './hard-figures.ts'

const IN = 25.4

interface Trial {
  telling: number
  first: number
  firstThree: number
  /** Of the likeliest of each case. */
  bands: Band[]
}

function trial(seed: number, howMany: number): Trial {
  const result: Trial = { telling: 0, first: 0, firstThree: 0, bands: bands() }
  for (const simulated of simulateHardFigures(howMany, seed)) {
    const right = truthOf(simulated)
    const { figures } = rankFigures(simulated.hard)
    const place = figures.findIndex(({ text }) => text === right)
    if (simulated.telling) {
      result.telling += 1
      if (place === 0) result.first += 1
      if (place >= 0 && place < 3) result.firstThree += 1
    }
    const said = figures[0]?.probability ?? 0
    count(bandOf(result.bands, said), said, place === 0)
  }
  return result
}

const expectedError = (all: readonly Band[]): number =>
  all.reduce((sum, { said, right }) => sum + Math.abs(said - right), 0) /
  all.reduce((sum, { n }) => sum + n, 0)

describe('simulated figures that are hard to read', () => {
  let trials: Trial[]
  beforeAll(() => {
    trials = [1, 2, 3].map((seed) => trial(seed, 2000))
  }, 240_000)

  it('have the truth first in 92 of 100 where the scale can tell, and among the first three in 98, whatever the seed', () => {
    for (const { telling, first, firstThree } of trials) {
      // What cannot be told apart by four standard uncertainties is one in eight, no more.
      expect(telling).toBeGreaterThan(0.875 * 2000)
      expect(first / telling).toBeGreaterThanOrEqual(0.92)
      expect(firstThree / telling).toBeGreaterThanOrEqual(0.98)
    }
  })

  it('are right as often as it says, those that cannot be told apart among them, whatever the seed', () => {
    for (const { bands } of trials) expect(expectedError(bands)).toBeLessThanOrEqual(0.03)
  })
})

/**
 * How likely a scaled value is beside a size, by the normal densities of what is drawn as it is figured, drawn roughly, and
 * altered without being drawn anew; mm.
 */
function besideOf(value: number, u: number, size: number): number {
  const normal = (x: number, s: number): number =>
    Math.exp(-((x / s) ** 2) / 2) / (s * Math.sqrt(2 * Math.PI))
  const off = value - size
  const altered = size > 0 ? normal(Math.log(value / size), 0.25) / value : 0
  return 0.955 * normal(off, u) + 0.03 * normal(off, 4 * u) + 0.015 * altered
}

const one = (hard: HardFigure) => {
  const ranked = rankFigures(hard)
  const of = (text: string) => ranked.figures.find((figure) => figure.text === text)
  return { ...ranked, of, p: (text: string) => of(text)?.probability ?? 0 }
}

describe('the rank of a figure', () => {
  it('is the strokes of all its texts, times its scale, times its habit, over those of all and of none', () => {
    fc.assert(
      fc.property(
        lattices,
        fc.double({ min: 0.3, max: 30, noNaN: true }),
        fc.double({ min: 0.02, max: 3, noNaN: true }),
        (seen, inches, u) => {
          const value = inches * IN
          const { figures, none } = rankFigures({ seen, scaled: [{ value, u }], context: { unit: 'in' } })
          const strokes = bruteForce(seen).figures
          const weights = figures.map(({ text, value: size, why }) => {
            const scale = size === null ? Number.NaN : besideOf(value, u, size)
            // Where next to nothing speaks for a size, only that counts.
            if (scale > 1e-12) expect(why.scale, text).toBeCloseTo(Math.log(scale), 3)
            return (strokes.get(text) ?? Number.NaN) * Math.exp(why.scale + why.habit)
          })
          const sum = weights.reduce((total, w) => total + w, 0)
          figures.forEach(({ probability, text }, i) => {
            expect(probability, text).toBeCloseTo(((weights[i] ?? Number.NaN) / sum) * (1 - none), 9)
          })
          // Nothing that can be read as a length is left out.
          const lengths = [...strokes.keys()].filter(
            (text) => parseFigure(text, { unit: 'in' }).length !== undefined,
          )
          expect(figures.map(({ text }) => text).sort()).toEqual(lengths.sort())
        },
      ),
      { numRuns: 150, seed: 5 },
    )
  })

  it('compares two of one habit by the normal densities of what is scaled', () => {
    // 14 3/8 and 14 5/8: alike by the strokes and nearly by habit; 2.4 and 4 standard uncertainties away.
    const [value, u] = [14.45 * IN, 0.8]
    const ranked = one({ seen: '14 [35]/8', scaled: [{ value, u }], context: { unit: 'in' } })
    const [a, b] = [ranked.of('14 3/8"'), ranked.of('14 5/8"')]
    if (a === undefined || b === undefined) throw new Error('Both can be read.')
    const mixture = (inches: number): number => besideOf(value, u, inches * IN)
    expect(Math.exp(a.why.scale - b.why.scale)).toBeCloseTo(mixture(14.375) / mixture(14.625), 4)
    expect(a.why.strokes).toBeCloseTo(b.why.strokes, 12)
  })

  it('gives what is scaled by few readings broader shoulders', () => {
    const hard = (dof?: number): HardFigure => ({
      seen: '14 [35]/8',
      scaled: [{ value: 14.375 * IN, u: 1.2, ...(dof === undefined ? {} : { dof }) }],
    })
    expect(one(hard(2)).p('14 5/8"')).toBeGreaterThan(3 * one(hard()).p('14 5/8"'))
  })

  it('counts evidence that rests on the same as one piece', () => {
    const shared = newSource('scale')
    const rest = () => fromTerms(14.42 * IN, [shared, newSource('pick')], [1.6, 0.05])
    const apart = { value: 14.42 * IN, u: 1.6 }
    const seen = '14 [35]/8'
    const single = one({ seen, scaled: [apart] }).p('14 3/8"')
    expect(one({ seen, scaled: [rest(), rest(), rest(), rest()] }).p('14 3/8"')).toBeCloseTo(single, 2)
    expect(one({ seen, scaled: [apart, apart, apart, apart] }).p('14 3/8"')).toBeGreaterThan(
      1 - (1 - single) / 2,
    )
  })

  it('is less sure where what is drawn may differ from its figure', () => {
    const hard = { seen: '14 [35]/8', scaled: [{ value: 14.4 * IN, u: 0.5 }] }
    expect(one(hard).p('14 3/8"')).toBeGreaterThan(0.99)
    expect(one({ ...hard, drawn: 4 }).p('14 3/8"')).toBeLessThan(0.8)
  })

  it('goes by how the sheet writes its figures', () => {
    const seen = '1 ?/??'
    const scaled = [{ value: 1.42 * IN, u: 0.5 }]
    const sixteenths = ['2 3/16', '7/16', '4 1/2', '11/16', '3 5/16', '9/16', '1/8', '5 15/16']
    expect(one({ seen, scaled, figures: sixteenths }).figures[0]?.text).toBe('1 7/16"')
    const thirtySeconds = one({ seen, scaled, denominators: { 32: 30, 16: 4 } })
    expect(thirtySeconds.p('1 13/32"') + thirtySeconds.p('1 7/16"')).toBeGreaterThan(0)
    expect(thirtySeconds.p('1 7/16"')).toBeLessThan(one({ seen, scaled, figures: sixteenths }).p('1 7/16"'))
  })

  it('holds unreduced fractions and idle zeros for seldom', () => {
    const ranked = one({ seen: '1 [67]/16', context: { unit: 'in' } })
    expect(ranked.p('1 7/16"')).toBeGreaterThan(10 * ranked.p('1 3/8"'))
  })

  it('says that it is none of these where the scale speaks against them all', () => {
    const seen = '1?-3/8'
    const near = one({ seen, scaled: [{ value: 14.4 * IN, u: 0.8 }] })
    const far = one({ seen, scaled: [{ value: 55 * IN, u: 0.8 }] })
    expect(near.none).toBeLessThan(0.01)
    expect(far.none).toBeGreaterThan(0.5)
  })

  it('says so as well where the likeliest text is no figure', () => {
    const slot = (text: string, other?: string) => ({
      alternatives: [
        { text, probability: 0.98 },
        ...(other === undefined ? [] : [{ text: other, probability: 0.01 }]),
      ],
    })
    const ranked = rankFigures({ seen: { slots: [slot('1'), slot(' ', '/'), slot('3'), slot('8')] } })
    expect(ranked.unparsed).toBe('1 38')
    expect(ranked.none).toBeGreaterThan(0.9)
  })

  it('leaves what is scaled aside for a figure that says it is not to scale', () => {
    const hard = {
      seen: '1[23] N.T.S.',
      scaled: [{ value: 13 * IN, u: 0.5 }],
      context: { unit: 'in' },
    } as const
    expect(one(hard).p('12" N.T.S.')).toBeGreaterThan(0.3)
  })

  it('gives what the strokes and the habit alone come to beside it', () => {
    const ranked = rankFigures({ seen: '1?-3/8', scaled: [{ value: 14.4 * IN, u: 0.8 }] })
    const plain = one({ seen: '1?-3/8', kind: 'length' })
    for (const { text, withoutScale } of ranked.figures) expect(withoutScale).toBeCloseTo(plain.p(text), 1)
    expect(ranked.figures.reduce((sum, f) => sum + f.withoutScale, ranked.noneWithoutScale)).toBeCloseTo(1, 9)
  })

  it('ranks metric figures and angles', () => {
    expect(
      one({ seen: '3?5.1', scaled: [{ value: 365.3, u: 0.4 }], context: { unit: 'mm' } }).figures[0]?.text,
    ).toBe('365.1 mm')
    const angle = one({
      seen: "4?° 30'",
      kind: 'angle',
      scaled: [{ value: (47.45 * Math.PI) / 180, u: 0.003 }],
    })
    expect(angle.figures[0]?.text).toBe("47° 30'")
    expect(angle.figures[0]?.probability).toBeGreaterThan(0.9)
  })
})
