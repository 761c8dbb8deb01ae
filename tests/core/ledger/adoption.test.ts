import { describe, expect, it } from 'vitest'
import { pixel } from '../../../src/core/geometry/frames.ts'
import { dimensionTable } from '../../../src/core/ledger/table/dimension-table.ts'
import { derived, dimension, found, point, printed, rowOf, scaled, smallJob } from './small-job.ts'

const half = ['A', 'C'] // 10 in on the sheet

describe('which value a dimension takes', () => {
  it('gives a clear printed figure over everything else, as an exact figure', () => {
    const row = rowOf(
      smallJob({ dimensions: [dimension('drum', [scaled(half), found(['10.01 in']), printed('10"')])] }),
      'drum',
    )
    expect(row).toMatchObject({ value: 10, written: '10"', u: 0, U: 0, basis: 'printed', status: 'agreed' })
    expect(row.budget).toEqual([])
  })

  it('takes a worked-out value before a scaled one, and a scaled one before a found one', () => {
    const neck = dimension('neck', [printed('4"')])
    const rim = dimension('rim', [printed('6"')])
    const all = [scaled(half), found(['10.01 in'])]
    const job = smallJob({
      dimensions: [neck, rim, dimension('sum', [...all, derived('neck + rim')]), dimension('drum', all)],
    })
    expect(rowOf(job, 'sum')).toMatchObject({ basis: 'derived', value: 10, status: 'agreed' })
    expect(rowOf(job, 'drum')).toMatchObject({ basis: 'scaled', status: 'agreed' })
    expect(rowOf(smallJob({ dimensions: [dimension('drum', [found(['10.01 in'])])] }), 'drum').basis).toBe(
      'found',
    )
  })

  it('takes the mean of several scaled values, weighted and with what they share', () => {
    const marks = [point('D', pixel(100, 500)), point('E', pixel(1601.5, 500))]
    const row = rowOf(
      smallJob({ marks, dimensions: [dimension('drum', [scaled(half), scaled(['D', 'E'], 't')])] }),
      'drum',
    )
    expect(row.basis).toBe('scaled')
    // Mark A serves the reference too, which takes half of its picking error off the first value.
    const [first, second] = row.evidence
    expect(first?.u).toBeLessThan(second?.u ?? 0)
    expect(row.value).toBeGreaterThan(10)
    expect(row.value).toBeLessThan((10 + 10.01) / 2)
    expect(row.u).toBeLessThan(Math.min(first?.u ?? 0, second?.u ?? 0))
  })

  it('follows an explicit choice, of a rule or of one piece of evidence', () => {
    const evidence = [printed('10"'), scaled(half), found(['10.02 in'])]
    expect(
      rowOf(smallJob({ dimensions: [dimension('drum', evidence, { adopt: 'found' })] }), 'drum'),
    ).toMatchObject({
      basis: 'found',
      value: 10.02,
    })
    expect(rowOf(smallJob({ dimensions: [dimension('drum', evidence, { adopt: 's' })] }), 'drum').basis).toBe(
      'scaled',
    )
    // Nearly alike, for what differs makes a mean as uncertain as it is scattered.
    const alike = [printed('10"'), scaled(half), found(['10.00 in'])]
    const mean = rowOf(smallJob({ dimensions: [dimension('drum', alike, { adopt: 'mean' })] }), 'drum')
    expect(mean.basis).toBe('mean')
    expect(mean.u).toBeLessThan(Math.min(...mean.evidence.map((e) => e.u)))
  })

  it('takes the mean of one figure for what that is compared by, and writes it as no figure', () => {
    const job = smallJob({
      dimensions: [dimension('drum', [printed('14 3/8" +0 −1/64"')], { adopt: 'mean' })],
    })
    const row = rowOf(job, 'drum')
    expect(row).toMatchObject({ basis: 'mean', written: '14.3672"', near: '14 3/8"' })
    expect(row.value).toBeCloseTo(14.375 - 1 / 128, 12)
    expect(row.tolerance).toBeUndefined()
    expect(row.why).toContain('Weighted mean of one piece of evidence')
  })

  it('gives what comes to the same whatever it rests on as exact', () => {
    const job = smallJob({
      dimensions: [
        dimension('a', [found(['10.01 in', '10.02 in'])]),
        dimension('b', [found(['3.3 in', '3.4 in', '3.1 in'])]),
        dimension('c', [printed('7 5/16"')]),
        dimension('same', [derived('a * b * c / (a * b)')]),
      ],
    })
    expect(rowOf(job, 'same')).toMatchObject({ written: '7 5/16"', u: 0, U: 0, figured: true })
  })

  it('is open and says so when the chosen evidence is withdrawn', () => {
    const evidence = [printed('10"'), scaled(half, 's', { withdrawn: 'picked the hidden edge' })]
    const row = rowOf(smallJob({ dimensions: [dimension('drum', evidence, { adopt: 's' })] }), 'drum')
    expect(row).toMatchObject({ value: null, basis: null, status: 'open', written: '' })
    expect(row.why).toContain('Evidence s')
    expect(row.why).toContain('picked the hidden edge')
  })

  it('does not adopt a doubtful figure by itself, but does when a person chooses it', () => {
    const evidence = [printed('12"', 'p', { legibility: 'doubtful' }), scaled(half)]
    const row = rowOf(smallJob({ dimensions: [dimension('drum', evidence)] }), 'drum')
    expect(row).toMatchObject({ basis: 'scaled', status: 'single' })
    expect(row.why).toContain('nothing else is legible')
    const chosen = rowOf(smallJob({ dimensions: [dimension('drum', evidence, { adopt: 'p' })] }), 'drum')
    expect(chosen).toMatchObject({ basis: 'printed', value: 12, status: 'disputed' })
  })

  it('keeps an illegible figure as evidence without a value, and shows where reading stopped', () => {
    const row = rowOf(smallJob({ dimensions: [dimension('drum', [printed('1? 3/8')])] }), 'drum')
    expect(row).toMatchObject({ value: null, status: 'open' })
    expect(row.evidence[0]?.problem).toMatch(/1\? 3\/8/)
  })

  it('names a printed figure that the sheet disputes, and adopts it still', () => {
    const row = rowOf(
      smallJob({ dimensions: [dimension('drum', [printed('10 1/2"'), scaled(half)])] }),
      'drum',
    )
    expect(row).toMatchObject({ value: 10.5, basis: 'printed', status: 'disputed' })
    expect(row.why).toMatch(
      /printed figure governs, but scaled 10\.0+" ± 0\.\d\d+" differs from it by 0\.\d+"; 0\.\d+" would be allowed/,
    )
  })

  it('says of exact counts that differ by how much, and that nothing uncertain is between them', () => {
    const job = smallJob({
      dimensions: [dimension('holes', [printed('4'), printed('6 HOLES', 'q')], { kind: 'count' })],
    })
    const { why, status } = rowOf(job, 'holes')
    expect(status).toBe('disputed')
    expect(why).toBe('The printed figure 4 governs, but printed 6 differs from it by 2.')
  })

  it('of two printed figures adopts the one that the rest supports', () => {
    const row = rowOf(
      smallJob({ dimensions: [dimension('drum', [printed('10 1/2"'), printed('10"', 'q'), scaled(half)])] }),
      'drum',
    )
    expect(row).toMatchObject({ value: 10, status: 'disputed' })
  })
})

