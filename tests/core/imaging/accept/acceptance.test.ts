import { describe, expect, it } from 'vitest'
import { pixel } from '../../../../src/core/geometry/frames.ts'
import { acceptStroke, type Demands } from '../../../../src/core/imaging/accept/acceptance.ts'
import { type PieceCentre, pieceCentres } from '../../../../src/core/imaging/fit/piece-centres.ts'
import { guessAt } from '../../../../src/core/imaging/fit/strip-equations.ts'
import { fitStrip, type StripFit } from '../../../../src/core/imaging/fit/strip-fit.ts'
import { straightCurve } from '../../../../src/core/imaging/strip/reference-curve.ts'
import { type Strip, stripAlong } from '../../../../src/core/imaging/strip/strip.ts'
import type { Traced } from '../../../../src/core/imaging/trace/trace-stroke.ts'
import { caseStream } from '../simulate/case-stream.ts'
import { type Look, PLAIN_LOOK } from '../simulate/look.ts'
import { cleanPicture } from '../simulate/scan-of.ts'
import { bar } from '../simulate/shapes.ts'

const LOOK: Look = { ...PLAIN_LOOK, noise: 3 }
const DIRECTION = 0.3
/** Of each piece along the stroke, pixels. */
const SIZE = 4
const ASKED: Demands = { share: 0.3, length: 10 }

/** A stroke in white noise, as traced along its own course: all pieces kept. */
function drawn(look: Partial<Look> = {}, pieces = 8, half = 8): Traced {
  const { noise, width, blur, ...rest } = { ...LOOK, ...look }
  const clean = cleanPicture(
    { width: 80, height: 80, strokes: [bar(pixel(40, 40), DIRECTION, width)] },
    { ...rest, noise, width, blur },
  )
  const random = caseStream(7)
  const data = Float32Array.from(clean.data, (v) => v + noise * random.normal())
  const end = (s: number) => pixel(40 + s * Math.cos(DIRECTION), 40 + s * Math.sin(DIRECTION))
  const to = (SIZE * pieces) / 2
  const grey = { left: 0, top: 0, width: 80, height: 80, data }
  const strip = stripAlong(grey, straightCurve(end(-to), end(to)), pieces, -half, half)
  const kept = strip.pieces.map(() => true)
  const fit = fitStrip(strip, { parameters: [0, 0], width, blur }, kept)
  if (fit === null) throw new Error('The stroke was not fitted.')
  const judged = { kept, because: kept.map(() => undefined), byNoise: false }
  return { strip, fit, centres: pieceCentres(strip, fit), judged }
}

function verdict(traced: Traced, demands = ASKED): string {
  const told = acceptStroke(traced, demands)
  return 'code' in told ? told.code : 'accepted'
}

function sureOf(traced: Traced): number {
  const told = acceptStroke(traced, ASKED)
  if ('code' in told) throw new Error(`Not accepted: ${told.code}`)
  return told.sure
}

const SOUND = drawn()

const keeping = (traced: Traced, count: number): Traced => ({
  ...traced,
  judged: { ...traced.judged, kept: traced.judged.kept.map((_, k) => k < count) },
})
const withFit = (traced: Traced, fit: Partial<StripFit>): Traced => ({
  ...traced,
  fit: { ...traced.fit, ...fit },
})
const withCentres = (
  traced: Traced,
  change: (centre: PieceCentre, k: number) => Partial<PieceCentre>,
): Traced => ({
  ...traced,
  centres: traced.centres.map((centre, k) => centre && { ...centre, ...change(centre, k) }),
})
/** As sure as this: each piece knows its contrast better or worse. */
function assure(traced: Traced, sure: number): Traced {
  const by = (sureOf(traced) / sure) ** 2
  return withCentres(traced, ({ contrastUnit }) => ({ contrastUnit: by * contrastUnit }))
}

describe('a sound stroke', () => {
  it('is accepted, as sure as its contrast is over the uncertainty of that', () => {
    const told = acceptStroke(SOUND, ASKED)
    if ('code' in told) throw new Error(`Not accepted: ${told.code}`)
    const units = SOUND.centres.map((centre) => centre?.contrastUnit ?? Number.NaN)
    const unit = units.reduce((sum, u) => sum + u, 0) / units.length
    const variance = (SOUND.fit.variance * Math.max(told.even, 1) * unit) / units.length
    expect(told.sure).toBeCloseTo(Math.abs(SOUND.fit.contrast) / Math.sqrt(variance), 6)
    expect(told.centre).toBeGreaterThan(0.5)
    expect(told.centre).toBeLessThan(2)
  })

  it('is accepted lighter than its ground too', () =>
    expect(verdict(drawn({ dark: false, ground: 60 }))).toBe('accepted'))
})

