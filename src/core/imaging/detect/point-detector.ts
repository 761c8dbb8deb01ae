import { type Pixel, pixel } from '../../geometry/frames.ts'
import { median } from '../../uncertainty/median.ts'
import { type AcceptedStroke, BY_HAND } from '../accept/acceptance.ts'
import { orientedFilter } from '../filter/oriented-filter.ts'
import { mapReach, type PieceMap, pieceMap } from '../filter/piece-map.ts'
import { type Path, parallelPaths } from '../filter/ridge-score.ts'
import type { NoStroke, SearchOptions } from '../result/stroke-types.ts'
import { straightCurve } from '../strip/reference-curve.ts'
import { piecesFor, stripAlong } from '../strip/strip.ts'
import type { GreyWindow } from '../window/grey-window.ts'
import { REACH } from '../window/search-window.ts'
import { windowNoise } from '../window/window-noise.ts'
import { detectBent, WIDEST_BENT } from './bent-detector.ts'
import { settleLine } from './line-detector.ts'

/** Directions tried, over half a turn. */
const DIRECTIONS = 24
/** Length of stroke that settles a point, pixels. */
const POINT_LENGTH = 32
/** Shorter ways are tried where the stroke may be strongly bent. */
const SHORT_LENGTH = 16
const PIECE = 4
/** Over this length even a small circle seems straight; arcs that touch it are tried then. */
const BENT_LENGTH = 8
/** A stroke that will be very sure over the whole arc is at least as strong as this over so short a way. */
const BENT_STRONG = 12
/** Of a short way, so that there are enough of them to see it bend. */
const SHORT_PIECE = 2.5
/** Widest that is seen over so short a way, pixels; wider ones come out of the fit. */
const WIDEST_AT_POINT = 28
const STRONG = 5.5

/** A stroke is so many times stronger than what most ways through the neighbourhood come to; or else very sure. */
const ABOVE_USUAL = 16
const VERY_SURE = 40
/** Seen so faintly no fit will be very sure of it. */
const NOT_SURE = 14
/** A blur makes a stroke look wider as so many of its standard deviations do, squared and added: at half of its height. */
const SOFT = 2.355
/** Cosine of the angle that a fit may differ from the direction in which it was seen. */
const MOST_TURNED = Math.cos(0.35)

/** A way through the neighbourhood of a place. */
interface Lead {
  /** Radians. */
  direction: number
  /** Across from the place, pixels. */
  offset: number
  path: Path
}

interface Leads {
  leads: Lead[]
  /** Median strength of all ways looked at: what the ground alone comes to. */
  usual: number
}

/** Ways through the neighbourhood of a place that may be strokes, every whole pixel and 7.5°. */
function leadsAt(grey: GreyWindow, at: Pixel, reach: number, length: number, noise: number): Leads {
  const leads: Lead[] = []
  const all: number[] = []
  const half = mapReach(reach, WIDEST_AT_POINT)
  const count = Math.max(4, Math.round(length / PIECE))
  const mostOf = (width: number) => Math.ceil(reach + width / 2)
  const most = mostOf(WIDEST_AT_POINT)
  const strengths = new Float64Array(2 * most + 1)
  let map: PieceMap | undefined
  for (let i = 0; i < DIRECTIONS; i++) {
    const direction = (i / DIRECTIONS - 0.5) * Math.PI
    map = orientedFilter(
      grey,
      at,
      direction,
      -length / 2,
      count,
      length / count,
      half,
      WIDEST_AT_POINT,
      mostOf,
      map,
    )
    const paths = parallelPaths(map, most, length, noise, strengths, mostOf)
    for (let o = 0; o < paths.length; o++) {
      const path = paths[o] ?? null
      all.push(strengths[o] as number)
      if (path === null || path.strength < STRONG || gapTo(path) > reach) continue
      leads.push({ direction, offset: path.steer[0] ?? 0, path })
    }
  }
  return { leads, usual: median(all) }
}

const gapTo = (path: Path): number => Math.max(0, Math.abs(path.steer[0] ?? 0) - path.width / 2)

const curveThrough = (at: Pixel, direction: number, offset: number, length: number) => {
  const [dx, dy] = [Math.cos(direction), Math.sin(direction)]
  const [x, y] = [at[0] - dy * offset, at[1] + dx * offset]
  return straightCurve(
    pixel(x - (dx * length) / 2, y - (dy * length) / 2),
    pixel(x + (dx * length) / 2, y + (dy * length) / 2),
  )
}

