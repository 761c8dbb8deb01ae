import { type Pixel, pixel } from '../../geometry/frames.ts'
import { reason } from '../../words/core-words.ts'
import type { NoStrokeReason } from '../../words/strokes.ts'
import type { AcceptedStroke } from '../accept/acceptance.ts'
import { reachAcross } from '../filter/bar-grid.ts'
import { straightCurve } from '../strip/reference-curve.ts'
import { piecesFor } from '../strip/strip.ts'
import type { Traced } from '../trace/trace-stroke.ts'
import { detectBent, WIDEST_BENT } from './bent-detector.ts'
import { detect, isReason, type SearchContext } from './detector.ts'
import { footOf, type Lead, leadsAt, nearestLeads } from './leads.ts'
import {
  acceptStraight,
  alongMiddle,
  type RefinedStraight,
  refineStraight,
  type StraightSearch,
  straightSearch,
} from './straight-stroke.ts'

/** Length of stroke that settles a point, pixels. */
const POINT_LENGTH = 32
/** Shorter ways are tried where the stroke may be strongly bent. */
const SHORT_LENGTH = 16
const PIECE = 4
/** Of a short way, so that there are enough of them to see it bend. */
const SHORT_PIECE = 2.5
/** Over this length even a small circle seems straight; arcs that touch it are tried then. */
const BENT_LENGTH = 8
/** A stroke that will be very sure over the whole arc is at least as strong as this over so short a way. */
const BENT_STRONG = 12
/** Wide strokes are looked at over a longer way, pixels; at most so long. */
const LONGEST = 80

/** A stroke is so many times stronger than what most ways through the neighbourhood come to; or else very sure. */
const ABOVE_USUAL = 16
const VERY_SURE = 40
/** Seen so faintly no fit will be very sure of it. */
const NOT_SURE = 14
/** A blur makes a stroke look wider as so many of its standard deviations do, squared and added: at half of its height. */
const SOFT = 2.355
/** Cosine of the angle that a fit may differ from the direction in which it was seen. */
const MOST_TURNED = Math.cos(0.35)
/** By how much a fit may be wider or narrower than what was seen. */
const MOST_WIDER = 2.2

/** A lead seen over a length, pixels, and what most ways through there come to. */
interface Candidate {
  lead: Lead
  length: number
  usual: number
}

interface RefinedLead extends RefinedStraight {
  search: StraightSearch
}

/** Traces the nearest stroke that is one. */
export function detectPoint(context: SearchContext, at: Pixel): AcceptedStroke | NoStrokeReason {
  const straight = detect<Candidate, RefinedLead, AcceptedStroke>({
    *propose() {
      for (const length of [POINT_LENGTH, SHORT_LENGTH]) {
        const { leads, usual } = leadsAt(context, at, length)
        for (const lead of nearestLeads(leads, 3)) yield { lead, length, usual }
      }
    },
    refine({ lead, length, usual }) {
      if (lead.ridge.strength < leastStrength(usual)) return reason('stroke.ground-as-uneven')
      const search = searchAlong(context, at, lead, length)
      const refined = refineStraight(search, alongMiddle(lead.ridge.width, lead.ridge.contrast))
      return isReason(refined) ? refined : { ...refined, search }
    },
    accept(refined, { lead, usual }) {
      const accepted = acceptStraight(refined.search, refined)
      if (isReason(accepted)) return accepted
      if (!isWhatWasSeen(lead, accepted.traced)) return reason('stroke.unsettled')
      const isWeak = lead.ridge.strength < ABOVE_USUAL * usual
      return accepted.inflation.sure < VERY_SURE && isWeak ? reason('stroke.ground-as-uneven') : accepted
    },
    nothing: reason('stroke.none-within', { reach: context.reach }),
  })
  return isReason(straight) ? (bentAt(context, at) ?? straight) : straight
}

/** Weaker leads are not followed. @param usual strength of the ways through there */
const leastStrength = (usual: number): number => Math.min(ABOVE_USUAL * usual, NOT_SURE)

function searchAlong(context: SearchContext, at: Pixel, lead: Lead, length: number): StraightSearch {
  const { width } = lead.ridge
  const long = Math.max(length, Math.min(LONGEST, 2 * width + 8))
  const [dx, dy] = [Math.cos(lead.direction), Math.sin(lead.direction)]
  const [x, y] = footOf(lead, at)
  const along = (s: number) => pixel(x + dx * s, y + dy * s)
  return straightSearch(context, straightCurve(along(-long / 2), along(long / 2)), {
    count: piecesFor(long, length < POINT_LENGTH ? SHORT_PIECE : PIECE),
    half: reachAcross(4, Math.min(1.5 * width + 2, 40)),
    widest: 1.5 * width + 1,
    demands: { share: 0.45, length: Math.min(12, 0.7 * long) },
  })
}

/** A fit may wander off to another stroke, above all from a wide way that took in several. */
function isWhatWasSeen({ direction, ridge }: Lead, { strip, fit }: Traced): boolean {
  const [nx, ny] = strip.curve.across(strip.curve.length / 2)
  const aligned = Math.abs(nx * -Math.sin(direction) + ny * Math.cos(direction))
  const wider = Math.max(Math.hypot(fit.width, SOFT * fit.blur), 1.5) / ridge.width
  return aligned > MOST_TURNED && wider < MOST_WIDER && wider > 1 / MOST_WIDER
}

/** A stroke that no straight way fits. */
function bentAt(context: SearchContext, at: Pixel): AcceptedStroke | null {
  const { leads, usual } = leadsAt(context, at, BENT_LENGTH)
  for (const lead of nearestLeads(leads, 2)) {
    const { strength, width } = lead.ridge
    if (strength < Math.max(BENT_STRONG, leastStrength(usual)) || width > WIDEST_BENT) continue
    const bent = detectBent(context, { place: footOf(lead, at), direction: lead.direction })
    if (!isReason(bent) && bent.inflation.sure > VERY_SURE) return bent
  }
  return null
}
