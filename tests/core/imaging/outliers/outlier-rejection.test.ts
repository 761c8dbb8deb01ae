import { describe, expect, it } from 'vitest'
import { pixel } from '../../../../src/core/geometry/frames.ts'
import type { PieceCentre } from '../../../../src/core/imaging/fit/piece-centres.ts'
import { isDisturbed, rejectOutliers } from '../../../../src/core/imaging/outliers/outlier-rejection.ts'
import { straightCurve } from '../../../../src/core/imaging/strip/reference-curve.ts'
import { stripAlong } from '../../../../src/core/imaging/strip/strip.ts'
import { reason } from '../../../../src/core/words/core-words.ts'

/** A strip of ten pieces in a picture of its own, all of them in it. */
const strip = stripAlong(
  {
    left: 0,
    top: 0,
    width: 60,
    height: 30,
    data: Float32Array.from({ length: 1800 }, (_, i) => 100 + ((i * 7919) % 11)),
  },
  straightCurve(pixel(10, 15), pixel(50, 15)),
  10,
  -8,
  8,
)
const fit = {
  parameters: Float64Array.of(0, 0),
  width: 4,
  blur: 0.7,
  contrast: -100,
  variance: 4,
  inverse: new Float64Array(16),
  dof: 500,
}
const SOUND: PieceCentre = {
  offset: 0,
  unit: 1e-4,
  contrast: -100,
  contrastUnit: 0.02,
  wider: 0,
  widerUnit: 1e-4,
  square: 4,
  count: 60,
  ground: { step: 0, unit: 0.05 },
}

/** Why each of ten pieces is left out, when some differ so from the rest. */
function because(unlike: Record<number, Partial<PieceCentre> | null>) {
  const centres = strip.pieces.map((_, k) => {
    const own = unlike[k]
    return own === null ? null : { ...SOUND, offset: k % 2 ? 0.01 : -0.01, ...own }
  })
  return rejectOutliers(strip, fit, centres).because.map((b) => b?.code)
}

const only = (k: number, code: string) => strip.pieces.map((_, i) => (i === k ? code : undefined))

describe('a piece is left out', () => {
  it('not at all where all are alike', () => expect(because({})).toEqual(strip.pieces.map(() => undefined)))

  it.each<[string, Partial<PieceCentre> | null, string]>([
    ['outside of the picture', null, 'profile.off-scan'],
    ['with much larger residuals', { square: 100 }, 'profile.crossed'],
    ['that hardly shows the stroke', { contrast: -20 }, 'profile.broken'],
    ['that shows it stronger', { contrast: -160 }, 'profile.stronger'],
    ['where it is wider', { wider: 0.9 }, 'profile.wider'],
    ['where it is narrower', { wider: -0.9 }, 'profile.narrower'],
    ['beside a stain', { ground: { step: 40, unit: 0.05 } }, 'profile.stained'],
    ['aside of the others', { offset: 1 }, 'profile.aside'],
  ])('%s', (_, unlike, code) => expect(because({ 4: unlike })).toEqual(only(4, code)))

  it('as beyond the end of the stroke where all from there on show none', () => {
    const codes = because({ 0: { contrast: 0 }, 8: { contrast: 0 }, 9: { contrast: 0 } })
    expect(codes[0]).toBe('profile.beyond-end')
    expect(codes.slice(8)).toEqual(['profile.beyond-end', 'profile.beyond-end'])
    expect(codes.slice(2, 7)).toEqual([undefined, undefined, undefined, undefined, undefined])
  })

  it('for less than otherwise beside one that is disturbed, but not beside the end of the picture', () => {
    // 2.4 standard deviations by its residuals: √(square/13) = 1 + 2.4·(1/√120 + 0.12).
    const doubtful = { square: 13 * (1 + 2.4 * (1 / Math.sqrt(120) + 0.12)) ** 2 }
    expect(because({ 4: doubtful })[4]).toBeUndefined()
    expect(because({ 3: { contrast: -20 }, 4: doubtful })[4]).toBe('profile.crossed')
    expect(because({ 3: null, 4: doubtful })[4]).toBeUndefined()
  })

  it('for what it is barred for, whatever it looks like', () => {
    const barred = strip.pieces.map((_, k) => (k === 2 ? reason('profile.other-stroke') : undefined))
    const centres = strip.pieces.map(() => SOUND)
    const { kept, because: why } = rejectOutliers(strip, fit, centres, barred)
    expect(kept.filter((k) => !k)).toHaveLength(1)
    expect(why[2]?.code).toBe('profile.other-stroke')
  })

  it('counts as disturbed only where the stroke is seen', () => {
    expect(isDisturbed(reason('profile.crossed'))).toBe(true)
    expect(isDisturbed(reason('profile.beyond-end'))).toBe(false)
    expect(isDisturbed(reason('profile.other-stroke'))).toBe(false)
    expect(isDisturbed(undefined)).toBe(false)
  })
})
