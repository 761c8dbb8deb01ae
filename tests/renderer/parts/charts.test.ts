import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { dimensionTable } from '../../../src/core/ledger/table/dimension-table.ts'
import { agreementPoints } from '../../../src/renderer/parts/agreement-points.ts'
import { agreementWords } from '../../../src/renderer/parts/agreement-words.ts'
import { budgetSegments, percentage } from '../../../src/renderer/parts/budget-segments.ts'
import { sampleJob, sampleRow, sampleTable } from '../sample-job.ts'

describe('an uncertainty budget as a bar', () => {
  const parts = (...shares: number[]) => shares.map((share, i) => ({ source: `source ${i}`, share }))

  it('has its largest share first, and each part its own hatch', () => {
    expect(budgetSegments(parts(0.2, 0.5, 0.3)).map(({ share, hatch }) => [share, hatch])).toEqual([
      [0.5, 0],
      [0.3, 1],
      [0.2, 2],
    ])
  })

  it('has six parts at most, and says of how many the last is the sum', () => {
    expect(budgetSegments(parts(0.5, 0.1, 0.1, 0.1, 0.1, 0.1))).toHaveLength(6)
    const many = budgetSegments(parts(0.3, 0.1, 0.1, 0.1, 0.1, 0.1, 0.1, 0.1))
    expect(many).toHaveLength(6)
    expect(many.at(-1)?.source).toBe('others (3)')
    expect(many.at(-1)?.share).toBeCloseTo(0.3, 12)
  })

  it('never loses a share', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { maxLength: 40 }), (shares) => {
        const sum = (of: readonly { share: number }[]) => of.reduce((total, { share }) => total + share, 0)
        expect(sum(budgetSegments(parts(...shares)))).toBeCloseTo(sum(parts(...shares)), 9)
      }),
    )
    expect(
      budgetSegments(sampleRow('hood_od').budget).reduce((sum, { share }) => sum + share, 0),
    ).toBeCloseTo(1, 9)
  })

  it('does not call nothing what is little', () => {
    expect([percentage(0.284), percentage(0.002), percentage(0)]).toEqual(['28 %', 'under 1 %', '0 %'])
  })
})

describe('scaled against printed values', () => {
  const points = agreementPoints(sampleTable, sampleJob)

  it('has every length that is both printed and scaled, smallest first, and no other', () => {
    const names = points.map(({ name }) => name)
    expect(names).toContain('neck_height')
    expect(names).not.toContain('hood_od')
    expect(names).not.toContain('lever_angle')
    expect(names).not.toContain('neck_od')
    expect(points.map(({ printed }) => printed)).toEqual(
      points.map(({ printed }) => printed).toSorted((a, b) => a - b),
    )
  })

  it('gives what the scaled value is off by, with its 95 % and what the figure may be off by', () => {
    const point = points.find(({ name }) => name === 'neck_height')
    const row = sampleRow('neck_height')
    const [printed, scaled] = row.evidence
    expect(point?.deviation).toBeCloseTo(Number(scaled?.value) - 3.625, 12)
    // 1.96: the normal quantile at 95 %, JCGM 100:2008, table G.1.
    expect(Number(point?.U) / Number(scaled?.u)).toBeCloseTo(1.96, 3)
    // Half of the last graduation is the standard uncertainty times the square root of three: JCGM 100:2008, 4.3.7.
    expect(point?.limit).toBeCloseTo(Number(printed?.u) * 3 ** 0.5, 12)
    expect(point?.disputed).toBe(true)
    expect(points.filter(({ disputed }) => disputed).map(({ name }) => name)).toEqual(['neck_height'])
  })

  it('keeps to one view when asked', () => {
    const inPlan = agreementPoints(sampleTable, sampleJob, 'foot-plan').map(({ name }) => name)
    expect(inPlan).toContain('drum_od')
    expect(inPlan).not.toContain('neck_height')
    expect(agreementPoints(sampleTable, sampleJob, 'no such view')).toEqual([])
  })

  it('is in the unit of the table', () => {
    const metric = agreementPoints(dimensionTable(sampleJob, { unit: 'mm' }), sampleJob)
    metric.forEach((point, i) => {
      expect(point.deviation).toBeCloseTo(Number(points[i]?.deviation) * 25.4, 9)
    })
  })

  it('says in words what it shows', () => {
    const point = points.find(({ name }) => name === 'neck_height')
    if (point === undefined) throw new Error('no point')
    expect(agreementWords(point, 'in')).toMatch(
      /^neck_height: scaled 0\.51" below printed, ± 0\.0\d+"; disputed$/,
    )
    expect(agreementWords({ ...point, deviation: 0, disputed: false }, 'mm')).toMatch(
      /scaled as printed.* mm; agrees$/,
    )
  })
})
