import { median } from '../../uncertainty/median.ts'
import { reason } from '../../words/core-words.ts'
import type { ProfileReason } from '../../words/strokes.ts'
import type { PieceCentre } from '../fit/piece-centres.ts'
import { guessAt } from '../fit/strip-equations.ts'
import type { StripFit } from '../fit/strip-fit.ts'
import { isCovered, type Strip } from '../strip/strip.ts'
import { hasTwoValues } from '../window/bilevel.ts'
import { forwardSearch } from './forward-search.ts'

/** Baarda's critical value for one suspect among many: 0.1 % of good ones are left out. */
const CRITICAL = 3.29
/** For a piece beside one that is left out: what disturbs that one may reach into it. */
const BESIDE = 2.2
/** A piece that shows less of the usual contrast than this, and clearly so, shows no stroke. */
const BROKEN = 0.6
/** Pixels. */
const CLOSEST = 0.02
/** Of fewer pieces no course is made out. */
const LEAST_COURSE = 5
/** Grounds differ by this much of the contrast for no reason. */
const UNEVEN = 0.02

/** Which pieces of a stroke are kept. */
export interface PieceSelection {
  kept: boolean[]
  /** Why a piece is left out. */
  because: (ProfileReason | undefined)[]
  /** Whether some are left out that might stay if the noise were stronger than white noise makes it. */
  byNoise: boolean
}

type Code = ProfileReason['code']

/** What is against a piece, and by how many standard deviations. */
interface Suspicion {
  code: Code
  z: number
  /** Whether what is against it may reach into its neighbours. */
  spreads: boolean
}

/** What the pieces that show the stroke are like. */
interface Usual {
  /** Of the stroke, −1 where it is darker than its ground. */
  sign: number
  width: number
  contrast: number
  /** Mean square of the residuals of a piece, and the standard deviation of its noise. */
  square: number
  noise: number
}

/** The tests of one piece against the others: what it would be, and in how many standard deviations it is. */
const TESTS: readonly { code: Code; z: (piece: PieceCentre, usual: Usual, groundStep: number) => number }[] =
  [
    { code: 'profile.crossed', z: rougher },
    { code: 'profile.fainter', z: fainter },
    { code: 'profile.stronger', z: (piece, usual) => -fainter(piece, usual) },
    { code: 'profile.wider', z: wider },
    { code: 'profile.narrower', z: (piece, usual) => -wider(piece, usual) },
    { code: 'profile.stained', z: (_piece, _usual, groundStep) => groundStep },
  ]

function rougher({ square, count }: PieceCentre, usual: Usual): number {
  const ratio = square / (usual.square + (0.03 * usual.contrast) ** 2)
  return (Math.sqrt(ratio) - 1) / (1 / Math.sqrt(2 * count) + 0.12)
}

function fainter({ contrast, contrastUnit }: PieceCentre, usual: Usual): number {
  const sigma = Math.hypot(usual.noise * Math.sqrt(contrastUnit), 0.12 * usual.contrast)
  return (usual.contrast - contrast * usual.sign) / sigma
}

function wider(piece: PieceCentre, { noise, width }: Usual): number {
  return piece.wider / Math.hypot(noise * Math.sqrt(piece.widerUnit), 0.12 + 0.2 / width)
}

const OFF_SCAN: Suspicion = { code: 'profile.off-scan', z: Number.POSITIVE_INFINITY, spreads: false }

/**
 * Which pieces do not belong to the stroke: their contrast, residuals, width or place do not fit the rest.
 * Sources: Baarda 1968, A testing procedure for use in geodetic networks, for the test and its limit; the scales are
 * medians (Hampel 1974), so that up to half of the pieces may be bad.
 * @param barred why a piece is left out whatever it looks like
 */
export function rejectOutliers(
  strip: Strip,
  fit: StripFit,
  centres: readonly (PieceCentre | null)[],
  barred: readonly (ProfileReason | undefined)[] = [],
  inflation = 1,
): PieceSelection {
  const sign = fit.contrast < 0 ? -1 : 1
  const live = centres.filter((c, k): c is PieceCentre => c !== null && !barred[k] && c.contrast * sign > 0)
  const contrast = median(live.map((c) => Math.abs(c.contrast)))
  const near = new Set(live.filter((c) => Math.abs(c.contrast) > 0.5 * contrast))
  const square = Math.max(median([...near].map((c) => c.square)), 0.04)
  const usual: Usual = {
    sign,
    width: fit.width,
    contrast,
    square,
    noise: Math.sqrt(Math.max(square, 0.09)),
  }
  const together = usual.noise * Math.sqrt(inflation)
  const steps = deviationsOfGround(strip, centres, together, contrast)
  const byLooks = centres.map((c, k) => {
    const piece = strip.pieces[k]
    return c === null || piece === undefined || !isCovered(piece)
      ? OFF_SCAN
      : suspect(c, usual, steps[k] ?? 0)
  })
  const aside = deviationsOfPlace(strip, fit, centres, (c) => near.has(c), together, byLooks)
  const suspicions = byLooks.map((looks, k): Suspicion => {
    const z = aside[k] ?? 0
    return z > looks.z && looks.z <= CRITICAL ? { code: 'profile.aside', z, spreads: true } : looks
  })
  const because = suspicions.map((own, k) => {
    if (barred[k] !== undefined) return barred[k]
    if (own.z > CRITICAL) return reason(own.code)
    const disturbed = [suspicions[k - 1], suspicions[k + 1]].some((b) => b?.spreads && b.z > CRITICAL)
    return disturbed && own.z > BESIDE ? reason(own.code) : undefined
  })
  return {
    kept: because.map((b) => b === undefined),
    because: endsTold(because),
    byNoise: because.some((b) => b?.code === 'profile.aside' || b?.code === 'profile.stained'),
  }
}