describe('what a printed figure is compared by', () => {
  const u = (texts: string[], more: object = {}) =>
    rowOf(smallJob({ dimensions: texts.map((t, i) => dimension(`d${i}`, [printed(t)], more)) }), 'd0')
      .evidence[0]?.u

  it('is half the last graduation, rectangular: sixteenths as ± 1/32', () => {
    expect(u(['10 3/16"'])).toBeCloseTo(1 / 32 / Math.sqrt(3), 12)
    expect(u(['10.25"'])).toBeCloseTo(0.005 / Math.sqrt(3), 12)
    expect(u(['365.1 mm'])).toBeCloseTo(0.05 / 25.4 / Math.sqrt(3), 12)
  })

  it('is that of the finest fraction in use, since fractions are written reduced', () => {
    expect(u(['10"', '2 3/16"'])).toBeCloseTo(1 / 32 / Math.sqrt(3), 12)
  })

  it('is the tolerance when one is stated with the figure, the dimension or the sheet', () => {
    expect(u(['10" ±1/16'])).toBeCloseTo(1 / 16 / Math.sqrt(3), 12)
    expect(u(['10"'], { tolerance: '±1/8' })).toBeCloseTo(1 / 8 / Math.sqrt(3), 12)
    const job = smallJob({ tolerance: '±1/32', dimensions: [dimension('d0', [printed('10"')])] })
    expect(rowOf(job, 'd0').evidence[0]?.u).toBeCloseTo(1 / 32 / Math.sqrt(3), 12)
    expect(rowOf(job, 'd0').tolerance).toBe('±1/32"')
  })
})

