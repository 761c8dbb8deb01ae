import { describe, expect, it } from 'vitest'
import { applyEdit } from '../../../src/core/job/edits/edit.ts'
import type { Evidence, Job, Reference } from '../../../src/core/job/model/types.ts'
import { dimensionTable } from '../../../src/core/ledger/table/dimension-table.ts'
import { dimension, found, printed, rowOf, scaled, smallJob } from './small-job.ts'

/** 10 in on the sheet. */
const half = scaled(['A', 'C'])

const job = (evidence: Evidence[], more: Partial<Job> = {}, name = 'drum'): Job =>
  smallJob({ dimensions: [dimension(name, evidence)], ...more })
const row = (evidence: Evidence[], more: Partial<Job> = {}, name = 'drum') =>
  rowOf(job(evidence, more, name), name)

/** Standard uncertainty of what lies evenly within this much to either side, inches. */
const within = (halfWidth: number): number => halfWidth / Math.sqrt(3)

/** A circle by three places of its rim. */
const round = (pixels: number[][]) =>
  ({ id: 'K', sheet: 'S1', how: 'hand', sigma: 1, kind: 'circle', pixels }) as unknown as Job['marks'][number]

describe('a limit on one side', () => {
  it('is no value: alone it leaves the dimension open and says why', () => {
    const alone = row([printed('10 1/2" MAX.')])
    expect(alone).toMatchObject({ value: null, status: 'open' })
    expect(alone.why).toContain('at most 10 1/2"')
    expect(alone.evidence[0]).toMatchObject({ value: null, written: '10 1/2" MAX.' })
  })

  it.each([
    ['10 1/2" MAX.', 'single'],
    ['9 1/2" MIN.', 'single'],
    ['9" MAX.', 'disputed'],
    ['11" MIN.', 'disputed'],
  ])('%s leaves 10 in that are scaled %s', (text, status) => {
    const held = row([printed(text), half])
    expect(held).toMatchObject({ basis: 'scaled', status })
    expect(held.value).toBeCloseTo(10, 9)
    expect(held.why).not.toContain(`${text} ±`)
    expect(held.why).toContain(
      status === 'single' ? `it keeps to the printed ${text}` : `beyond the printed limit ${text}`,
    )
  })

  it('is not counted as a second witness, nor taken when it is chosen', () => {
    const evidence = [printed('10 1/2" MAX.'), half, found(['10.00 in'])]
    expect(row(evidence).status).toBe('agreed')
    const chosen = smallJob({ dimensions: [dimension('drum', evidence, { adopt: 'p' })] })
    expect(rowOf(chosen, 'drum')).toMatchObject({ value: null, status: 'open' })
  })
})