/** Of the leads that are apart, the nearest first. */
function nearestLeads(leads: readonly Lead[], most: number): Lead[] {
  const sorted = [...leads].sort((a, b) => b.path.strength - a.path.strength)
  const apart: Lead[] = []
  for (const lead of sorted) {
    if (apart.length >= 8) break
    if (apart.every((a) => areApart(a, lead))) apart.push(lead)
  }
  const strongest = apart[0]
  if (strongest === undefined) return []
  return apart
    .filter(
      (l) =>
        Math.abs(l.path.contrast) > 0.25 * Math.abs(strongest.path.contrast) &&
        l.path.strength > 0.12 * strongest.path.strength,
    )
    .sort((a, b) => gapTo(a.path) - gapTo(b.path))
    .slice(0, most)
}

function areApart(a: Lead, b: Lead): boolean {
  const turn = Math.abs(a.direction - b.direction)
  const angle = Math.min(turn, Math.PI - turn)
  if (angle > 0.4) return true
  const flipped = turn > Math.PI / 2 ? -1 : 1
  return Math.abs(a.offset - flipped * b.offset) > Math.max(a.path.width, b.path.width) / 2 + 3
}

/** A fit may wander off to another stroke, above all from a wide way that took in several. */
function isWhatWasSeen({ direction, path }: Lead, { traced }: AcceptedStroke): boolean {
  const { strip, fit } = traced
  const [nx, ny] = strip.curve.across(strip.curve.length / 2)
  const aligned = Math.abs(nx * -Math.sin(direction) + ny * Math.cos(direction))
  const wider = Math.max(Math.hypot(fit.width, SOFT * fit.blur), 1.5) / path.width
  return aligned > MOST_TURNED && wider < 2.2 && wider > 1 / 2.2
}

/** Traces the nearest stroke that is one. */
export function detectPoint(grey: GreyWindow, at: Pixel, options: SearchOptions): AcceptedStroke | NoStroke {
  const reach = options.reach ?? REACH
  const noise = windowNoise(grey)
  let because = `No stroke was seen within ${reach} px. ${BY_HAND}`
  for (const length of [POINT_LENGTH, SHORT_LENGTH]) {
    const { leads, usual } = leadsAt(grey, at, reach, length, noise)
    for (const lead of nearestLeads(leads, 3)) {
      if (lead.path.strength < Math.min(ABOVE_USUAL * usual, NOT_SURE)) {
        because = `The ground is as uneven as this all about. ${BY_HAND}`
        continue
      }
      const settled = followLead(grey, at, lead, length, noise)
      if (typeof settled === 'string') because = settled
      else if (!isWhatWasSeen(lead, settled)) because = `What is here does not settle to a stroke. ${BY_HAND}`
      else if (settled.inflation.sure < VERY_SURE && lead.path.strength < ABOVE_USUAL * usual) {
        because = `The ground is as uneven as this all about. ${BY_HAND}`
      } else return settled
    }
  }
  return bentAt(grey, at, reach, noise) ?? { kind: 'none', because }
}

/** A stroke that no straight way fits. */
function bentAt(grey: GreyWindow, [x, y]: Pixel, reach: number, noise: number): AcceptedStroke | null {
  const { leads, usual } = leadsAt(grey, pixel(x, y), reach, BENT_LENGTH, noise)
  for (const { direction, offset, path } of nearestLeads(leads, 2)) {
    if (path.strength < Math.max(BENT_STRONG, Math.min(ABOVE_USUAL * usual, NOT_SURE))) continue
    if (path.width > WIDEST_BENT) continue
    const place: Pixel = pixel(x - Math.sin(direction) * offset, y + Math.cos(direction) * offset)
    const bent = detectBent(grey, { place, direction }, noise)
    if (bent !== null && bent.inflation.sure > VERY_SURE) return bent
  }
  return null
}

/** Fits the stroke that a lead points to. Wide strokes are looked at over a longer way. */
function followLead(
  grey: GreyWindow,
  at: Pixel,
  lead: Lead,
  length: number,
  noise: number,
): AcceptedStroke | string {
  const { width, contrast } = lead.path
  const long = Math.max(length, Math.min(80, 2 * width + 8))
  const curve = curveThrough(at, lead.direction, lead.offset, long)
  const half = mapReach(4, Math.min(1.5 * width + 2, 40))
  const strip = stripAlong(
    grey,
    curve,
    piecesFor(long, length < POINT_LENGTH ? SHORT_PIECE : PIECE),
    -half,
    half,
  )
  const map = pieceMap(strip, -half, half, 1.5 * width + 1)
  const rough: Path = { steer: [0, 0], width, contrast, strength: 0 }
  return settleLine(grey, strip, map, rough, half, { share: 0.45, length: Math.min(12, 0.7 * long) }, noise)
}
