import { median } from '../../uncertainty/median.ts'
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

export interface PieceSelection {
  kept: boolean[]
  /** Why a piece is left out, the end of a sentence. */
  because: (string | undefined)[]
  /** Whether some are left out that might stay if the noise were stronger than white noise makes it. */
  byNoise: boolean
}

/** What a piece differs by from the rest, each in its own standard deviations. */
interface Suspicion {
  worst: number
  because: string
}

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
  barred: readonly (string | undefined)[] = [],
  inflation = 1,
): PieceSelection {
  const sign = fit.contrast < 0 ? -1 : 1
  const live = centres.filter((c, k): c is PieceCentre => c !== null && !barred[k] && c.contrast * sign > 0)
  const contrast = median(live.map((c) => Math.abs(c.contrast)))
  const near = live.filter((c) => Math.abs(c.contrast) > 0.5 * contrast)
  const square = Math.max(median(near.map((c) => c.square)), 0.04)
  const own = Math.sqrt(Math.max(square, 0.09))
  const stained = suspectGround(strip, centres, own * Math.sqrt(inflation), contrast)
  const suspicions = centres.map((c, k): Suspicion => {
    const piece = strip.pieces[k]
    if (c === null || piece === undefined || !isCovered(piece)) {
      return { worst: Number.POSITIVE_INFINITY, because: 'the picture ends here' }
    }
    const height = c.contrast * sign
    const contrastSd = Math.hypot(own * Math.sqrt(c.contrastUnit), 0.12 * contrast)
    const low = (contrast - height) / contrastSd
    const ratio = c.square / (square + (0.03 * contrast) ** 2)
    const rough = (Math.sqrt(ratio) - 1) / (1 / Math.sqrt(2 * c.count) + 0.12)
    const wide = c.wider / Math.hypot(own * Math.sqrt(c.widerUnit), 0.12 + 0.2 / fit.width)
    if (low > CRITICAL && height < 0.6 * contrast) return { worst: low, because: FAINT }
    return worstOf([
      [rough, CROSSED],
      [low, FAINTER],
      [-low, STRONGER],
      [wide, WIDER],
      [-wide, NARROWER],
      [stained[k] ?? 0, STAINED],
    ])
  })
  suspectPlace(strip, fit, centres, (c) => near.includes(c), own * Math.sqrt(inflation), suspicions).forEach(
    (worst, k) => {
      const other = suspicions[k]?.worst ?? 0
      if (worst > other && other <= CRITICAL) suspicions[k] = { worst, because: ASIDE }
    },
  )
  const because = suspicions.map((s, k) => {
    if (barred[k] !== undefined) return barred[k]
    if (s.worst > CRITICAL) return s.because
    const beside = [suspicions[k - 1], suspicions[k + 1]].some(
      (b) => b && b.worst > CRITICAL && b.worst < 1e6,
    )
    return beside && s.worst > BESIDE ? s.because : undefined
  })
  sayWhereItEnds(because)
  return {
    kept: because.map((b) => b === undefined),
    because,
    byNoise: because.some((b) => b === ASIDE || b === STAINED),
  }
}

/** How far the step of the ground from one side to the other is from that of the other pieces. */
function suspectGround(
  strip: Strip,
  centres: readonly (PieceCentre | null)[],
  own: number,
  contrast: number,
): number[] {
  const worst = centres.map(() => 0)
  const known = centres.flatMap((c, k) => (c?.ground ? [{ k, ...c.ground }] : []))
  if (known.length < LEAST_COURSE) return worst
  const points = known.map(({ k, step, unit }) => ({
    along: strip.pieces[k]?.middle ?? 0,
    reading: step,
    sigma: Math.hypot(own * Math.sqrt(unit), UNEVEN * contrast),
  }))
  const course = forwardSearch(
    points,
    points.map((_, i) => i),
    CRITICAL,
  )
  known.forEach(({ k }, i) => {
    worst[k] = Math.abs(course.deviations[i] as number) / (course.sigmas[i] as number)
  })
  return worst
}

/** How far each piece lies aside of the course of those that nothing else is said against. */
function suspectPlace(
  strip: Strip,
  fit: StripFit,
  centres: readonly (PieceCentre | null)[],
  isNear: (c: PieceCentre) => boolean,
  own: number,
  suspicions: readonly Suspicion[],
): number[] {
  const away = centres.map((c, k) => (c === null ? 0 : c.offset - guessAt(strip, k, fit).offset))
  const sigma = (c: PieceCentre) => Math.max(own * Math.sqrt(c.unit), CLOSEST)
  const near = centres.flatMap((c, k) => (c && isNear(c) ? [k] : []))
  const good = near.filter((k) => (suspicions[k]?.worst ?? 0) < CRITICAL)
  // Rounded to whole pixels the edges of a scan of one bit do not scatter as noise does.
  if (strip.curve.curvature !== 0 || good.length < LEAST_COURSE || hasTwoValues(strip.value)) {
    const usual = 1.4826 * median(near.map((k) => Math.abs(away[k] as number)))
    return centres.map((c, k) => (c === null ? 0 : Math.abs(away[k] as number) / Math.max(sigma(c), usual)))
  }
  const points = centres.map((c, k) => ({
    along: strip.pieces[k]?.middle ?? 0,
    reading: away[k] as number,
    sigma: c === null ? 1 : sigma(c),
  }))
  const course = forwardSearch(points, good, CRITICAL)
  return centres.map((c, k) =>
    c === null ? 0 : Math.abs(course.deviations[k] as number) / (course.sigmas[k] as number),
  )
}

/** Pixels. */
const CLOSEST = 0.02
/** Of fewer pieces no course is made out. */
const LEAST_COURSE = 5
/** Grounds differ by this much of the contrast for no reason. */
const UNEVEN = 0.02

const CROSSED = 'something crosses or touches it here'
const FAINTER = 'it is fainter here'
const STRONGER = 'it is stronger here'
export const ASIDE = 'it lies aside of the rest here'
const WIDER = 'it is wider here'
const NARROWER = 'it is narrower here'
const STAINED = 'the ground is stained beside it here'
const FAINT = 'the stroke is broken here'
const ENDED = 'the stroke does not reach here'

/** The reasons that are found by comparing a piece with the rest, where the stroke is. */
export const DISTURBED: ReadonlySet<string> = new Set([
  CROSSED,
  FAINTER,
  STRONGER,
  ASIDE,
  WIDER,
  NARROWER,
  STAINED,
  FAINT,
])

/** A break from the first or last piece on is the end of the stroke. */
function sayWhereItEnds(because: (string | undefined)[]): void {
  for (let k = 0; k < because.length && because[k] === FAINT; k++) because[k] = ENDED
  for (let k = because.length - 1; k >= 0 && because[k] === FAINT; k--) because[k] = ENDED
}

function worstOf(all: readonly [number, string][]): Suspicion {
  let worst = -1
  let why = ''
  for (const [value, because] of all) {
    if (value > worst) {
      worst = value
      why = because
    }
  }
  return { worst, because: why }
}
