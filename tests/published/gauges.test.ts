import Fraction from 'fraction.js'
import { describe, expect, it } from 'vitest'
import {
  GAUGE_STANDARDS,
  type GaugeStandard,
  gaugeNumbers,
  gaugeStep,
  gaugeThickness,
} from '../../src/core/quantity/gauges.ts'
import { lengthIn } from '../../src/core/quantity/length.ts'
import { parseLength } from '../../src/core/quantity/parse/parse-length.ts'

/**
 * Act of Congress of 3 March 1893, chapter 221 (27 Stat. 746; 15 USC 206): thickness in fractions of an inch and weight
 * in ounces per square foot. Down to No. 21 read in a print of the Act; from No. 22 the fractions are *from memory*
 * and the weights follow the published steps (see below), which fix the fractions independently.
 */
const US_STANDARD_1893: [number: string, inches: string, ounces: number][] = [
  ['7/0', '1/2', 320],
  ['6/0', '15/32', 300],
  ['5/0', '7/16', 280],
  ['4/0', '13/32', 260],
  ['3/0', '3/8', 240],
  ['2/0', '11/32', 220],
  ['0', '5/16', 200],
  ['1', '9/32', 180],
  ['2', '17/64', 170],
  ['3', '1/4', 160],
  ['4', '15/64', 150],
  ['5', '7/32', 140],
  ['6', '13/64', 130],
  ['7', '3/16', 120],
  ['8', '11/64', 110],
  ['9', '5/32', 100],
  ['10', '9/64', 90],
  ['11', '1/8', 80],
  ['12', '7/64', 70],
  ['13', '3/32', 60],
  ['14', '5/64', 50],
  ['15', '9/128', 45],
  ['16', '1/16', 40],
  ['17', '9/160', 36],
  ['18', '1/20', 32],
  ['19', '7/160', 28],
  ['20', '3/80', 24],
  ['21', '11/320', 22],
  ['22', '1/32', 20],
  ['23', '9/320', 18],
  ['24', '1/40', 16],
  ['25', '7/320', 14],
  ['26', '3/160', 12],
  ['27', '11/640', 11],
  ['28', '1/64', 10],
  ['29', '9/640', 9],
  ['30', '1/80', 8],
  ['31', '7/640', 7],
  ['32', '13/1280', 6.5],
  ['33', '3/320', 6],
  ['34', '11/1280', 5.5],
  ['35', '1/128', 5],
  ['36', '9/1280', 4.5],
  ['37', '17/2560', 4.25],
  ['38', '1/160', 4],
]

/**
 * Birmingham wire gauge, inches, as Holtzapffel measured it ("Turning and Mechanical Manipulation"), in the table that
 * Rivington's "Notes on Building Construction", part 3, reprints.
 */
const BIRMINGHAM: [number: string, inches: string][] = [
  ['4/0', '0.454'],
  ['3/0', '0.425'],
  ['2/0', '0.380'],
  ['0', '0.340'],
  ['1', '0.300'],
  ['2', '0.284'],
  ['3', '0.259'],
  ['4', '0.238'],
  ['5', '0.220'],
  ['6', '0.203'],
  ['7', '0.180'],
  ['8', '0.165'],
  ['9', '0.148'],
  ['10', '0.134'],
  ['11', '0.120'],
  ['12', '0.109'],
  ['13', '0.095'],
  ['14', '0.083'],
  ['15', '0.072'],
  ['16', '0.065'],
  ['17', '0.058'],
  ['18', '0.049'],
  ['19', '0.042'],
  ['20', '0.035'],
  ['21', '0.032'],
  ['22', '0.028'],
  ['23', '0.025'],
  ['24', '0.022'],
  ['25', '0.020'],
  ['26', '0.018'],
  ['27', '0.016'],
  ['28', '0.014'],
  ['29', '0.013'],
  ['30', '0.012'],
  ['31', '0.010'],
  ['32', '0.009'],
  ['33', '0.008'],
  ['34', '0.007'],
  ['35', '0.005'],
  ['36', '0.004'],
]

/**
 * Imperial standard wire gauge of Great Britain (Order in Council of 23 August 1883; later BS 3737), millimetres as metric
 * handbooks round it; *from memory*, apart from the table in inches that it is held against.
 */
const IMPERIAL: [first: number, millimetres: string][] = [
  [-4, '10.973 10.160 9.449 8.839 8.230'],
  [1, '7.620 7.010 6.401 5.893 5.385 4.877 4.470 4.064 3.658 3.251'],
  [11, '2.946 2.642 2.337 2.032 1.829 1.626 1.422 1.219 1.016 0.914'],
  [21, '0.813 0.711 0.610 0.559 0.508 0.457 0.4166 0.3759 0.3454 0.3150'],
  [31, '0.2946 0.2743 0.2540 0.2337 0.2134 0.1930 0.1727 0.1524 0.1321 0.1219'],
  [41, '0.1118 0.1016 0.0914 0.0813 0.0711 0.0610 0.0508 0.0406 0.0305 0.0254'],
]

