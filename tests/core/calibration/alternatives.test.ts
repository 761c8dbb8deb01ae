import { describe, expect, it } from 'vitest'
import { type Calibration, calibrate } from '../../../src/core/calibration/calibrate.ts'
import type { StatedSize } from '../../../src/core/calibration/reference.ts'
import { expand } from '../../../src/core/uncertainty/coverage.ts'
import { type RandomStream, randomStream } from '../../../src/core/uncertainty/random.ts'
import { inWords } from '../../../src/core/words/core-words.ts'
import { lengthReference, viewOf, type XY } from '../measuring/marks.ts'

/** Three sizes along, two across, pixels; 0.1 mm a pixel. */
const ENDS: [XY, XY][] = [
  [
    [200, 200],
    [3200, 210],
  ],
  [
    [200, 900],
    [3150, 905],
  ],
  [
    [220, 1800],
    [3200, 1790],
  ],
  [
    [300, 300],
    [310, 2300],
  ],
  [
    [2900, 250],
    [2910, 2350],
  ],
]
const SCALE = 0.1
const U = 0.15
/** What a sheet does, a share; here it does nothing. */
const PAPER = 0.005

function fiveSizes(random: RandomStream, slips: Record<number, number>): StatedSize[] {
  const noisy = ([x, y]: XY): XY => [x + random.normal(), y + random.normal()]
  return ENDS.flatMap(([p, q], i) => {
    const size = SCALE * Math.hypot(q[0] - p[0], q[1] - p[1]) + U * random.normal()
    return lengthReference(`R${i + 1}`, noisy(p), noisy(q), size + (slips[i] ?? 0), U, 1)
  })
}

const calibrated = (sizes: StatedSize[], kind: 'uniform' | 'two-axis' = 'two-axis'): Calibration =>
  calibrate(viewOf(kind, sizes), sizes, 'view', { paper: PAPER })

const setAside = ({ references }: Calibration): string[] =>
  references.filter((r) => r.setAside).map(({ id }) => id)

const ways = ({ alternatives }: Calibration): string[] =>
  alternatives.map(({ leftOut }) => leftOut.join(' and '))

const said = ({ problem }: Calibration): string => (problem === undefined ? '' : inWords(problem))

const SHEETS = 200

describe('two of five sizes misread alike, by 1 %', () => {
  it('do not outvote the right one where paper seldom does what they make of it', () => {
    const random = randomStream(81)
    let [held, verdicts, among] = [0, 0, 0]
    for (let i = 0; i < SHEETS; i++) {
      const calibration = calibrated(fiveSizes(random, { 0: 3.2, 1: 3.2 }))
      const [along] = calibration.theta
      if (along !== undefined && Math.abs(along.value - SCALE) <= expand(along).U) held++
      if (setAside(calibration).length > 0) verdicts++
      if (ways(calibration).includes('R1 and R2')) among++
    }
    console.log(
      `two misread alike, ${SHEETS} sheets: scale held ${held}, one set aside ${verdicts}, told among others ${among}`,
    )
    expect(held / SHEETS).toBeGreaterThan(0.95)
    expect(verdicts / SHEETS).toBeLessThan(0.05)
    expect(among / SHEETS).toBeGreaterThan(0.95)
  })

  it('are told beside the one that is set aside where paper may well do so', () => {
    // Half as much; nothing tells them from the right one but that they are two.
    const calibration = calibrated(fiveSizes(randomStream(12), { 0: 1.2, 1: 1.2 }))
    expect(setAside(calibration)).toEqual(['R3'])
    expect(ways(calibration)).toEqual(['R1 and R2'])
    expect(said(calibration)).toMatch(
      /^Figured size R3 does not fit .* But R1 and R2 may be wrong in its place, if misread alike: read/,
    )
  })
})

describe('one of five sizes misread', () => {
  it('is set aside, and hardly ever another', () => {
    const random = randomStream(82)
    let [right, other, held] = [0, 0, 0]
    for (let i = 0; i < SHEETS; i++) {
      const calibration = calibrated(fiveSizes(random, { [i % 3]: 3.2 }))
      const [along] = calibration.theta
      if (along !== undefined && Math.abs(along.value - SCALE) <= expand(along).U) held++
      const [set] = setAside(calibration)
      if (set === `R${(i % 3) + 1}`) right++
      else if (set !== undefined) other++
    }
    console.log(
      `one misread of three along, ${SHEETS} sheets: set aside ${right}, another ${other}, held ${held}`,
    )
    expect(right / SHEETS).toBeGreaterThan(0.9)
    expect(other).toBe(0)
    // 95 %, less three standard deviations of so many sheets.
    expect(held / SHEETS).toBeGreaterThan(0.95 - 3 * Math.sqrt((0.05 * 0.95) / SHEETS))
  })

  it('stands beside the other that would do where there are but two of its direction', () => {
    const calibration = calibrated(fiveSizes(randomStream(14), { 3: 1.5 }))
    expect(setAside(calibration)).toEqual([])
    expect(ways(calibration).sort()).toEqual(['R4', 'R5'])
    expect(said(calibration)).toMatch(
      /Nothing decides which is wrong: R\d, or R\d\. Read these figures again/,
    )
    // The scales of each lie within what is said of it.
    const across = calibration.theta[1]
    if (across === undefined) throw new Error('two scales')
    for (const { theta } of calibration.alternatives) {
      expect(Math.abs((theta[1]?.value ?? 0) - across.value)).toBeLessThan(expand(across).U)
    }
  })
})

describe('two of seven misread, each otherwise', () => {
  it('are told together, and what is left agrees', () => {
    const calibration = calibrated(fiveSizes(randomStream(15), { 0: 3, 3: -3 }), 'uniform')
    expect(ways(calibration)).toContain('R1 and R4')
    expect(setAside(calibration)).toEqual([])
    for (const { p } of calibration.alternatives) expect(p ?? 1).toBeGreaterThanOrEqual(0.05)
  })
})

it('sizes that agree have nothing told beside them', () => {
  expect(calibrated(fiveSizes(randomStream(16), {})).alternatives).toEqual([])
})
