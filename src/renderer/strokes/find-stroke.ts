import type { Pixel } from '../../core/geometry/frames.ts'
import {
  type FoundStroke,
  findCircle,
  findCrossing,
  findLine,
  findPoint,
  findRoundEnd,
  type GreyPicture,
  type NoStroke,
} from '../../core/imaging/index.ts'
import type { StrokeReading } from '../../core/job/model/types.ts'
import { reason, type WindowReason } from '../words/window-words.ts'
import { sideOf, type Way, way } from './edge-sides.ts'
import { otherInk } from './ink-wanted.ts'
import type { NotFound } from './messages.ts'
import type { SearchWish } from './search-wish.ts'
import { hasStrokeBeside } from './stroke-beside.ts'

/**
 * Looks for a stroke in what there is of the scan.
 * @param rough where it was pointed at, pixels of the scan
 */
export function findStroke(
  grey: GreyPicture,
  rough: readonly Pixel[],
  wish: SearchWish,
): FoundStroke | NotFound {
  const found = findOfInk(grey, rough, wish)
  if (found.kind !== 'none') {
    const another = wish.alone !== undefined && hasStrokeBeside(grey, found, wish.alone)
    return another ? none(reason('search.two-strokes')) : found
  }
  if (wish.ink === undefined) return found
  const other = findOfInk(grey, rough, { ...wish, ink: otherInk(wish.ink) })
  return other.kind === 'none' ? found : none(reason('search.other-ink'))
}

function findOfInk(grey: GreyPicture, rough: readonly Pixel[], wish: SearchWish): FoundStroke | NotFound {
  const [a, b, c] = rough
  const { reach, ink } = wish
  if (a === undefined) return none(reason('search.nothing-pointed-at'))
  switch (wish.as) {
    case 'point':
      return atPoint(grey, a, wish)
    case 'crossing':
      return findCrossing(grey, a, { reach, ink })
    case 'line': {
      if (b === undefined) return none(reason('search.line-wants-two-picks'))
      const reading = readingAlong(wish.reading, way(b[0] - a[0], b[1] - a[1]))
      return findLine(grey, a, b, { reach, reading, ink })
    }
    case 'end':
      return findRoundEnd(grey, a, { reach, reading: roundReading(wish.reading), ink })
    case 'circle':
    case 'arc': {
      if (b === undefined || c === undefined) return none(reason('search.circle-wants-three-picks'))
      const reading = roundReading(wish.reading)
      const look = (whole: boolean) => findCircle(grey, [a, b, c], { reach, reading, ink, whole })
      const first = look(wish.as === 'circle')
      return first.kind === 'none' && wish.either ? look(wish.as !== 'circle') : first
    }
  }
}

const none = (because: WindowReason): NotFound => ({ kind: 'none', because })

/** A crossing where one lies near and the middle is wanted, for edges have none; else the stroke. */
function atPoint(
  grey: GreyPicture,
  rough: Pixel,
  { reach, reading, either, ink }: SearchWish,
): FoundStroke | NoStroke {
  const middle = reading === 'centre' || (typeof reading === 'object' && reading.straight === 'centre')
  if (either && middle) {
    const crossing = findCrossing(grey, rough, { reach, ink })
    if (crossing.kind === 'crossing') return crossing
  }
  return findPoint(grey, rough, {
    reach,
    ink,
    reading: (direction) => readingAlong(reading, way(Math.cos(direction), Math.sin(direction))),
  })
}

function readingAlong(wanted: SearchWish['reading'], direction: Way): StrokeReading {
  if (typeof wanted === 'string') return wanted
  if (wanted.straight === 'centre') return 'centre'
  return sideOf(wanted.straight, direction, wanted.from)
}

/** Clockwise as the scan is seen, so that right is inside. */
function roundReading(wanted: SearchWish['reading']): StrokeReading {
  if (typeof wanted === 'string') return wanted
  return wanted.round === 'centre' ? 'centre' : wanted.round === 'outer' ? 'left' : 'right'
}
