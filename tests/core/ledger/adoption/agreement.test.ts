import { describe, expect, it } from 'vitest'
import { pixel } from '../../../../src/core/geometry/frames.ts'
import type { Evidence } from '../../../../src/core/job/model/types.ts'
import { concordanceOf, detectableError } from '../../../../src/core/ledger/adoption/agreement.ts'
import type { EvaluatedEvidence } from '../../../../src/core/ledger/evidence/evaluated-evidence.ts'
import { dimensionTable } from '../../../../src/core/ledger/table/dimension-table.ts'
import { expand } from '../../../../src/core/uncertainty/coverage.ts'
import { jointTest } from '../../../../src/core/uncertainty/joint-test.ts'
import { detectedNoncentrality } from '../../../../src/core/uncertainty/noncentrality.ts'
import { normalisedError } from '../../../../src/core/uncertainty/normalised-error.ts'
import { randomStream } from '../../../../src/core/uncertainty/random.ts'
import { KNOWN, newSource, type Source } from '../../../../src/core/uncertainty/source.ts'
import { fromTerms, measured, type Uncertain } from '../../../../src/core/uncertainty/uncertain.ts'
import { derived, dimension, point, printed, scaled, smallJob } from '../small-job.ts'

const piece = (compared: Uncertain, i = 0): EvaluatedEvidence =>
  ({
    evidence: { id: `s${i}`, basis: 'found', readings: [] } as Evidence,
    adopted: compared,
    compared,
    coverage: expand(compared),
    written: '',
    usable: true,
  }) as EvaluatedEvidence

/** As the table pairs them. */
const stand = (pieces: readonly EvaluatedEvidence[]) => {
  const pairs = pieces.flatMap((a, i) =>
    pieces.slice(i + 1).map((b) => ({
      a,
      b,
      en: normalisedError(a.compared as Uncertain, b.compared as Uncertain),
    })),
  )
  return concordanceOf(pieces, pairs)
}

describe('the joint test of values of one quantity', () => {
  it('is the square of the difference in its variance where there are two', () => {
    const { chi2, dof } = jointTest([measured(10, 0.3, 'a', KNOWN), measured(11, 0.4, 'b', KNOWN)])
    expect(chi2).toBeCloseTo(1 / 0.25, 12)
    expect(dof).toBe(1)
  })

  it('is the sum of squares about the weighted mean where nothing is shared', () => {
    const values = [10, 10.4, 9.7, 10.1]
    const u = [0.1, 0.2, 0.3, 0.15]
    const w = u.map((x) => 1 / x ** 2)
    const mean = values.reduce((s, x, i) => s + x * (w[i] as number), 0) / w.reduce((s, x) => s + x, 0)
    const expected = values.reduce((s, x, i) => s + (w[i] as number) * (x - mean) ** 2, 0)
    const { chi2, dof } = jointTest(values.map((x, i) => measured(x, u[i] as number, `${i}`, KNOWN)))
    expect(chi2).toBeCloseTo(expected, 9)
    expect(dof).toBe(3)
  })

  it('does not count what they share, and finds how many differences there are', () => {
    const common = newSource('common', KNOWN)
    const own = [0, 1].map((i) => newSource(`${i}`, KNOWN))
    const of = (value: number, sources: Source[], terms: number[]) => fromTerms(value, sources, terms)
    const a = of(10, [common, own[0] as Source], [5, 0.1])
    const b = of(10.2, [common, own[1] as Source], [5, 0.1])
    const middle = of(10.1, [common, own[0] as Source, own[1] as Source], [5, 0.05, 0.05])
    expect(jointTest([a, b]).chi2).toBeCloseTo(0.04 / 0.02, 9)
    const three = jointTest([a, b, middle])
    expect(three).toMatchObject({ dof: 1 })
    expect(three.chi2).toBeCloseTo(2, 6)
    expect(jointTest([a, b, { ...middle, value: 10.11 }]).p).toBe(0)
  })
})

// Roots of ncx2.cdf(chi2.ppf(0.95, dof), dof, x) = 0.05 by SciPy 1.x; the first is (1.960 + 1.645)².
it.each([
  [1, 12.9947],
  [2, 15.4432],
  [3, 17.1699],
  [10, 24.3855],
])('with %d degrees of freedom %d is found 19 times in 20', (dof, expected) => {
  expect(detectedNoncentrality(dof)).toBeCloseTo(expected, 3)
})