describe('what was found on the original', () => {
  const caliper = { id: 'I1', name: 'Caliper', resolution: '0.001 in', limit: '0.002 in' }

  it('takes the scatter of readings as Type A, with resolution and limit of error as rectangular', () => {
    const row = rowOf(
      smallJob({
        instruments: [caliper],
        dimensions: [
          dimension('bore', [found(['1.010 in', '1.014 in', '1.012 in'], 'f', { instrument: 'I1' })]),
        ],
      }),
      'bore',
    )
    // Nothing but three readings tells of the scatter: five quarters of the limit count as one further square.
    const typeA = Math.hypot(0.002, 0.0025 / Math.sqrt(2)) / Math.sqrt(3)
    const typeB = Math.hypot(0.001 / Math.sqrt(12), 0.002 / Math.sqrt(3))
    expect(row.value).toBeCloseTo(1.012, 12)
    expect(row.u).toBeCloseTo(Math.hypot(typeA, typeB), 12)
    // Welch–Satterthwaite: only the Type A part is limited, to 2 degrees of freedom.
    expect(row.dof).toBeCloseTo((2 * row.u ** 4) / typeA ** 4, 9)
  })

  it('adds back what wear has taken, with its uncertainty', () => {
    const row = rowOf(
      smallJob({
        dimensions: [
          dimension('wall', [found(['0.24 in'], 'f', { worn: { loss: '0.01 in', u: '0.004 in' } })]),
        ],
      }),
      'wall',
    )
    expect(row.value).toBeCloseTo(0.25, 12)
    // Rounded, and by an instrument that nobody named: off by a tenth of a millimetre, and scattering by five quarters of it.
    const limit = 0.1 / 25.4
    const byHand = Math.hypot(0.01 / Math.sqrt(12), limit / Math.sqrt(3), 1.25 * limit)
    expect(row.u).toBeCloseTo(Math.hypot(0.004, byHand), 12)
  })

  it('shares an instrument’s limit of error between dimensions, so that it goes from their ratio', () => {
    const job = smallJob({
      instruments: [{ ...caliper, resolution: '0.000001 in' }],
      dimensions: [
        dimension('a', [found(['1.000 in'], 'f', { instrument: 'I1' })]),
        dimension('b', [found(['1.000 in'], 'f', { instrument: 'I1' })]),
        dimension('ratio', [derived('a / b')], { kind: 'count' }),
      ],
    })
    // What is left of each is how one reading scatters, five quarters of the limit.
    expect(rowOf(job, 'a').u).toBeCloseTo(Math.hypot(0.0025, 0.002 / Math.sqrt(3)), 8)
    expect(rowOf(job, 'ratio').u).toBeCloseTo(0.0025 * Math.SQRT2, 8)
  })
})

describe('relations', () => {
  const dims = (overall: string) => [
    dimension('overall', [printed(overall)]),
    dimension('neck', [printed('4 1/16"')]),
    dimension('drum', [printed('6"')]),
  ]
  const relations = [{ id: 'L1', text: 'overall = neck + drum' }]

  it('hold when the figures add up within their graduations', async () => {
    const [closed] = dimensionTable(smallJob({ dimensions: dims('10 1/16"'), relations })).relations
    expect(closed).toMatchObject({ misclosure: 0, w: 0, holds: true })
    expect(closed?.u).toBeCloseTo((Math.sqrt(3) * (1 / 32)) / Math.sqrt(3), 12)
    const [open] = dimensionTable(smallJob({ dimensions: dims('10 3/16"'), relations })).relations
    expect(open?.misclosure).toBeCloseTo(1 / 8, 12)
    expect(open?.w).toBeCloseTo(4, 9)
    expect(open?.holds).toBe(false)
  })

  it('are not said to hold when something in them has no value', async () => {
    const dimensions = [...dims('10"').slice(0, 2), dimension('drum', [])]
    const [row] = dimensionTable(smallJob({ dimensions, relations })).relations
    expect(row?.holds).toBe(false)
    expect(row?.problem).toContain('drum')
  })
})