describe('a stroke is refused, just beyond each limit and not within it, where', () => {
  it('fewer than three pieces agree', () => {
    expect(verdict(keeping(SOUND, 3), { share: 0, length: 0 })).toBe('accepted')
    expect(verdict(keeping(SOUND, 2), { share: 0, length: 0 })).toBe('stroke.too-little-agrees')
  })

  it('a lesser share of the pieces in the picture agrees than is asked', () => {
    expect(verdict(keeping(SOUND, 5), { share: 0.62, length: 0 })).toBe('accepted')
    expect(verdict(keeping(SOUND, 5), { share: 0.63, length: 0 })).toBe('stroke.too-little-agrees')
    // Two of the eight are beyond the picture.
    const pieces = SOUND.strip.pieces.map((piece, k) => (k > 5 ? { ...piece, covered: 0.7 } : piece))
    const ending = keeping({ ...SOUND, strip: { ...SOUND.strip, pieces } }, 5)
    expect(verdict(ending, { share: 0.83, length: 0 })).toBe('accepted')
  })

  it('a lesser length agrees than is asked, and it is told how much', () => {
    expect(verdict(keeping(SOUND, 4), { share: 0, length: 15.99 })).toBe('accepted')
    expect(acceptStroke(keeping(SOUND, 4), { share: 0, length: 16.01 })).toMatchObject({
      code: 'stroke.too-little-agrees',
      parts: { seen: expect.closeTo(16, 6) },
    })
  })

  it('it is too faint', () => {
    expect(verdict(drawn({ contrast: 6.5, noise: 0.5 }))).toBe('accepted')
    expect(verdict(drawn({ contrast: 5.5, noise: 0.5 }))).toBe('stroke.too-faint')
  })

  it('its edges are too soft, for any stroke or for its width', () => {
    expect(verdict(withFit(SOUND, { width: 6, blur: 3.95 }))).toBe('accepted')
    expect(verdict(withFit(SOUND, { width: 6, blur: 4.05 }))).toBe('stroke.too-soft')
    expect(verdict(withFit(SOUND, { width: 4, blur: 0.55 * 4 + 1.15 }))).toBe('accepted')
    expect(verdict(withFit(SOUND, { width: 4, blur: 0.55 * 4 + 1.25 }))).toBe('stroke.too-soft')
  })

  it('it is wider than it is long', () => {
    // Three pieces of 4 px: 14.4 px are 1.2 times as much.
    expect(verdict(drawn({ width: 13.9 }, 3, 14))).toBe('accepted')
    expect(verdict(drawn({ width: 14.9 }, 3, 14))).toBe('stroke.blot')
  })

  it.each([
    ['nearly all', 8, 7],
    ['most', 7, 14],
    ['about half', 4, 21],
    ['only three', 3, 25],
  ])('its contrast is not sure enough for one that %s of the pieces show', (_, count, sure) => {
    const some = keeping(SOUND, count)
    expect(verdict(assure(some, sure + 0.1))).toBe('accepted')
    expect(verdict(assure(some, sure - 0.1))).toBe('stroke.not-above-ground')
  })

  it('its contrast is hardly more than the noise of one pixel', () => {
    const noise = (times: number) => withFit(SOUND, { variance: (SOUND.fit.contrast / times) ** 2 })
    expect(verdict(noise(1.41))).toBe('accepted')
    expect(verdict(noise(1.39))).toBe('stroke.not-above-ground')
  })

  it('its contrast varies along it', () => {
    const varying = (by: number) =>
      withCentres(SOUND, (_, k) => ({ contrast: SOUND.fit.contrast * (k % 2 ? 1 + by : 1 - by) }))
    // Of eight readings 1 ± b the standard deviation is b·√(8/7): 0.22 at b = 0.206.
    expect(verdict(varying(0.204))).toBe('accepted')
    expect(verdict(varying(0.212))).toBe('stroke.not-above-ground')
  })

  it('its contrast varies, but not where noise makes it vary as much', () => {
    const varying = withCentres(SOUND, (_, k) => ({ contrast: SOUND.fit.contrast * (k % 2 ? 1.3 : 0.7) }))
    const unsure = assure(SOUND, 10)
    const both: Traced = {
      ...varying,
      centres: varying.centres.map(
        (c, k) => c && { ...c, contrastUnit: unsure.centres[k]?.contrastUnit ?? Number.NaN },
      ),
    }
    expect(verdict(varying)).toBe('stroke.not-above-ground')
    expect(verdict(both)).toBe('accepted')
  })

  it('it has no steady course', () => {
    // The median deviation, times 1.4826, is 0.3 px and 0.12 of the width.
    const limit = (0.3 + 0.12 * SOUND.fit.width) / 1.4826
    const wavering = (away: number) =>
      withCentres(SOUND, (_, k) => {
        const piece = SOUND.strip.pieces[k]
        return { offset: (piece ? guessAt(piece, SOUND.fit).offset : 0) + (k % 2 ? away : -away) }
      })
    expect(verdict(wavering(limit - 0.01))).toBe('accepted')
    expect(verdict(wavering(limit + 0.01))).toBe('stroke.no-steady-course')
  })

  it.each([1, -1])('it has no ground on one side (%s) that differs from it', (side) => {
    /** The ground on that side differs from the ink by so much of what it does on the other. */
    const ground = (share: number): Strip => ({
      ...SOUND.strip,
      value: SOUND.strip.value.map((v, i) =>
        side * (SOUND.strip.across[i] ?? 0) > SOUND.fit.width / 2
          ? LOOK.ground - LOOK.contrast * (1 - share)
          : v,
      ),
    })
    expect(verdict({ ...SOUND, strip: ground(0.36) })).toBe('accepted')
    expect(verdict({ ...SOUND, strip: ground(0.26) })).toBe('stroke.one-edge')
    expect(verdict({ ...SOUND, strip: ground(-0.3) })).toBe('stroke.one-edge')
  })
})