describe('how evidence agrees', () => {
  const random = randomStream(20261130)
  const TRIALS = Number(process.env['TRIALS'] ?? 400)
  /** Values of 100 with what each is off by, some sharing an error of the same size, as a view's scale is shared. */
  const drawn = (n: number, wrong: number): EvaluatedEvidence[] => {
    const common = newSource('common', KNOWN)
    const shared = random.normal()
    return Array.from({ length: n }, (_, i) => {
      const u = 0.05 + 0.1 * ((i * 7) % 5)
      const share = i % 2 === 0 ? 0.2 : 0
      const value = 100 + u * random.normal() + share * shared
      const sources = [common, newSource(`own ${i}`, KNOWN)]
      const x = fromTerms(value, sources, [share, u])
      return piece(i === 1 ? { ...x, value: value + wrong * expand(x).U } : x, i)
    })
  }

  it.each([2, 3, 4, 6, 10, 20])(
    'of %d pieces that agree at most 6 percent are called disputed, and one wrong by 3 U is found',
    (n) => {
      // Those that don't agree are parted one by one, which takes its time with many.
      const trials = n > 6 ? TRIALS / 4 : TRIALS
      const disputed = (wrong: number): number =>
        Array.from({ length: trials }, () => stand(drawn(n, wrong))).filter(
          ({ status }) => status === 'disputed',
        ).length / trials
      const [falsely, rightly] = [disputed(0), disputed(3)]
      console.info(
        `${n} pieces: ${(100 * falsely).toFixed(1)} % falsely disputed, ${(100 * rightly).toFixed(1)} % found`,
      )
      // Three standard deviations of a binomial of 5 % in as many trials.
      expect(falsely).toBeLessThanOrEqual(0.05 + 3 * Math.sqrt((0.05 * 0.95) / trials))
      expect(rightly).toBeGreaterThanOrEqual(0.9)
    },
  )

  it('names the piece that is wrong', () => {
    let named = 0
    for (let i = 0; i < 200; i++) {
      const { odd } = stand(drawn(5, 4))
      if (odd[0]?.evidence.id === 's1') named++
    }
    expect(named).toBeGreaterThan(190)
  })

  it('says what error it would have shown 19 times in 20', () => {
    const two = [piece(measured(10, 0.3, 'a', KNOWN), 0), piece(measured(10, 0.4, 'b', KNOWN), 1)]
    expect(detectableError(two[0] as EvaluatedEvidence, two)).toBeCloseTo(0.5 * Math.sqrt(12.995), 3)
    let found = 0
    for (let i = 0; i < TRIALS; i++) {
      const pieces = drawn(4, 0)
      const [first] = pieces as [EvaluatedEvidence]
      const size = detectableError(first, pieces) ?? Number.NaN
      const moved = pieces.map((w) =>
        w === first && w.compared ? { ...w, compared: { ...w.compared, value: w.compared.value + size } } : w,
      )
      if (stand(moved).status === 'disputed') found++
    }
    expect(found / TRIALS).toBeGreaterThan(0.95 - 3 * Math.sqrt((0.05 * 0.95) / TRIALS))
    expect(found / TRIALS).toBeLessThan(0.95 + 3 * Math.sqrt((0.05 * 0.95) / TRIALS))
  })
})

describe('evidence that rests on the same', () => {
  const marks = [point('D', pixel(400, 900)), point('E', pixel(2000, 1500))]
  const rowOf = (evidence: Parameters<typeof dimension>[1], more: object = {}) =>
    dimensionTable(smallJob({ marks, dimensions: [dimension('x', evidence, more)] })).rows[0]

  it('picks counts once, however often it is entered, and is told of', () => {
    const row = rowOf(Array.from({ length: 50 }, (_, i) => scaled(i % 2 ? ['D', 'E'] : ['E', 'D'], `s${i}`)))
    expect(row?.status).toBe('single')
    expect(row?.why).toContain('rests on the same picks as')
    expect(row?.evidence.filter(({ countsWith }) => countsWith === 's0')).toHaveLength(49)
    const once = rowOf([scaled(['D', 'E'], 's0')])
    expect(row?.value).toBe(once?.value)
    expect(row?.U).toBeCloseTo(once?.U as number, 12)
  })

  it('formula counts once, whatever its blanks', () => {
    const job = smallJob({
      dimensions: [
        dimension('a', [printed('3"')]),
        dimension('b', [printed('4"')]),
        dimension('x', [derived('a + b', 'd'), derived('a+b', 'e')]),
        dimension('y', [derived('a + b', 'd'), derived('b + a', 'e')]),
      ],
    })
    for (const row of dimensionTable(job).rows.slice(2)) {
      expect(row.status).toBe('single')
      expect(row.why).toMatch(/count as one/)
    }
  })

  it('does not count once where it says two things', () => {
    const job = smallJob({
      dimensions: [
        dimension('a', [printed('3"')]),
        dimension('x', [derived('a', 'd'), derived('2 * a', 'e')]),
      ],
    })
    expect(dimensionTable(job).rows[1]?.status).toBe('disputed')
  })

  it('a figure that is printed twice is two', () => {
    expect(rowOf([printed('3"', 'p'), printed('3"', 'q')])).toMatchObject({
      status: 'agreed',
      why: 'The printed figure governs; printed twice, the same.',
    })
  })

  it('agreement of the rest is told with what it would have shown', () => {
    const row = rowOf([printed('11 3/8"'), scaled(['D', 'E'])])
    expect(row?.why).toMatch(
      /the scaled value (agrees, and would have shown an error of [\d.]+" or more|differs)/,
    )
  })
})
