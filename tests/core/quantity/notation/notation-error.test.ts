import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { radians } from '../../../../src/core/geometry/angle-units.ts'
import { formatAngle } from '../../../../src/core/quantity/format/format-angle.ts'
import { formatArea } from '../../../../src/core/quantity/format/format-area.ts'
import { formatCount } from '../../../../src/core/quantity/format/format-count.ts'
import { formatLength } from '../../../../src/core/quantity/format/format-length.ts'
import { gaugeThickness } from '../../../../src/core/quantity/gauges.ts'
import { parseAngle } from '../../../../src/core/quantity/parse/parse-angle.ts'
import { parseArea } from '../../../../src/core/quantity/parse/parse-area.ts'
import { parseCount } from '../../../../src/core/quantity/parse/parse-count.ts'
import { parseDrawnScale } from '../../../../src/core/quantity/parse/parse-drawn-scale.ts'
import { parseFigure } from '../../../../src/core/quantity/parse/parse-figure.ts'
import { parseKnownSize } from '../../../../src/core/quantity/parse/parse-known-size.ts'
import { parseLength } from '../../../../src/core/quantity/parse/parse-length.ts'
import { parseTolerance } from '../../../../src/core/quantity/parse/parse-tolerance.ts'
import { inWords } from '../../../../src/core/words/core-words.ts'
import { NOTATION_WORDS } from '../../../../src/core/words/notation.ts'
import { ScantlingError } from '../../../../src/core/words/scantling-error.ts'
import { stoppingPlace } from '../stopping-place.ts'

const length = (text: string) => () => parseLength(text)
const figure = (text: string) => () => parseFigure(text)
const size = (text: string) => () => parseKnownSize(text, 'diameter', {})
const angle = (text: string) => () => parseAngle(text)

/** One attempt for each advice of a reader. */
const ADVICE: [code: string, attempt: () => unknown][] = [
  ['too-many-digits', length('1'.repeat(21))],
  ['ambiguous-stop', length('ft.2')],
  ['denominator-missing', length('1 3/')],
  ['denominator-zero', length('1/0')],
  ['improper-fraction', length('13/8')],
  ['second-number', length('1 38')],
  ['second-fraction', length('14⅜⅜')],
  ['second-bar', length('3/8/2')],
  ['second-line', length('14 3\n8\n2')],
  ['subtraction', length('14 - 3/8')],
  ['stray-dash', length('1-38')],
  ['capital-m', length('12 M')],
  ['comma', length('365, 1 mm')],
  ['comma-of-thousands', length('1,200')],
  ['thousands-apart', length('1 250')],
  ['question-mark', length('3 1/4?')],
  ['point-without-digits', length('5.')],
  ['no-unit', length('14 furlongs')],
  ['length-expected', length('R 3/16')],
  ['length-negative', length('-3')],
  ['fraction-of-a-foot', length('1.5\' 3"')],
  ['inch-mark-wrong', length("1'2'")],
  ['twelve-inches', length(`1'-14"`)],
  ['second-length', length(`12" 3'`)],
  ['second-unit', length('14 mm"')],
  ['after-length', length('14"?')],
  ['remainder-expected', length('14" + ?')],
  ['remainder-not-decimal', length('14" + 1.5"')],
  ['remainder-unmarked', length('14" + 0.006')],
  ['gauge-signed', () => parseLength('-16 GA', { signed: true })],
  ['gauge-number', length('No. 16.5 GA')],
  ['gauge-noughts', length('3/8 GA')],
  ['gauge-table-unknown', length('16 B.G.')],
  ['gauge-unmarked', length('No. 16')],
  ['gauge-outside-table', length('No. 45 GA')],
  ['after-gauge', length('No. 16 GA 2')],
  ['angle-expected', angle('about 47°')],
  ['angle-negative', angle('-47°')],
  ['angle-unit-missing', angle('47')],
  ['angle-part-unmarked', angle('1 deg 3 4 min')],
  ['sixty-of-a-part', angle("47° 60'")],
  ['angle-fraction-inside', angle("47.5° 30'")],
  ['angle-part-stray', angle('47° 30')],
  ['after-angle', angle('47°°')],
  ['area-expected', () => parseArea('?')],
  ['area-unit-missing', () => parseArea('12.4')],
  ['area-not-square', () => parseArea('12.4 in')],
  ['after-area', () => parseArea('12.4 sq in 3')],
  ['count-expected', () => parseCount('four')],
  ['count-too-large', () => parseCount('99999999999999999')],
  ['after-count', () => parseCount('4 bolts')],
  ['minus-limit-missing', () => parseTolerance('+1/32')],
  ['plus-limit-missing', () => parseTolerance('-1/32')],
  ['figure-expected', figure('R')],
  ['term-repeated', figure('Ø 3 DIA.')],
  ['term-of-a-length', figure('No. 16 GA DIA.')],
  ['term-contradicts', figure('Ø R 3')],
  ['count-or-size', figure('4-9/32 DRILL')],
  ['count-repeated', figure('4 HOLES 4 HOLES')],
  ['count-not-whole', figure('0 HOLES')],
  ['count-after-size', figure('HOLES 3/8')],
  ['length-wanted', figure('R 47°')],
  ['second-tolerance', figure('14 ±1/32 ±1/64')],
  ['tolerance-before-size', figure('± 1/32')],
  ['tolerance-not-a-length', figure('14 ± 1°')],
  ['word-unknown', figure('3 1/4 GALORE')],
  ['size-by-size', figure('2 X 3')],
  ['nominal-pipe', figure('1 1/2 PIPE')],
  ['count-or-whole', figure('2 3/8 PLATES')],
  ['thread-of-inches', () => parseFigure('12 B.S.W.', { unit: 'mm' })],
  ['bracket-open', figure('(3 1/4')],
  ['bracket-empty', figure('3 1/4 ()')],
  ['bracketed-fraction', figure('14 (3/8)')],
  ['gauge-of-another-thickness', figure('No. 16 GA (.065)')],
  ['tolerance-of-nothing', () => parseTolerance('0')],
  ['limit-and-tolerance', figure('3.250 MAX ±.005')],
  ['limits-apart', figure('1.500/9.000')],
  ['fit-of-millimetres', figure('1.5" H7')],
  ['slope-expected', figure('TAPER 3/4"')],
  ['ratio-unsaid', figure('1:12')],
  ['known-size-without-length', size('47°')],
  ['known-size-is-a-radius', size('R 3')],
  ['known-size-is-a-diameter', () => parseKnownSize('Ø 3', 'rectangle', {})],
  ['known-size-not-to-scale', size('12" N.T.S.')],
  ['known-size-not-exact', size('12" MAX.')],
  ['after-gauge-figure', figure('No. 16 GA ?')],
]

