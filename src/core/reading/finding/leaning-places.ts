import type { GreyPicture } from '../../imaging/index.ts'
import { type Edges, edgesRound } from '../glyphs/edges.ts'
import { uprightWays } from '../upright/upright-ways.ts'
import { neighboursAmong } from './glyph-neighbours.ts'

/** A few spots that stand by themselves, and how lettering in them may lean. */
export interface LeaningPlace {
  readonly spots: readonly Edges[]
  /** Degrees clockwise on the page, none of them level or upright. */
  readonly angle: number
}

/** Spots of one figure stand no further apart either way, in heights of digits. */
const APART = 0.5
/** A figure has so many spots at least and at most, and is no longer than so many heights. */
const [FEWEST, MOST, LONGEST] = [2, 16, 14]
/** Round it so much is looked at as well, in heights: lines near it may lead astray, and do so in one of two boxes only. */
const ROOMS = [0.25, 0.6]
/** From level or upright lettering differs by more than this, degrees. */
const LEANS = 7
/** A way that is less likely is not tried, nor one that is so near a likelier one, nor more than so many. */
const [LEAST, NEAR, MOST_ANGLES] = [0.12, 10, 3]
/** No more places than this are tried, the fullest first: hatching would make thousands. */
const MOST_PLACES = 60

/** Where lettering may stand at an odd angle. @param spots as large as glyphs, that are in no level or upright row */
export function leaningPlaces(picture: GreyPicture, spots: readonly Edges[], high: number): LeaningPlace[] {
  return clustersOf(spots, high).flatMap((cluster) =>
    anglesOf(picture, edgesRound(cluster), high).map((angle) => ({ spots: cluster, angle })),
  )
}

function anglesOf(picture: GreyPicture, { left, top, right, bottom }: Edges, high: number): number[] {
  const ways = ROOMS.flatMap((room) => {
    const [x, y] = [left - room * high, top - room * high]
    return uprightWays(picture, {
      x,
      y,
      width: right - left + 2 * room * high,
      height: bottom - top + 2 * room * high,
    })
  })
  const angles: number[] = []
  for (const { box, weight } of ways.sort((a, b) => b.weight - a.weight)) {
    const off = Math.abs(((((box.angle + 45) % 90) + 90) % 90) - 45)
    if (off < LEANS || weight < LEAST || Math.abs(box.angle) > 90) continue
    if (angles.every((angle) => Math.abs(angle - box.angle) > NEAR)) angles.push(box.angle)
  }
  return angles.slice(0, MOST_ANGLES)
}

function clustersOf(spots: readonly Edges[], high: number): Edges[][] {
  const { rootOf } = neighboursAmong(spots, high, (a, b, across) => {
    const down = Math.max(a.top, b.top) - Math.min(a.bottom, b.bottom)
    return Math.max(across, down) < APART * high
  })
  const clusters = new Map<number, Edges[]>()
  for (const [i, spot] of spots.entries()) clusters.set(rootOf(i), [...(clusters.get(rootOf(i)) ?? []), spot])
  return [...clusters.values()]
    .filter((cluster) => {
      const { left, top, right, bottom } = edgesRound(cluster)
      const long = Math.hypot(right - left, bottom - top)
      return cluster.length >= FEWEST && cluster.length <= MOST && long < LONGEST * high
    })
    .sort((a, b) => b.length - a.length)
    .slice(0, MOST_PLACES)
}
