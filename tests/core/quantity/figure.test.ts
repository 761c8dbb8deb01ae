import fc from 'fast-check'
import Fraction from 'fraction.js'
import { describe, expect, it } from 'vitest'
import { angleFromDegrees } from '../../../src/core/quantity/angle.ts'
import type { Figure } from '../../../src/core/quantity/figure.ts'
import { formatFigure } from '../../../src/core/quantity/format/format-figure.ts'
import { GAUGE_STANDARDS, gaugeNumbers } from '../../../src/core/quantity/gauges.ts'
import {
  exactInches,
  type Length,
  lengthFromInches,
  lengthFromMillimetres,
} from '../../../src/core/quantity/length.ts'
import { NotationError } from '../../../src/core/quantity/notation/notation-error.ts'
import { parseFigure } from '../../../src/core/quantity/parse/parse-figure.ts'
import { parseLength } from '../../../src/core/quantity/parse/parse-length.ts'
import { stoppingPlace } from './stopping-place.ts'

const inches = (length: Length | undefined): string | undefined =>
  length && exactInches(length).toFraction(true)

describe('a printed figure says what it is of', () => {
  it.each([
    ['14 3/8', 'length', '14 3/8', `14 3/8"`],
    ['Ø 7 1/2"', 'diameter', '7 1/2', `Ø 7 1/2"`],
    ['⌀7½', 'diameter', '7 1/2', `Ø 7 1/2"`],
    ['7 1/2 DIA.', 'diameter', '7 1/2', `Ø 7 1/2"`],
    ['dia. 7 1/2', 'diameter', '7 1/2', `Ø 7 1/2"`],
    ['R 3/16', 'radius', '3/16', `R 3/16"`],
    ['3/16 RAD.', 'radius', '3/16', `R 3/16"`],
    ['14 3/8 C.C.', 'centres', '14 3/8', `14 3/8" C.C.`],
    ['14 3/8 C. C.', 'centres', '14 3/8', `14 3/8" C.C.`],
    ['14 3/8 C TO C', 'centres', '14 3/8', `14 3/8" C.C.`],
    ['14 3/8 c/c', 'centres', '14 3/8', `14 3/8" C.C.`],
    ['14 3/8 CTRS.', 'centres', '14 3/8', `14 3/8" C.C.`],
    ['2 1/4 TYP.', 'length', '2 1/4', `2 1/4" TYP.`],
    ['DRILL 9/32', 'diameter', '9/32', `DRILL 9/32"`],
    ['9/32 drill', 'diameter', '9/32', `DRILL 9/32"`],
    ['4 HOLES DRILL 9/32', 'diameter', '9/32', `4 HOLES DRILL 9/32"`],
    ['4 holes\ndrill 9/32', 'diameter', '9/32', `4 HOLES DRILL 9/32"`],
    ['DRILL 9/32, 4 HOLES'.replace(',', ''), 'diameter', '9/32', `4 HOLES DRILL 9/32"`],
    ['7" O.D.', 'diameter', '7', `7" O.D.`],
    ['7" I.D. TYP', 'diameter', '7', `7" I.D. TYP.`],
    ['2 SQ.', 'length', '2', `2" SQ.`],
    ['6 PLACES R 3/16', 'radius', '3/16', `6 PLACES R 3/16"`],
    ['No. 16 GA', 'gauge', '1/16', 'No. 16 GA'],
    ['16 B.W.G.', 'gauge', '13/200', 'No. 16 B.W.G.'],
    ['.0650', 'length', '13/200', '0.0650"'],
    ["1.5'", 'length', '18', `1'-6"`],
  ])('%j is a %s of %s inches, written %s', (text, of, size, written) => {
    const figure = parseFigure(text)
    expect(figure.text).toBe(text)
    expect(figure.of).toBe(of)
    expect(inches(figure.length)).toBe(size)
    expect(formatFigure(figure)).toBe(written)
  })

  it.each([
    ['14 3/8 ±1/32', '1/32', '1/32', `14 3/8" ±1/32"`],
    ['14 3/8 +/- 1/32', '1/32', '1/32', `14 3/8" ±1/32"`],
    ['14 3/8 +0 −1/64', '0', '1/64', `14 3/8" +0" −1/64"`],
    ['14 3/8 +0-1/64', '0', '1/64', `14 3/8" +0" −1/64"`],
    ['14 3/8\n+0\n-1/64', '0', '1/64', `14 3/8" +0" −1/64"`],
    ['14 3/8 +1/32 -0', '1/32', '0', `14 3/8" +1/32" −0"`],
    ['14 3/8 −0 +1/32', '1/32', '0', `14 3/8" +1/32" −0"`],
    ['14 +.005-.002', '1/200', '1/500', `14" +0.005" −0.002"`],
    ['No. 16 GA ±.003', '3/1000', '3/1000', 'No. 16 GA ±0.003"'],
  ])('%j may be larger by %s and smaller by %s inch', (text, plus, minus, written) => {
    const figure = parseFigure(text)
    expect(inches(figure.tolerance?.plus)).toBe(plus)
    expect(inches(figure.tolerance?.minus)).toBe(minus)
    expect(formatFigure(figure)).toBe(written)
  })

  it('takes a bare tolerance in the unit of its size', () => {
    expect(parseFigure('365.1 mm ±0.5').tolerance?.plus.mm.toFraction()).toBe('1/2')
    expect(
      parseFigure('14 3/8" ±1/32', { unit: 'mm' }).tolerance?.plus.mm.equals(parseLength('1/32"').mm),
    ).toBe(true)
  })

  it("reads an angle and its tolerance, in which 30' are minutes", () => {
    const figure = parseFigure("47° 30' ±30' TYP.")
    expect(figure.of).toBe('angle')
    expect(figure.angle?.degrees.toFraction()).toBe('95/2')
    expect(figure.angleTolerance?.plus.degrees.toFraction()).toBe('1/2')
    expect(formatFigure(figure)).toBe("47° 30' ±0° 30' TYP.")
  })

  it('takes a number before an angle for how many', () => {
    const figure = parseFigure('4 x ½°')
    expect(figure).toMatchObject({ of: 'angle', count: 4 })
    expect(figure.mayBeSection).toBeUndefined()
    expect(parseFigure(formatFigure(figure))).toMatchObject({ of: 'angle', count: 4 })
  })

  it('reads a bare count', () => {
    expect(parseFigure('4 HOLES')).toEqual({
      text: '4 HOLES',
      of: 'count',
      count: 4,
      counted: 'holes',
      typical: false,
      drilled: false,
    })
  })

  it('names a gauge of another standard than the job’s', () => {
    expect(formatFigure(parseFigure('No. 16 GA', { gauge: 'birmingham' }))).toBe('No. 16 B.W.G.')
    expect(formatFigure(parseFigure('No. 16 GA'), { gauge: 'birmingham' })).toBe('No. 16 U.S.S.G.')
  })
})