describe('the table as a whole', () => {
  it('never holds a number that JSON can’t', async () => {
    const job = smallJob({
      dimensions: [
        dimension('a', [printed('1"'), printed('2"', 'q', { withdrawn: 'copied twice' })]),
        dimension('b', [printed('1"'), derived('a * 3')]),
        dimension('c', [derived('1 in / 0')]),
        dimension('d', [], { kind: 'area' }),
      ],
    })
    const table = dimensionTable(job)
    expect(JSON.parse(JSON.stringify(table))).toEqual(table)
    expect(rowOf(job, 'c')).toMatchObject({ value: null, status: 'open' })
  })

  it('carries the standing cautions', async () => {
    expect(dimensionTable(smallJob()).cautions.join(' ')).toMatch(/estimates.*qualified people.*asbestos/)
  })
})

describe('a line picked worse than it claims', () => {
  it('is named in the cautions, and one picked well is not', async () => {
    const line = (id: string, off: number[]) =>
      point(id, pixel(0, 0), { kind: 'line', pixels: off.map((y, i) => [100 + 200 * i, 700 + y]) } as never)
    const spacing = (a: string) => scaled([a, 'A'], 's', { measure: 'spacing' })
    const cautions = dimensionTable(
      smallJob({
        marks: [line('good', [0.5, -0.5, 0.4, -0.2]), line('bad', [9, -8, 7, -9])],
        dimensions: [dimension('a', [spacing('good')]), dimension('b', [spacing('bad')])],
      }),
    ).cautions.filter((c) => c.startsWith('Mark'))
    expect(cautions).toHaveLength(1)
    expect(cautions[0]).toMatch(/Mark bad: its picks scatter by \d+\.\d px/)
  })
})

describe('what a person must be told', () => {
  it('is that a printed figure can’t be read, when another value is taken for it', () => {
    const row = rowOf(smallJob({ dimensions: [dimension('drum', [printed('8 38'), scaled(half)])] }), 'drum')
    expect(row).toMatchObject({ basis: 'scaled', status: 'single' })
    expect(row.why).toContain('The printed figure "8 38" can\'t be read and was not counted.')
  })

  it('is that a worked-out value rests on a disputed one, however far down', () => {
    const disputed = dimension('neck', [printed('10 1/2"'), scaled(half)])
    const job = smallJob({
      dimensions: [
        disputed,
        dimension('twice', [derived('2 * neck')]),
        dimension('more', [derived('twice + 1 in')]),
      ],
    })
    expect(rowOf(job, 'more').restsOn).toEqual(['neck'])
    expect(rowOf(job, 'more').why).toContain('It rests on neck, which is disputed.')
  })

  it('is whether the relations it stands in close', () => {
    const dimensions = [
      dimension('a', [printed('3"')]),
      dimension('b', [printed('3 1/4"')]),
      dimension('c', [printed('3"')]),
    ]
    const relations = [
      { id: 'L1', text: 'a = b' },
      { id: 'L2', text: 'a = c' },
    ]
    const job = smallJob({ dimensions, relations })
    expect(rowOf(job, 'b').why).toContain('Part of the relation L1, which is out by 1/4".')
    expect(rowOf(job, 'c').why).toContain('The relation L2 holds.')
  })

  it('is that evidence agrees only because it is too uncertain to disagree', () => {
    const marks = [
      point('D', pixel(100, 500), { repeats: [[400, 500]] } as never),
      point('E', pixel(1600, 500), { repeats: [[1900, 500]] } as never),
    ]
    const row = rowOf(
      smallJob({ marks, dimensions: [dimension('drum', [printed('12"'), scaled(['D', 'E'])])] }),
      'drum',
    )
    expect(row.status).toBe('single')
    expect(row.why).toMatch(
      /; no other evidence says enough to check it\. The scaled value .* is too uncertain/,
    )
  })

  it('does not take for evidence the very size that the scale of the view was taken from', () => {
    const job = smallJob({ dimensions: [dimension('overall', [printed('20"'), scaled(['A', 'B'])])] })
    const row = rowOf(job, 'overall')
    expect(row).toMatchObject({ basis: 'printed', status: 'single' })
    expect(row.evidence[1]?.problem).toMatch(
      /a size that the scale of view "Elevation" \(V1\) was taken from/,
    )
    const alone = rowOf(smallJob({ dimensions: [dimension('overall', [scaled(['A', 'B'])])] }), 'overall')
    expect(alone).toMatchObject({ value: null, status: 'open' })
  })
})

