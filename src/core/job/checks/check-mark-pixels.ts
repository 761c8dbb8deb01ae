import type { Pixel } from '../../geometry/frames.ts'
import { symmetric2 } from '../../linear-algebra/symmetric2.ts'
import { type CoreReason, reason } from '../../words/core-words.ts'
import { FEWEST_PICKS } from '../model/mark-needs.ts'
import type { FoundOn, Mark, MarkKind } from '../model/types.ts'
import { fieldAgainstPicks, picksOf } from '../picks/picks-of.ts'

/** Rounded to a few figures in a job, so not compared closer than this. */
const ROUNDED = 1e-6
/** A stated sigma is that of the worse direction, give or take how it was rounded and what a person added to it. */
const SIGMA_WITHIN = [0.5, 10] as const

function allTheSame(pixels: readonly Pixel[]): boolean {
  return pixels.every(([x, y]) => x === pixels[0]?.[0] && y === pixels[0]?.[1])
}

/** Why pixels are no whole pick of a mark; null when they are. */
export function pixelsProblem(mark: Mark, pixels: readonly Pixel[]): CoreReason | null {
  if (mark.kind === 'point') return null
  const name = mark.kind === 'path' && mark.closed === true ? 'closed path' : mark.kind
  const least = FEWEST_PICKS[name]
  if (pixels.length < least) return reason('mark.too-few-picks', { name, least, given: pixels.length })
  if (allTheSame(pixels)) return reason('mark.all-the-same', { name })
  return null
}

/** Why the picks of a mark do not suit its kind; null when they do. */
export function picksProblem(mark: Mark): CoreReason | null {
  if (mark.kind === 'point') return covarianceProblem(mark)
  const [first, ...again] = picksOf(mark)
  const problem = pixelsProblem(mark, first?.pixels ?? [])
  if (problem !== null) return problem
  for (const [i, pick] of again.entries()) {
    const problem = pixelsProblem(mark, pick.pixels)
    if (problem !== null) return reason('mark.in-a-repeat', { repeat: i + 1, problem })
  }
  return null
}

function covarianceProblem({ covariance, sigma }: Mark & { kind: 'point' }): CoreReason | null {
  if (covariance === undefined) return null
  const [xx, xy, yy] = covariance
  if (xy * xy > xx * yy * (1 + ROUNDED) + ROUNDED ** 2) {
    return reason('mark.no-covariance', { covariance })
  }
  const worst = Math.sqrt(symmetric2(covariance)[0].value)
  const [least, most] = SIGMA_WITHIN
  if (sigma >= least * worst && sigma <= most * worst) return null
  return reason('mark.sigma-and-covariance', { sigma, worst })
}

const FOUND_AS: Readonly<Record<FoundOn['as'], { kind: MarkKind; rough: number }>> = {
  point: { kind: 'point', rough: 1 },
  crossing: { kind: 'point', rough: 1 },
  line: { kind: 'line', rough: 2 },
  circle: { kind: 'circle', rough: 3 },
  arc: { kind: 'circle', rough: 3 },
}

/** Why what a mark says it was found from can't be; null when it can. */
export function foundProblem({ stroke, kind }: Mark): CoreReason | null {
  if (stroke === undefined) return null
  const of = FOUND_AS[stroke.as]
  if (of.kind !== kind) return reason('mark.found-as-another', { kind, as: stroke.as })
  if (stroke.rough.length < of.rough) {
    return reason('mark.found-with-too-few', {
      as: stroke.as,
      least: of.rough,
      given: stroke.rough.length,
    })
  }
  return null
}

/** Why who picked a mark again can't be told; null when it can. */
export function repeatedByProblem({ repeats = [], repeatedBy }: Mark): CoreReason | null {
  if (repeatedBy === undefined || repeatedBy.length <= repeats.length) return null
  return reason('mark.more-people-than-repeats', {
    people: repeatedBy.length,
    repeats: repeats.length,
  })
}

/** Why a mark's picks and the fields that say the same can't both be right; null when they agree. */
export function mirrorProblem(mark: Mark): CoreReason | null {
  const field = fieldAgainstPicks(mark)
  return field === null ? null : reason('mark.picks-said-otherwise', { field })
}