describe('a figure of no single meaning is refused, with the place where reading stopped', () => {
  it.each([
    ['', 0, /Nothing is written/],
    ['4-9/32 DRILL', 0, /write 4 HOLES DRILL 9\/32, or DRILL 4 9\/32/],
    ['4 9/32 DRILL', 0, /either a number of holes or one size/],
    ['4 3/8 HOLES', 6, /how many holes before/],
    ['1-3/8 HOLES', 0, /write 1 HOLE DRILL 3\/8/],
    ['HOLES 3/8', 0, /how many holes before/],
    ['0 HOLES', 0, /from 1 up/],
    ['2.5 HOLES', 0, /from 1 up/],
    ['4 HOLES 4 HOLES', 8, /said twice/],
    ['4 HOLES TYP. DRILL', 18, /Expected a figure/],
    ['R', 1, /Expected a figure/],
    ['Ø R 3', 2, /contradicts/],
    ['Ø 3 DIA.', 4, /said twice/],
    ['7 O.D. I.D.', 7, /contradicts/],
    ['Ø 2 SQ.', 4, /contradicts/],
    ['No. 16 GA DIA.', 10, /Only a length/],
    ['R 47°', 2, /make this figure a length/],
    ['± 1/32', 0, /size first/],
    ['14 ±1/32 ±1/64', 9, /second tolerance/],
    ['14 +1/32', 8, /write −0/],
    ['14 -1/32', 8, /write \+0/],
    ['14 - 1/32', 3, /write \+0/],
    ['14 +1/32 +0', 9, /write −0/],
    ['14 ±', 4, /Expected a length/],
    ['14 ± 1°', 5, /tolerance as a length/],
    ['47° ±1/32', 9, /write ° or deg/],
    ['-3', 0, /never less/],
    ['1-38', 1, /dash joins/],
    ['1 38', 2, /side by side/],
    ['2 X 3', 2, /no single length/],
    ['2x3', 1, /no single length/],
    ['1/4 x 2 x 3', 4, /no single length/],
    ['C 14', 0, /no fixed meaning/],
    ['R.375', 1, /stop may end/],
    ['14 3/8" + 0.006"', 16, /write −0/],
    ['14 (3/8)', 3, /brackets may belong/],
    ['1e3 mm', 1, /no fixed meaning/],
    ['14 (±1/32)', 3, /brackets may belong/],
    ['14 (+1/32 −0)', 3, /brackets may belong/],
    ['1.500 ±.001/1.498', 11, /second tolerance/],
    ['38.10 mm h6/38.05 mm', 11, /second tolerance/],
    ["M30' 6", 0, /no fixed meaning/],
    ['14 ±0', 3, /without any tolerance/],
    ['14 +0 −0', 3, /without any tolerance/],
  ])('%j stops at %i', (text, at, advice) => {
    const error = stoppingPlace(() => parseFigure(text))
    expect(error?.message).toMatch(advice)
    expect(error?.at).toBe(at)
  })

  it('whatever the text, with a place within it', () => {
    const words = [
      'Ø',
      'DIA.',
      'R',
      'C.C.',
      'TYP.',
      '4 HOLES',
      'DRILL',
      '9/32',
      '±',
      '+0',
      '−1/64',
      'No.',
      '16',
      'GA',
      '47°',
      '6 –',
      '6X',
      '5/8',
      'BOLTS',
      'RIVETS',
      'HOLES',
      'EQ. SP.',
      'BORE',
      'TAP',
      'P.C.D.',
      'A/F',
      'MAX.',
      'REF.',
      '(',
      ')',
      'ABT.',
      'FULL',
      'N.T.S.',
      'THICK',
      '1.500/1.498',
      '-13 UNC',
      'M12 × 1.5',
      '1 IN 8',
      'PER FT.',
      'TAPER',
      '25 mm',
      'H7',
      'g6',
      '12,5',
      '@',
      '=',
      ',',
      'x',
      '□',
    ]
    const signs = fc.array(fc.constantFrom(...words, ' ', ' ', "'", '"', '-', '\n', '3/8', '14 '), {
      maxLength: 9,
    })
    const texts = fc.oneof(
      fc.string({ unit: 'binary', maxLength: 30 }),
      signs.map((s) => s.join('')),
    )
    fc.assert(
      fc.property(texts, (text) => {
        let figure: Figure
        try {
          figure = parseFigure(text)
        } catch (error) {
          if (!(error instanceof NotationError)) throw error
          expect(error.at).toBeGreaterThanOrEqual(0)
          expect(error.at).toBeLessThanOrEqual(text.length)
          return
        }
        expect(content(parseFigure(formatFigure(figure)))).toEqual(content(figure))
      }),
      { numRuns: 6000 },
    )
  })
})