describe('the Imperial standard wire gauge', () => {
  it.each(IMPERIAL)('from No. %i on rounds to the millimetres of handbooks', (first, millimetres) => {
    millimetres.split(' ').forEach((written, i) => {
      const no = first + i
      const number = no < 0 ? `${1 - no}/0` : String(no)
      const mm = gaugeThickness(number, 'imperial-1884').mul(127, 5)
      const places = (written.split('.')[1] ?? '').length
      const half = new Fraction(1, 2 * 10 ** places)
      expect(mm.sub(new Fraction(written)).abs().compare(half), `No. ${number}`).toBeLessThanOrEqual(0)
    })
  })

  it('runs from 7/0 to 50 and has no other numbers', () => {
    const numbers = gaugeNumbers('imperial-1884')
    expect(numbers).toHaveLength(57)
    expect([numbers[0], numbers.at(-1)]).toEqual(['7/0', '50'])
  })
})

describe('the US Standard Gauge of 1893', () => {
  it.each(US_STANDARD_1893)('No. %s is %s inch', (number, inches) => {
    expect(gaugeThickness(number, 'us-standard-1893').toFraction()).toBe(inches)
  })

  it.each(US_STANDARD_1893)(
    'No. %s (%s inch) weighs %d ounces a square foot at 640 ounces to the inch',
    (number, _, ounces) => {
      expect(gaugeThickness(number, 'us-standard-1893').mul(640).valueOf()).toBe(ounces)
    },
  )

  it('steps down in ounces a square foot as its published history says', () => {
    // sizes.com, "sheet metal": from 7/0 to 0 by 20; (0 to 1 by 20 in the Act itself;) to 14 by 10; to 16 by 5;
    // to 20 by 4; to 26 by 2; to 31 by 1; to 36 by a half; to 38 by a quarter.
    const expected = [
      ...Array(7).fill(20),
      ...Array(13).fill(10),
      5,
      5,
      ...Array(4).fill(4),
      ...Array(6).fill(2),
    ]
    expected.push(...Array(5).fill(1), ...Array(5).fill(0.5), 0.25, 0.25)
    const ounces = gaugeNumbers('us-standard-1893').map((no) =>
      gaugeThickness(no, 'us-standard-1893').mul(640).valueOf(),
    )
    expect(ounces.slice(1).map((next, i) => (ounces[i] ?? 0) - next)).toEqual(expected)
  })

  it('has no other numbers', () => {
    expect(gaugeNumbers('us-standard-1893')).toEqual(US_STANDARD_1893.map(([number]) => number))
  })
})

describe('the Birmingham wire gauge', () => {
  it.each(BIRMINGHAM)('No. %s is %s inch', (number, inches) => {
    expect(gaugeThickness(number, 'birmingham').equals(new Fraction(inches))).toBe(true)
  })

  it('has no other numbers', () => {
    expect(gaugeNumbers('birmingham')).toEqual(BIRMINGHAM.map(([number]) => number))
  })
})

describe('any sheet gauge', () => {
  const standards: readonly GaugeStandard[] = GAUGE_STANDARDS

  it.each(standards)('%s grows thinner as its numbers grow', (standard) => {
    const sizes = gaugeNumbers(standard).map((no) => gaugeThickness(no, standard))
    for (const [i, size] of sizes.slice(1).entries()) expect(size.lt(sizes[i] ?? 0)).toBe(true)
  })

  it('is called by noughts in either way of writing', () => {
    expect(gaugeThickness('0000', 'birmingham').equals(gaugeThickness('4/0', 'birmingham'))).toBe(true)
    expect(gaugeThickness(0, 'us-standard-1893').toFraction()).toBe('5/16')
    expect(gaugeThickness('1/0', 'us-standard-1893').toFraction()).toBe('5/16')
  })

  it('has a step that reaches half way to each neighbour', () => {
    expect(gaugeStep(16, 'us-standard-1893').toFraction()).toBe('9/1280')
    expect(gaugeStep('7/0', 'us-standard-1893').toFraction()).toBe('1/32')
    expect(gaugeStep(36, 'birmingham').toFraction()).toBe('1/1000')
  })

  it.each([39, '8/0', '00000000', 'x', '', '-1', '1.5', 16.5, '016', '5/0/0'])('has no No. %s', (no) => {
    expect(() => gaugeThickness(no, 'us-standard-1893')).toThrow(/There is no gauge/)
  })
})

describe('units of length', () => {
  it('an inch is 25.4 mm exactly (international agreement of 1959)', () => {
    expect(parseLength('1 in').mm.toFraction()).toBe('127/5')
    expect(lengthIn(parseLength('1 in'), 'mm')).toBe(25.4)
    expect(parseLength('25.4 mm').mm.equals(parseLength('1"').mm)).toBe(true)
  })
  it('a foot is 304.8 mm and a mil 0.0254 mm exactly, by the same', () => {
    expect(parseLength('1 ft').mm.equals('304.8')).toBe(true)
    expect(parseLength('1 mil').mm.equals('0.0254')).toBe(true)
  })
  it('No. 16 US Standard is the 1/16 inch of thin rolled shells (common practice, no source)', () => {
    expect(parseLength('No. 16 GA').mm.equals(parseLength('1/16"').mm)).toBe(true)
  })
})
