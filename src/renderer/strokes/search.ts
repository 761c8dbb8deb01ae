import type { Pixel } from '../../core/geometry/frames.ts'
import {
  findCircle,
  findCrossing,
  findLine,
  findPoint,
  type GreyWindow,
  type NoStroke,
  type StrokeCircle,
  type StrokeCrossing,
  type StrokeLine,
  type StrokePoint,
} from '../../core/imaging/index.ts'
import type { FoundOn, StrokeReading } from '../../core/job/model/types.ts'
import type { RoundSide, StraightSide } from '../picking/how-to-pick.ts'
import { type SeenFrom, sideOf, type Way, way } from './edge-sides.ts'

/** Which part of the stroke is wanted: as a job says it, or as it is seen on the screen. */
type Wanted = StrokeReading | { straight: StraightSide; round: RoundSide; from: SeenFrom }

/** One search for a stroke. */
export interface Search {
  as: FoundOn['as']
  /** Where it was pointed at, pixels of the scan. */
  rough: Pixel[]
  /** Pixels. */
  reach: number
  wanted: Wanted
  /** Whether a point is taken where strokes cross within reach, and a circle as an arc where it is not whole. */
  either: boolean
}

export type FoundStroke = StrokePoint | StrokeCrossing | StrokeLine | StrokeCircle

export type SearchResult = { found: FoundStroke; reading: StrokeReading } | { found: NoStroke }

/** Looks for a stroke in a window of the scan. */
export function runSearch(window: GreyWindow, search: Search): SearchResult {
  const [a, b, c] = search.rough
  if (a === undefined) return none('Nothing was pointed at yet.')
  switch (search.as) {
    case 'point':
      return atPoint(window, a, search)
    case 'crossing':
      return told(findCrossing(window, a, { reach: search.reach }), 'centre')
    case 'line': {
      if (b === undefined) return none('A line is looked for between two picks.')
      const reading = readingAlong(search.wanted, way(b[0] - a[0], b[1] - a[1]))
      return told(findLine(window, a, b, { reach: search.reach, reading }), reading)
    }
    case 'circle':
    case 'arc': {
      if (b === undefined || c === undefined) return none('A circle is looked for through three picks.')
      const reading = roundReading(search.wanted)
      const look = (whole: boolean) =>
        told(findCircle(window, [a, b, c], { reach: search.reach, reading, whole }), reading)
      const first = look(search.as === 'circle')
      return first.found.kind === 'none' && search.either ? look(search.as !== 'circle') : first
    }
  }
}

const none = (because: string): SearchResult => ({ found: { kind: 'none', because } })

const told = (found: FoundStroke | NoStroke, reading: StrokeReading): SearchResult =>
  found.kind === 'none' ? { found } : { found, reading }

/** A crossing where one lies near and the middle is wanted, for edges have none; else the stroke. */
function atPoint(window: GreyWindow, rough: Pixel, { reach, wanted, either }: Search): SearchResult {
  const middle = wanted === 'centre' || (typeof wanted === 'object' && wanted.straight === 'centre')
  if (either && middle) {
    const crossing = findCrossing(window, rough, { reach })
    if (crossing.kind === 'crossing') return { found: crossing, reading: 'centre' }
  }
  const centre = findPoint(window, rough, { reach })
  if (centre.kind === 'none' || middle) return told(centre, 'centre')
  const reading = readingAlong(wanted, way(Math.cos(centre.direction), Math.sin(centre.direction)))
  return told(findPoint(window, rough, { reach, reading }), reading)
}

function readingAlong(wanted: Wanted, direction: Way): StrokeReading {
  if (typeof wanted === 'string') return wanted
  if (wanted.straight === 'centre') return 'centre'
  return sideOf(wanted.straight, direction, wanted.from)
}

/** Clockwise as the scan is seen, so that right is inside. */
function roundReading(wanted: Wanted): StrokeReading {
  if (typeof wanted === 'string') return wanted
  return wanted.round === 'centre' ? 'centre' : wanted.round === 'outer' ? 'left' : 'right'
}
