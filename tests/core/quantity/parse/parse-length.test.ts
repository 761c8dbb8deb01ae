import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { exactInches, lengthIn } from '../../../../src/core/quantity/length.ts'
import { NotationError } from '../../../../src/core/quantity/notation/notation-error.ts'
import { type LengthContext, parseLength } from '../../../../src/core/quantity/parse/parse-length.ts'
import { stoppingPlace } from '../stopping-place.ts'

const inches = (text: string, context?: LengthContext): string =>
  exactInches(parseLength(text, context)).toFraction(true)

describe('a length is read exactly, however the draughtsman wrote it', () => {
  it.each([
    [`1'-2 3/8"`, '14 3/8'],
    ['1 ft 2-3/8 in', '14 3/8'],
    ['1 ft. 2 3/8 ins.', '14 3/8'],
    ['1 FT 2 3/8 IN', '14 3/8'],
    ['1ft2in', '14'],
    ['1’-2⅜”', '14 3/8'],
    ['1′ 2 3⁄8″', '14 3/8'],
    ["1'-2 3/8''", '14 3/8'],
    [`1' - 2 3/8"`, '14 3/8'],
    [`1'2"`, '14'],
    [`1'-2 3/8`, '14 3/8'],
    [`1'-2-3/8"`, '14 3/8'],
    [`1'-½"`, '12 1/2'],
    [`2'–0"`, '24'],
    [`2'—0"`, '24'],
    ['2\'−0"', '24'],
    ['2\'\u20110"', '24'],
    ['2\'\u20120"', '24'],
    ["5'", '60'],
    ["1.5'", '18'],
    ['1 1/2 ft', '18'],
    ['14\u00a03/8"', '14 3/8'],
    ['14\u20093/8"', '14 3/8'],
    ['  14 3/8 " ', '14 3/8'],
    ['14-3/8', '14 3/8'],
    ['14–3/8"', '14 3/8'],
    ['14⅜', '14 3/8'],
    ['14 ⅜"', '14 3/8'],
    ['3 / 8', '3/8'],
    ['6/16', '3/8'],
    ['3/80', '3/80'],
    ['1/3', '1/3'],
    ['.375', '3/8'],
    ['0.0625 in', '1/16'],
    ['2.375"', '2 3/8'],
    ['62.5 mils', '1/16'],
    ['1 thou', '1/1000'],
    ['0', '0'],
    [`0"`, '0'],
    ['No. 16 GA', '1/16'],
    ['NO.16 GA.', '1/16'],
    ['No 16 gauge', '1/16'],
    ['#16 gage', '1/16'],
    ['16 GA.', '1/16'],
    ['16GA', '1/16'],
    ['No. 0000 GA', '13/32'],
    ['4/0 GA', '13/32'],
    ['No. 20 GA', '3/80'],
    ['16 B.W.G.', '13/200'],
    ['16 S.W.G.', '8/125'],
    ['4.1/2', '4 1/2'],
    ['No. 16 GA. B.W.G.', '13/200'],
    ['No. 16 U.S.S.G.', '1/16'],
  ])('%j is %s inches', (text, expected) => {
    expect(inches(text)).toBe(expected)
  })

  it.each([
    ['365.1 mm', '3651/10'],
    ['365.1mm.', '3651/10'],
    ['36.5 cm', '365'],
    ['1.2 m', '1200'],
    ['1/2 mm', '1/2'],
    ['20 µm', '1/50'],
    ['10 m/m', '10'],
    ['365,1 mm', '3651/10'],
    ['0,125 mm', '1/8'],
    ['1.234,5 mm', '2469/2'],
    ['1,234.5 mm', '2469/2'],
  ])('%j is %s millimetres', (text, expected) => {
    expect(parseLength(text).mm.toFraction()).toBe(expected)
    expect(parseLength(text).system).toBe('mm')
  })

  it('takes a bare number in the unit of the job, and a marked one in its own', () => {
    expect(lengthIn(parseLength('365.1', { unit: 'mm' }), 'mm')).toBe(365.1)
    expect(lengthIn(parseLength('14 3/8"', { unit: 'mm' }), 'in')).toBe(14.375)
    expect(lengthIn(parseLength("1'-2 3/8", { unit: 'mm' }), 'in')).toBe(14.375)
  })

  it('takes a bare gauge by the standard of the job, and a named one by its own', () => {
    expect(inches('No. 16 GA', { gauge: 'birmingham' })).toBe('13/200')
    expect(inches('No. 16 U.S.S.G.', { gauge: 'birmingham' })).toBe('1/16')
  })

  it.each([
    ['14 3\n8', '14 3/8'],
    ['14 3\r\n8"', '14 3/8'],
    ['3\n8', '3/8'],
    ['14 3\n--\n8"', '14 3/8'],
    ['14 3\n—\n8 in', '14 3/8'],
    ['1\'-2 3\n_\n8"', '14 3/8'],
    ['14 3/8\nin', '14 3/8'],
  ])('%j is a stacked fraction: the line end stands for the bar', (text, expected) => {
    expect(inches(text)).toBe(expected)
  })

  it.each([
    ['14 3/8"', '1/8'],
    ['14 6/16"', '1/16'],
    ['14"', '1'],
    ["5'", '1'],
    ['1\'-2 3/64"', '1/64'],
    ['.375', '1/1000'],
    ['2.50"', '1/100'],
  ])('%j is written to %s inch', (text, graduation) => {
    expect(parseLength(text).graduation.div(127, 5).toFraction()).toBe(graduation)
  })

  it('is written to a tenth of a millimetre where it has one decimal', () => {
    expect(parseLength('365.1 mm').graduation.toFraction()).toBe('1/10')
    expect(parseLength('36.5 cm').graduation.toFraction()).toBe('1')
  })

  it('takes a sheet called by number to be nearer to that gauge than to its neighbours', () => {
    // (9/128 − 9/160) / 2
    expect(parseLength('No. 16 GA').graduation.div(127, 5).toFraction()).toBe('9/1280')
  })

  it('takes a minus only where a quantity can be less than 0', () => {
    expect(inches('−3/8"', { signed: true })).toBe('-3/8')
    expect(inches('-1\'-2"', { signed: true })).toBe('-14')
    expect(() => parseLength('-3/8"')).toThrow(/never less than 0/)
  })
})