/** The worst of what is against a piece by its looks. */
function suspect(piece: PieceCentre, usual: Usual, groundStep: number): Suspicion {
  const low = fainter(piece, usual)
  if (low > CRITICAL && piece.contrast * usual.sign < BROKEN * usual.contrast)
    return { code: 'profile.broken', z: low, spreads: true }
  let worst: Suspicion = { code: 'profile.crossed', z: -1, spreads: true }
  for (const { code, z } of TESTS) {
    const here = z(piece, usual, groundStep)
    if (here > worst.z) worst = { code, z: here, spreads: true }
  }
  return worst
}

/** How far the step of the ground from one side to the other is from that of the other pieces, in standard deviations. */
function deviationsOfGround(
  strip: Strip,
  centres: readonly (PieceCentre | null)[],
  noise: number,
  contrast: number,
): number[] {
  const worst = centres.map(() => 0)
  const known = centres.flatMap((c, k) => (c?.ground ? [{ k, ...c.ground }] : []))
  if (known.length < LEAST_COURSE) return worst
  const points = known.map(({ k, step, unit }) => ({
    along: strip.pieces[k]?.middle ?? 0,
    reading: step,
    sigma: Math.hypot(noise * Math.sqrt(unit), UNEVEN * contrast),
  }))
  const course = forwardSearch(
    points,
    points.map((_, i) => i),
    CRITICAL,
  )
  known.forEach(({ k }, i) => {
    worst[k] = Math.abs(course[i]?.z ?? 0)
  })
  return worst
}

/** How far each piece lies aside of the course of those that nothing else is said against, in standard deviations. */
function deviationsOfPlace(
  strip: Strip,
  fit: StripFit,
  centres: readonly (PieceCentre | null)[],
  isNear: (c: PieceCentre) => boolean,
  noise: number,
  suspicions: readonly Suspicion[],
): number[] {
  const points = strip.pieces.map((piece, k) => {
    const c = centres[k] ?? null
    return {
      along: piece.middle,
      reading: c === null ? 0 : c.offset - guessAt(piece, fit).offset,
      sigma: c === null ? 1 : Math.max(noise * Math.sqrt(c.unit), CLOSEST),
    }
  })
  const near = centres.flatMap((c, k) => (c && isNear(c) ? [k] : []))
  const good = near.filter((k) => (suspicions[k]?.z ?? 0) < CRITICAL)
  const ofPieces = (z: (k: number) => number) => centres.map((c, k) => (c === null ? 0 : Math.abs(z(k))))
  // Rounded to whole pixels the edges of a scan of one bit do not scatter as noise does.
  if (strip.curve.curvature !== 0 || good.length < LEAST_COURSE || hasTwoValues(strip.value)) {
    const away = points.map(({ reading }) => Math.abs(reading))
    const usual = 1.4826 * median(near.map((k) => away[k] ?? 0))
    return ofPieces((k) => (away[k] ?? 0) / Math.max(points[k]?.sigma ?? 1, usual))
  }
  const course = forwardSearch(points, good, CRITICAL)
  return ofPieces((k) => course[k]?.z ?? 0)
}

/** The reasons that are found by comparing a piece with the rest, where the stroke is. */
const DISTURBED: ReadonlySet<Code> = new Set([
  ...TESTS.map(({ code }) => code),
  'profile.aside',
  'profile.broken',
])

/** Whether a piece is left out because something disturbs the stroke there, rather than that it is not seen. */
export const isDisturbed = (because: ProfileReason | undefined): boolean =>
  because !== undefined && DISTURBED.has(because.code)

/** A break from the first or last piece on is the end of the stroke. */
function endsTold(because: readonly (ProfileReason | undefined)[]): (ProfileReason | undefined)[] {
  const isBroken = (b: ProfileReason | undefined) => b?.code === 'profile.broken'
  const first = because.findIndex((b) => !isBroken(b))
  const last = because.findLastIndex((b) => !isBroken(b))
  return because.map((b, k) => (first < 0 || k < first || k > last ? reason('profile.beyond-end') : b))
}
