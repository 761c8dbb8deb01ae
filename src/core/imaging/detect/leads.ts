import { type Pixel, pixel } from '../../geometry/frames.ts'
import { median } from '../../uncertainty/median.ts'
import { reachAcross } from '../filter/bar-grid.ts'
import { OrientedFilter } from '../filter/oriented-filter.ts'
import { parallelRidges, type Ridge } from '../filter/ridge-score.ts'
import type { SearchContext } from './detector.ts'

/** Directions tried, over half a turn. */
const DIRECTIONS = 24
const PIECE = 4
/** Widest that is seen over so short a way, pixels; wider ones come out of the fit. */
const WIDEST_AT_POINT = 28
const STRONG = 5.5
const MOST_APART = 8

/** A way through the neighbourhood of a place. */
export interface Lead {
  /** Radians. */
  direction: number
  /** Across from the place, pixels. */
  offset: number
  ridge: Ridge
}

interface Leads {
  leads: Lead[]
  /** Median strength of all ways looked at: what the ground alone comes to. */
  usual: number
}

/** Ways of a length (pixels) through the neighbourhood of a place that may be strokes, every whole pixel and 7.5°. */
export function leadsAt({ grey, noise, reach, ink }: SearchContext, at: Pixel, length: number): Leads {
  const leads: Lead[] = []
  const all: number[] = []
  const count = Math.max(4, Math.round(length / PIECE))
  const mostOf = (width: number) => Math.ceil(reach + width / 2)
  const most = mostOf(WIDEST_AT_POINT)
  const strengths = new Float64Array(2 * most + 1)
  const filter = new OrientedFilter(grey, {
    from: -length / 2,
    count,
    size: length / count,
    half: reachAcross(reach, WIDEST_AT_POINT),
    mostOf,
    widest: WIDEST_AT_POINT,
  })
  for (let i = 0; i < DIRECTIONS; i++) {
    const direction = (i / DIRECTIONS - 0.5) * Math.PI
    const grid = filter.along(at, direction)
    for (const ridge of parallelRidges({ grid, length, noise, ink }, most, strengths, mostOf)) {
      if (ridge === null || ridge.strength < STRONG || gapTo(ridge) > reach) continue
      leads.push({ direction, offset: ridge.steer[0] ?? 0, ridge })
    }
    all.push(...strengths)
  }
  return { leads, usual: median(all) }
}

const gapTo = ({ steer, width }: Ridge): number => Math.max(0, Math.abs(steer[0] ?? 0) - width / 2)

/** Of the leads that are apart, and not much fainter or weaker than the strongest, the nearest first. */
export function nearestLeads(leads: readonly Lead[], most: number): Lead[] {
  const apart: Lead[] = []
  for (const lead of [...leads].sort((a, b) => b.ridge.strength - a.ridge.strength)) {
    if (apart.length >= MOST_APART) break
    if (apart.every((a) => areApart(a, lead))) apart.push(lead)
  }
  const [strongest] = apart
  if (strongest === undefined) return []
  const { contrast, strength } = strongest.ridge
  return apart
    .filter(
      ({ ridge }) => Math.abs(ridge.contrast) > 0.25 * Math.abs(contrast) && ridge.strength > 0.12 * strength,
    )
    .sort((a, b) => gapTo(a.ridge) - gapTo(b.ridge))
    .slice(0, most)
}

function areApart(a: Lead, b: Lead): boolean {
  const turn = Math.abs(a.direction - b.direction)
  const angle = Math.min(turn, Math.PI - turn)
  if (angle > 0.4) return true
  const flipped = turn > Math.PI / 2 ? -1 : 1
  return Math.abs(a.offset - flipped * b.offset) > Math.max(a.ridge.width, b.ridge.width) / 2 + 3
}

/** The place of a lead that is nearest to where it was looked for. */
export const footOf = ({ direction, offset }: Lead, [x, y]: Pixel): Pixel =>
  pixel(x - Math.sin(direction) * offset, y + Math.cos(direction) * offset)