/** All that a figure says, sizes as exact values, but for how it was spelled. */
function content(figure: Figure): unknown {
  const length = (size: Length | undefined): string | undefined => size?.mm.toFraction()
  // Whether a point may part thousands is a question of the spelling.
  const { text: _, decimalComma: __, mayBeThousands: ___, ...said } = figure
  const { length: size, angle, tolerance, angleTolerance, ...rest } = said
  return {
    ...rest,
    length: length(size),
    system: size?.system,
    angle: angle?.degrees.toFraction(),
    plus: length(tolerance?.plus) ?? angleTolerance?.plus.degrees.toFraction(),
    minus: length(tolerance?.minus) ?? angleTolerance?.minus.degrees.toFraction(),
  }
}

const fraction = fc
  .record({ whole: fc.nat(300), n: fc.nat(127), d: fc.constantFrom(1, 2, 4, 8, 16, 32, 64, 128, 3, 80) })
  .map(({ whole, n, d }) => new Fraction(whole).add(new Fraction(n % d, d)))
const inchLength = fc
  .record({ value: fraction, feet: fc.boolean() })
  .map(({ value, feet }): Length => ({ ...lengthFromInches(value), feet: feet && value.compare(12) >= 0 }))
const decimalInches = fc
  .record({ n: fc.nat(9_999_999), places: fc.integer({ min: 1, max: 6 }) })
  .map(({ n, places }) => lengthFromInches(new Fraction(n, 10 ** places), new Fraction(1, 10 ** places)))