describe('what has no single meaning is refused, with the place where reading stopped', () => {
  it.each([
    ['', 0, /Nothing is written/],
    ['   ', 3, /Nothing is written/],
    ['1 38', 2, /side by side.*1 3\/8/],
    ['1-38', 1, /dash joins/],
    ['1/0', 2, /0 below its bar/],
    ['1 3/', 4, /below the fraction bar is missing/],
    ['/8', 0, /Expected a length/],
    ['3/8/2', 3, /second fraction bar/],
    ["1'2'", 3, /Inches are marked/],
    [`12" 3'`, 4, /feet before inches/],
    [`1'-14"`, 3, /less than 12.*2'-2"/],
    [`1'-12"`, 3, /less than 12.*2'-0"/],
    ['2 9/8', 2, /write 3 1\/8/],
    ['2 8/8', 2, /write 3\./],
    ['13/8', 0, /write 1 5\/8, or 1 3\/8 if a gap was lost/],
    ['143\n8', 0, /must be smaller/],
    ['14\n3\n8', 0, /must be smaller/],
    ['14\n3/8', 0, /must be smaller/],
    ['14 3\n8\n2', 6, /second line/],
    ['14 - 3/8', 3, /subtraction/],
    ['14 − 3/8', 3, /subtraction/],
    ['14 -1/64', 3, /subtraction/],
    ['1.5\' 3"', 0, /fraction of a foot/],
    ['1 ft.2', 4, /stop may end the abbreviation/],
    ['5.', 1, /point needs digits/],
    ['1.5 3/8', 4, /side by side/],
    ['14⅜⅜', 3, /second fraction/],
    ['365, 1 mm', 3, /point or a comma/],
    ['1,200', 1, /write 1200 or 1\.200/],
    ['1 250 mm', 2, /write 1250 without the gap/],
    ['14 mm 3', 6, /second quantity/],
    [`14 mm"`, 5, /second unit/],
    ['14 furlongs', 3, /Only a unit/],
    ['R 3/16', 0, /Expected a length/],
    ['+3/8', 0, /Expected a length/],
    ['--3/8', 0, /never less/],
    ['No. 16', 6, /write GA/],
    ['No. 45 GA', 4, /from No\. 7\/0 to No\. 38/],
    ['No. 7/0 B.W.G.', 4, /from No\. 4\/0 to No\. 36/],
    ['No. 16.5 GA', 4, /whole number/],
    ['3/8 GA', 2, /Only a 0/],
    ['16 B.G.', 3, /another table than B\.W\.G\./],
    ['No. 16 GA 2', 10, /Nothing may follow/],
    ['14" + 3/8"', 6, /decimal of less than an inch/],
    ['14" + 1.5"', 6, /decimal of less than an inch/],
    ['14" + 0.006', 11, /inch mark/],
    ['14 + 0.006"', 3, /Only a unit/],
    ['1'.repeat(21), 0, /more than 20 digits/],
    ['😀', 0, /Expected a length/],
    ['1e5', 1, /Only a unit/],
    ['Infinity', 0, /Expected a length/],
  ])('%j stops at %i', (text, at, advice) => {
    const error = stoppingPlace(() => parseLength(text))
    expect(error?.at).toBe(at)
    expect(error?.message).toMatch(advice)
    expect(error?.text).toBe(text)
  })

  it('shows the text, the place and what stood there', () => {
    expect(stoppingPlace(() => parseLength('1 38'))?.message).toBe(
      'Cannot read “1 38”: stopped at character 3, “38”. ' +
        'Two numbers stand side by side; write the fraction with its bar, for instance 1 3/8.',
    )
  })

  it('shows only the neighbourhood of the place in a long text', () => {
    const error = stoppingPlace(() => parseLength(`14 3/8${' '.repeat(500)}?${'x'.repeat(500)}`))
    expect(error?.at).toBe(506)
    expect(error?.message).toContain('“?”')
    expect(error?.message.length).toBeLessThan(300)
  })
})

/** Valid lengths to spoil. */
const SOUND = [
  `1'-2 3/8"`,
  '1 ft 2-3/8 in',
  '14⅜',
  '2.375"',
  '365.1 mm',
  'No. 16 GA',
  '4/0 B.W.G.',
  '14 3\n8',
]
const SIGNS = [...`0123456789 /-–−'"’″.,+±°ØR\n⅜½abNoGAmftin`, '\u2009', '']

const spoiled = fc
  .record({
    text: fc.constantFrom(...SOUND),
    changes: fc.array(fc.record({ at: fc.nat(14), sign: fc.constantFrom(...SIGNS), cut: fc.nat(2) }), {
      minLength: 1,
      maxLength: 4,
    }),
  })
  .map(({ text, changes }) =>
    changes.reduce((all, { at, sign, cut }) => all.slice(0, at) + sign + all.slice(at + cut), text),
  )

describe('nothing but a length or a notation error comes of any text', () => {
  const reads = (text: string): void => {
    try {
      const length = parseLength(text, { signed: true })
      expect(Number.isFinite(lengthIn(length, 'mm'))).toBe(true)
      expect(length.graduation.compare(0)).toBe(1)
    } catch (error) {
      if (!(error instanceof NotationError)) throw error
      expect(error.at).toBeGreaterThanOrEqual(0)
      expect(error.at).toBeLessThanOrEqual(text.length)
      expect(error.message).toMatch(/[.]$/)
    }
  }

  it('for arbitrary text', () => {
    fc.assert(fc.property(fc.string({ unit: 'binary', maxLength: 40 }), reads), { numRuns: 2000 })
  })

  it('for text of the signs that figures are made of', () => {
    fc.assert(
      fc.property(
        fc.array(fc.constantFrom(...SIGNS), { maxLength: 14 }).map((s) => s.join('')),
        reads,
      ),
      {
        numRuns: 3000,
      },
    )
  })

  it('for sound lengths that were spoiled', () => {
    fc.assert(fc.property(spoiled, reads), { numRuns: 3000 })
  })
})