/** One attempt for each of the rest. */
const OTHERS: [code: string, attempt: () => unknown][] = [
  ['stopped', length('1 38')],
  ['nothing-written', length(' ')],
  ['scale-unread', () => parseDrawnScale('about a quarter', 'in')],
  ['no-such-gauge', () => gaugeThickness(39, 'us-standard-1893')],
  ['unwritable-length', () => formatLength(Number.NaN, { unit: 'in' })],
  ['unwritable-angle', () => formatAngle(radians(Number.NaN))],
  ['unwritable-area', () => formatArea(Number.POSITIVE_INFINITY, { unit: 'in' })],
  ['unwritable-count', () => formatCount(Number.NaN)],
  ['unwritable-graduation', () => formatLength(1, { unit: 'in', denominator: 2.5 })],
]

function refusal(attempt: () => unknown): ScantlingError | undefined {
  try {
    attempt()
    return undefined
  } catch (error) {
    if (error instanceof ScantlingError) return error
    throw error
  }
}

describe('why a quantity cannot be read is told by a code', () => {
  it.each(ADVICE)('%s', (code, attempt) => {
    expect(stoppingPlace(attempt)?.advice.code).toBe(`notation.${code}`)
  })

  it.each(OTHERS)('%s', (code, attempt) => {
    expect(refusal(attempt)?.reason.code).toBe(`notation.${code}`)
  })

  it('and there are words for no other', () => {
    const given = [...ADVICE, ...OTHERS].map(([code]) => `notation.${code}`)
    expect(Object.keys(NOTATION_WORDS).toSorted()).toEqual(given.toSorted())
  })
})

describe('a reason', () => {
  it.each([...ADVICE, ...OTHERS])('%s goes through JSON and says the same', (_, attempt) => {
    const error = refusal(attempt)
    const again = JSON.parse(JSON.stringify(error?.reason))
    expect(again).toEqual(error?.reason)
    expect(inWords(again)).toBe(error?.message)
  })

  it('of any text too, with the text and the place in it', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 20 }), (text) => {
        const error = stoppingPlace(() => parseFigure(text))
        if (error === undefined || text.trim() === '') return
        expect(error.reason).toEqual({
          code: 'notation.stopped',
          parts: { text, at: error.at, advice: error.advice },
        })
        expect(inWords(error.reason)).toBe(error.message)
      }),
    )
  })
})