const millimetres = fc
  .record({ n: fc.nat(9_999_999), places: fc.nat(3) })
  .map(({ n, places }) => lengthFromMillimetres(new Fraction(n, 10 ** places), new Fraction(1, 10 ** places)))
const anyLength = fc.oneof(inchLength, decimalInches, millimetres)
const anyAngle = fc
  .record({ n: fc.nat(400_000), d: fc.constantFrom(1, 2, 60, 3600, 10, 100, 7) })
  .map(({ n, d }) => angleFromDegrees(new Fraction(n, d)))

const lengthFigure = fc
  .record({
    length: anyLength,
    kind: fc.constantFrom<Partial<Figure>[]>(
      { of: 'length' },
      { of: 'length', square: true },
      { of: 'diameter' },
      { of: 'diameter', drilled: true },
      { of: 'diameter', side: 'outside' },
      { of: 'diameter', side: 'inside', drilled: true },
      { of: 'radius' },
      { of: 'centres' },
    ),
    count: fc.option(fc.integer({ min: 1, max: 48 }), { nil: undefined }),
    counted: fc.constantFrom<('holes' | 'places')[]>('holes', 'places'),
    tolerance: fc.option(
      fc
        .record({ plus: anyLength, minus: anyLength })
        .filter(({ plus, minus }) => plus.mm.n > 0n || minus.mm.n > 0n),
      { nil: undefined },
    ),
    typical: fc.boolean(),
  })
  .map(
    ({ length, kind, count, counted, tolerance, typical }): Figure => ({
      text: '',
      of: 'length',
      drilled: false,
      ...kind,
      length,
      typical,
      ...(count !== undefined && { count, counted }),
      ...(tolerance && { tolerance }),
    }),
  )

const angleFigure = fc
  .record({
    angle: anyAngle,
    plus: anyAngle,
    minus: anyAngle,
    toleranced: fc.boolean(),
    typical: fc.boolean(),
  })
  .filter(({ plus, minus }) => plus.degrees.n > 0n || minus.degrees.n > 0n)
  .map(
    ({ angle, plus, minus, toleranced, typical }): Figure => ({
      text: '',
      of: 'angle',
      angle,
      typical,
      drilled: false,
      ...(toleranced && { angleTolerance: { plus, minus } }),
    }),
  )

describe('whatever figure is written is read again', () => {
  it('for lengths of every kind, with counts and tolerances', () => {
    fc.assert(
      fc.property(lengthFigure, (figure) => {
        expect(content(parseFigure(formatFigure(figure)))).toEqual(content(figure))
      }),
      { numRuns: 2000 },
    )
  })

  it('for angles', () => {
    fc.assert(
      fc.property(angleFigure, (figure) => {
        expect(content(parseFigure(formatFigure(figure)))).toEqual(content(figure))
      }),
      { numRuns: 1000 },
    )
  })

  it('for every gauge of all standards, whichever the job uses', () => {
    for (const standard of GAUGE_STANDARDS) {
      for (const gauge of GAUGE_STANDARDS) {
        for (const number of gaugeNumbers(standard)) {
          const figure = parseFigure(`No. ${number} GA`, { gauge: standard })
          expect(content(parseFigure(formatFigure(figure, { gauge }), { gauge }))).toEqual(content(figure))
        }
      }
    }
  })
})
