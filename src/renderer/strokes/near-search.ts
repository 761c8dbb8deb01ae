import { TILE } from '../../contract/pictures.ts'
import { algebraicCircle } from '../../core/geometry/algebraic-circle.ts'
import { type Pixel, pixel } from '../../core/geometry/frames.ts'
import { farFrom } from '../overlay/geometry-on-screen.ts'
import type { Tile } from '../tiles/wanted-tiles.ts'
import type { Search } from './search.ts'

/** What is looked at on either side of where a stroke may lie, pixels: see `windowFor`. */
const BESIDE = 60
/** Three picks steer a circle less surely. */
const ENLARGED = 2.5

/** How far a place is from where a stroke is looked for, pixels. */
function farFromSearch({ as, rough }: Search): (place: Pixel) => number {
  if ((as === 'circle' || as === 'arc') && rough.length >= 3) {
    try {
      const { centre, radius } = algebraicCircle(rough)
      return ([x, y]) => Math.abs(Math.hypot(x - centre[0], y - centre[1]) - radius)
    } catch {
      return () => 0
    }
  }
  return (place) => farFrom(place, rough)
}

/** Of the tiles that a window lies on, those that the search looks at: along the stroke, not beside it. */
export function tilesNear(search: Search, tiles: readonly Tile[]): Tile[] {
  const far = farFromSearch(search)
  const within = ENLARGED * search.reach + BESIDE + (TILE / 2) * Math.SQRT2
  return tiles.filter(({ column, row }) => far(pixel((column + 0.5) * TILE, (row + 0.5) * TILE)) <= within)
}