describe('the cautions of a job', () => {
  const cautionsOf = async (job: Parameters<typeof rowOf>[0]) => {
    return dimensionTable(job).cautions.join('\n')
  }

  it('name repeats that scatter beyond their sigma, marks off the page and readings that look like a slip', async () => {
    const marks = [
      point('D', pixel(100, 500), { repeats: [[400, 500]] } as never),
      point('E', pixel(99_999, 500)),
      point('F', pixel(1600, 900)),
    ]
    const dimensions = [
      dimension('a', [scaled(['D', 'F'])]),
      dimension('b', [scaled(['E', 'F'])]),
      dimension('c', [found(['7.48 in', '74.9 in'])]),
    ]
    const cautions = await cautionsOf(smallJob({ marks, dimensions }))
    expect(cautions).toMatch(/Mark D: its picks scatter by 150\.0 px/)
    expect(cautions).toMatch(/Mark E lies off its page of 5000 × 4000 pixels/)
    expect(cautions).toMatch(/Dimension c, evidence f: its readings run from 7\.48 in to 74\.9 in/)
  })

  it('name a drawn scale that the dpi contradicts, and then take the larger draughting error', async () => {
    const withScale = (drawnScale: number) => {
      const job = smallJob({
        marks: [point('G', pixel(500, 900))],
        dimensions: [dimension('a', [scaled(['G', 'C'])])],
      })
      const sheets = job.sheets.map((s) => ({ ...s, draughting: '0.13 mm' }))
      return { ...job, sheets, views: job.views.map((v) => ({ ...v, drawnScale })) }
    }
    expect(await cautionsOf(withScale(0.5))).not.toMatch(/drawn to/)
    expect(await cautionsOf(withScale(2))).toMatch(/said to be drawn to 2, but by the scan's dpi it is 0\.50/)
    expect(rowOf(withScale(2), 'a').u).toBeCloseTo(rowOf(withScale(0.5), 'a').u, 12)
  })
})

describe('several sets of readings on the original', () => {
  it('share one estimate of their scatter, so that a lucky pair does not outweigh the rest', () => {
    const evidence = [found(['1.00 in', '1.04 in'], 'f1'), found(['1.01 in', '1.01 in'], 'f2')]
    const row = rowOf(smallJob({ dimensions: [dimension('bore', evidence)] }), 'bore')
    expect(row.value).toBeCloseTo((1.02 + 1.01) / 2, 9)
    // Pooled with 2 degrees of freedom, and one further square of what is guessed for an unnamed instrument.
    const limit = 0.1 / 25.4
    const variance = (0.0008 + (1.25 * limit) ** 2) / 2
    const u = Math.hypot(Math.sqrt(variance / 2), 0.01 / Math.sqrt(12), limit / Math.sqrt(3))
    expect(row.evidence[1]?.u).toBeCloseTo(u, 9)
  })
})

describe('relations at their edge', () => {
  const rowsOf = async (relations: { id: string; text: string; u?: string }[]) => {
    const dimensions = [
      dimension('a', [printed('10"')]),
      dimension('b', [printed('10"')]),
      dimension('p', [printed('50°')], { kind: 'angle' }),
      dimension('q', [printed('60°')], { kind: 'angle' }),
    ]
    return dimensionTable(smallJob({ dimensions, relations })).relations
  }

  it('say that they have no value rather than give one that is not finite', async () => {
    const [row] = await rowsOf([{ id: 'L1', text: 'a = sqrt(a^2 - b^2)' }])
    expect(row).toMatchObject({ holds: false, misclosure: 0, u: 0 })
    expect(row?.problem).toContain('no value')
  })

  it('take what they may miss by in their own kind', async () => {
    const [angle, length] = await rowsOf([
      { id: 'L1', text: 'p = q', u: '1°' },
      { id: 'L2', text: 'a = b', u: '1°' },
    ])
    expect(angle?.holds).toBe(false)
    expect(angle?.misclosure).toBeCloseTo(-10, 9)
    expect(length?.problem).toContain('not of its kind')
  })
})