describe('a loose figure is never exact', () => {
  const sixteenth = 1 / 16
  it.each([
    ['7/8" FULL', 7 / 8 + sixteenth / 4, within(sixteenth / 4), /a little over/],
    ['7/8" BARE', 7 / 8 - sixteenth / 4, within(sixteenth / 4), /a little under/],
    ['ABT. 7/8"', 7 / 8, within(sixteenth), /a graduation more or less/],
  ])('%s', (text, value, u, remark) => {
    const loose = row([printed(text)])
    expect(loose.basis).toBe('printed')
    expect(loose.value).toBeCloseTo(value, 9)
    expect(loose.u).toBeCloseTo(u, 9)
    expect(loose.evidence[0]?.u).toBeCloseTo(u, 9)
    expect(loose.written).toMatch(/^0\.\d{3}"$/)
    expect(loose.near).toMatch(/^(7\/8|15\/16|13\/16)"$/)
    expect(loose.evidence[0]?.remarks?.join(' ')).toMatch(remark)
  })

  it('FULL and BARE of a graduation share between them what is rounded to it', () => {
    const [full, bare] = [row([printed('7/8" FULL')]), row([printed('7/8" BARE')])]
    const reach = ({ value, u }: typeof full) => [
      Number(value) - u * Math.sqrt(3),
      Number(value) + u * Math.sqrt(3),
    ]
    expect(reach(bare)[0]).toBeCloseTo(7 / 8 - 1 / 32, 9)
    expect(reach(bare)[1]).toBeCloseTo(7 / 8, 9)
    expect(reach(full)[0]).toBeCloseTo(7 / 8, 9)
    expect(reach(full)[1]).toBeCloseTo(7 / 8 + 1 / 32, 9)
  })

  it('one that is hard to read keeps its doubt once it is chosen, and what else it could be', () => {
    const doubtful = (more: object) =>
      rowOf(
        smallJob({
          dimensions: [
            dimension('drum', [printed('10 1/8"', 'p', { legibility: 'doubtful', ...more })], { adopt: 'p' }),
          ],
        }),
        'drum',
      )
    const plain = doubtful({})
    expect(plain).toMatchObject({ value: 10.125, basis: 'printed', written: '10.125"', near: '10 1/8"' })
    expect(plain.u).toBeCloseTo(within(1 / 32), 9)
    expect(plain.why).toContain('hard to read')
    const candidates = [
      { text: '10 1/8"', probability: 0.8 },
      { text: '10 7/8"', probability: 0.2 },
      { text: 'illegible', probability: 0.1 },
    ]
    expect(doubtful({ candidates }).u).toBeCloseTo(Math.hypot(within(1 / 32), 0.75 * Math.sqrt(0.2)), 9)
    // A clear one is what it says.
    expect(row([printed('10 1/8"')])).toMatchObject({ value: 10.125, u: 0 })
  })
})

describe('the last graduation of a figure in inches', () => {
  const u = (texts: string[]) =>
    rowOf(smallJob({ dimensions: texts.map((text, i) => dimension(`d${i}`, [printed(text)])) }), 'd0')
      .evidence[0]?.u
  it.each([
    [['22"'], 1 / 32],
    [[`2'`], 1 / 32],
    [['22 1/2"'], 1 / 32],
    [['22"', '7 1/4"', '3 1/2"'], 1 / 32],
    [['22"', '7 3/16"'], 1 / 32],
    [['22"', '7 3/32"'], 1 / 64],
    [['22 1/3"'], 1 / 6],
    [['22 1/10"'], 1 / 20],
    [['22.0"'], 1 / 20],
  ])('of the first of %j is ± %d', (texts, halfWidth) => {
    expect(u(texts)).toBeCloseTo(within(halfWidth), 9)
  })
})

describe('what tolerance a figure has', () => {
  const stated = { tolerance: '1/4' } as const
  it('is the general one, but none for a reference dimension', () => {
    expect(row([printed('10"')], stated).evidence[0]?.u).toBeCloseTo(within(1 / 4), 9)
    for (const text of ['(10")', '10" REF.']) {
      const read = row([printed(text)], stated)
      expect(read.evidence[0]?.u).toBeCloseTo(within(1 / 32), 9)
      expect(read.tolerance).toBeUndefined()
      expect(read.evidence[0]?.remarks).toEqual([expect.stringContaining('no tolerance applies')])
    }
  })

  it('is that of its fit, on the side on which it lies', () => {
    const fitted = row([printed('30g6')], { unit: 'mm' })
    expect(fitted).toMatchObject({ value: 30, tolerance: 'g6, −0.007/−0.02 mm', u: 0 })
    expect(fitted.evidence[0]?.u).toBeCloseTo(within(0.0065), 9)
    const two = row([printed('30H7/g6')], { unit: 'mm' })
    expect(two.evidence[0]?.remarks?.[0]).toMatch(/which of the two/)
  })

  it('is shown as it is stated where its limits are not known, and no general one in its place', () => {
    expect(row([printed('20 k6')], { unit: 'mm', tolerance: '1' })).toMatchObject({
      value: 20,
      tolerance: 'k6',
    })
  })

  it('is that of its angle', () => {
    const angled = rowOf(
      smallJob({ dimensions: [dimension('rake', [printed("4° 30' ± 15'")], { kind: 'angle' })] }),
      'rake',
    )
    expect(angled).toMatchObject({ value: 4.5, tolerance: "±0° 15'" })
    expect(angled.evidence[0]?.u).toBeCloseTo(within(0.25), 9)
  })

  it('between two limits is half their difference about their middle', () => {
    const read = row([printed('4.252/4.248')])
    expect(read.value).toBeCloseTo(4.25, 12)
    expect(read.evidence[0]?.u).toBeCloseTo(within(0.002), 9)
  })

  it('is never nothing', () => {
    const plain = job([printed('10"')])
    for (const tolerance of ['0', '±0', '+0 −0', '0"']) {
      expect(() => applyEdit(plain, { do: 'describe', set: { tolerance } })).toThrow(/without any tolerance/)
    }
    // A job that has one opens, says what is wrong, and is mended by an edit.
    const kept = job([printed('10"')], { tolerance: '0' })
    expect(rowOf(kept, 'drum').evidence[0]?.problem).toMatch(/without any tolerance/)
    const mended = applyEdit(kept, { do: 'describe', set: { tolerance: '1/32' } }).job
    expect(rowOf(mended, 'drum')).toMatchObject({ value: 10, tolerance: '±1/32"' })
    expect(row([printed('10" ±0')]).evidence[0]?.problem).toMatch(/without any tolerance/)
  })
})

describe('a figure that is not to scale', () => {
  it('is not held against what is scaled, but against what was found', () => {
    expect(row([printed('12" N.T.S.'), half])).toMatchObject({ basis: 'printed', status: 'single' })
    expect(row([printed('12" N.T.S.'), half, found(['10.00 in'])]).status).toBe('disputed')
    expect(row([printed('12"'), half]).status).toBe('disputed')
  })
})

describe('what is asked about a figure', () => {
  const circle = (measure: 'diameter' | 'radius'): Evidence => ({
    id: 's',
    basis: 'scaled',
    view: 'V1',
    measure,
    marks: ['K'],
  })
  const asked = (evidence: Evidence[], name?: string, more: Partial<Job> = {}) => {
    const marks = [
      round([
        [1000, 2000],
        [2500, 2000],
        [1750, 2750],
      ]),
    ]
    const table = dimensionTable(job(evidence, { marks, ...more }, name))
    const about = table.cautionReasons.flatMap(({ code, parts }) =>
      code === 'caution.of-figure' ? [(parts['question'] as { code: string }).code] : [],
    )
    const remarks = table.rows[0]?.evidence.flatMap(({ remarkReasons = [] }) =>
      remarkReasons.map((r) => r.code),
    )
    expect(remarks).toEqual(expect.arrayContaining(about))
    return about
  }

  it.each<[string, Evidence[], string | undefined, string[]]>([
    [
      'a radius beside a scaled diameter',
      [printed('R 5"'), circle('diameter')],
      undefined,
      ['radius-for-diameter'],
    ],
    [
      'a diameter beside a scaled radius',
      [printed('Ø 10"'), circle('radius')],
      undefined,
      ['diameter-for-radius'],
    ],
    [
      'a radius beside a printed diameter',
      [printed('R 5"'), printed('Ø 10"', 'q')],
      undefined,
      ['radius-for-diameter', 'diameter-for-radius'],
    ],
    ['a radius alone, where the name says diameter', [printed('R 5"')], 'drum_od', ['radius-for-diameter']],
    [
      'a diameter alone, where the name says radius',
      [printed('Ø 10"')],
      'bend_radius',
      ['diameter-for-radius'],
    ],
    ['a radius alone, where nothing says more', [printed('R 5"')], undefined, []],
    ['a radius beside a scaled radius', [printed('R 5"'), circle('radius')], undefined, []],
    ['a fraction of no rule', [printed('5/12"')], undefined, ['fraction-of-no-rule']],
    ['a third', [printed('1/3"')], undefined, ['fraction-of-no-rule']],
    ['a tenth', [printed('2 1/10"')], undefined, []],
    ['a hundred and twenty-eighth', [printed('3/128"')], undefined, []],
    ['a section or a count', [printed('4 x 9/16')], undefined, ['count-or-section']],
    ['a figure not to scale', [printed('12" N.T.S.'), half], undefined, ['not-to-scale']],
  ])('%s', (_, evidence, name, codes) => {
    expect(asked(evidence, name)).toEqual(codes.map((code) => `question.${code}`))
  })

  it.each([
    ['a bare fraction on a metric sheet', '5/8 BOLTS', ['fraction-of-a-millimetre']],
    ['one with its unit', '5/8" BOLTS', []],
    ['a thread of inches', '5/8 WHIT. BOLTS', []],
    ['three places after a point', '1.250', ['thousands']],
    ['the same below one', '0.250', []],
    ['the same after a comma', '12,750 mm', []],
    ['two places', '1.25', []],
    ['a fit that is not in the table', '20 k6', ['fit-not-in-table']],
  ])('on a metric sheet: %s', (_, text, codes) => {
    expect(asked([printed(text)], undefined, { unit: 'mm' })).toEqual(codes.map((code) => `question.${code}`))
  })

  it('asks where a figure and its dimension count otherwise', () => {
    const counted = (count?: number) =>
      dimensionTable(
        smallJob({ dimensions: [dimension('bolt', [printed('8 – 5/8 BOLTS')], count ? { count } : {})] }),
      ).rows[0]?.evidence[0]?.remarkReasons?.map(({ code }) => code)
    expect(counted(6)).toEqual(['question.count-differs'])
    expect(counted(8)).toBeUndefined()
    // Nothing said is one of them.
    expect(counted()).toEqual(['question.count-differs'])
  })

  it('asks of withdrawn figures nothing', () => {
    expect(asked([printed('1/3"', 'p', { withdrawn: 'misread' })])).toEqual([])
  })

  it('asks once for the job which table its gauges are of, and says in each row which was taken', () => {
    const gauges = (gauge?: Job['gauge']) =>
      dimensionTable(
        smallJob({
          ...(gauge && { gauge }),
          dimensions: [dimension('a', [printed('No. 16 GA')]), dimension('b', [printed('No. 18 GA')])],
        }),
      )
    const unsaid = gauges()
    expect(unsaid.cautionReasons.filter(({ code }) => code === 'caution.gauge-unsaid')).toHaveLength(1)
    expect(unsaid.cautions.join(' ')).toContain('those of a and b were read by the US Standard Gauge of 1893')
    for (const { evidence } of unsaid.rows)
      expect(evidence[0]?.remarks?.[0]).toContain('which gauge is meant')
    const said = gauges('imperial-1884')
    expect(said.cautionReasons.some(({ code }) => code === 'caution.gauge-unsaid')).toBe(false)
    expect(said.rows[0]?.evidence[0]?.remarks).toBeUndefined()
    expect(said.rows[0]?.value).toBeCloseTo(0.064, 12)
  })
})

describe('a figured size is written as figures are', () => {
  const scale = (size: string, kind: 'distance' | 'diameter' = 'distance') => {
    const references = [
      { id: 'R1', kind, marks: kind === 'distance' ? ['A', 'B'] : ['K'], size },
    ] as unknown as Reference[]
    const marks = [
      round([
        [100, 2000],
        [3100, 2000],
        [1600, 3500],
      ]),
    ]
    return rowOf(smallJob({ references, marks, dimensions: [dimension('drum', [half])] }), 'drum').value
  }
  it.each<[string, 'distance' | 'diameter']>([
    ['20" DIA.', 'diameter'],
    ['Ø 20', 'diameter'],
    ['20" O.D.', 'distance'],
    ['20 C.C.', 'distance'],
    ['R 20"', 'distance'],
    [`1'-8" OVER ALL`, 'distance'],
    ['20', 'diameter'],
  ])('%s of a %s', (size, kind) => {
    expect(scale(size, kind)).toBeCloseTo(10, 6)
  })

  it.each<[string, 'distance' | 'diameter', RegExp]>([
    ['R 10"', 'diameter', /A radius is written, and the figured size is a diameter/],
    ['20" MAX.', 'distance', /no exact size/],
    ['ABT. 20"', 'distance', /no exact size/],
    ['20" N.T.S.', 'distance', /gives no scale/],
    ['45°', 'distance', /is a length/],
    ['6 HOLES', 'distance', /is a length/],
  ])('%s of a %s is refused', (size, kind, why) => {
    expect(() => scale(size, kind)).toThrow(why)
  })
})
