import { describe, expect, it } from 'vitest'
import { calibrate } from '../../../src/core/calibration/calibrate.ts'
import { suggestMapping } from '../../../src/core/calibration/mapping-selection.ts'
import { randomStream } from '../../../src/core/uncertainty/random.ts'
import { lengthReference, viewOf } from '../measuring/marks.ts'
import { sevenReferences } from './seven-references.ts'

function suggested(from: 'uniform' | 'two-axis', stretch: [number, number], sheets: number, seed: number) {
  const random = randomStream(seed)
  const count = new Map<string, number>()
  for (let i = 0; i < sheets; i++) {
    const sizes = sevenReferences(random, {}, stretch)
    const kind = suggestMapping(calibrate(viewOf(from, sizes), sizes))?.kind ?? 'none'
    count.set(kind, (count.get(kind) ?? 0) + 1)
  }
  const share = (kind: string): number => (count.get(kind) ?? 0) / sheets
  console.log(
    `${from}, stretched ${stretch.join(' and ')}: ${[...count].map(([k, n]) => `${k} ${((100 * n) / sheets).toFixed(1)} %`).join(', ')}`,
  )
  return share
}

describe('a better mapping is suggested from the references', () => {
  it('two-axis, when the sheet has shrunk half a percent more along than across', () => {
    const share = suggested('uniform', [0.99, 0.995], 400, 4)
    expect(share('two-axis') + share('affine')).toBeGreaterThan(0.97)
    expect(share('two-axis')).toBeGreaterThan(0.9)
  })

  it('none, in nearly all sheets that shrank alike in both directions', () => {
    const share = suggested('uniform', [0.99, 0.99], 1500, 5)
    expect(share('none')).toBeGreaterThan(0.96)
  })

  it('uniform, when two scales explain no more than one does; seldom anything richer', () => {
    const share = suggested('two-axis', [1, 1], 600, 6)
    expect(share('uniform')).toBeGreaterThan(0.5)
    expect(share('affine') + share('projective')).toBeLessThan(0.04)
  })

  it('none, while there are too few references to tell', () => {
    const sizes = [
      ...lengthReference('R1', [100, 100], [900, 100], 80, 0.1),
      ...lengthReference('R2', [100, 100], [100, 900], 85, 0.1),
    ]
    expect(suggestMapping(calibrate(viewOf('uniform', sizes), sizes))).toBeNull()
  })
})
