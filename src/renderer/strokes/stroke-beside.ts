import type { Pixel } from '../../core/geometry/frames.ts'
import { type FoundStroke, type GreyPicture, greyOfPixel } from '../../core/imaging/index.ts'

/** A place on a stroke and the way across it there. */
interface Across {
  at: Pixel
  normal: readonly [x: number, y: number]
}

/** Places along a stroke that are looked at. */
const PLACES = 24
/** Of a point, so far along its stroke, pixels. */
const ALONG_POINT = 30
/** Inside a circle no more than this share of its radius. */
const INSIDE = 0.6
/** Shares of the stroke's own darkness: so much is another stroke, and between the two there is no more than so much. */
const ANOTHER = 0.4
const GAP = 0.3

/**
 * Whether another stroke runs along a stroke that was found, so near that a hand from far off can't say which is meant.
 * What only crosses it is no such stroke: the middle of all places along it is looked at.
 * @param within pixels of the scan, from middle to middle
 */
export function hasStrokeBeside(grey: GreyPicture, found: FoundStroke, within: number): boolean {
  const places = acrossOf(found)
  if (places.length === 0) return false
  const out = Math.ceil(within)
  // Across a small circle its own other side would be met.
  const inwards = isRound(found) ? Math.min(out, Math.floor(INSIDE * found.radius)) : out
  const seen = Array.from({ length: inwards + out + 1 }, (_, i) =>
    median(places.flatMap((place) => greyAcross(grey, place, i - inwards))),
  )
  const middle = seen[inwards] ?? 0
  const ground = found.shape.dark ? Math.max(...seen) : Math.min(...seen)
  if (ground === middle) return false
  const depth = seen.map((value) => (ground - value) / (ground - middle))
  return isBeside(depth.slice(inwards)) || isBeside(depth.slice(0, inwards + 1).reverse())
}

type Round = Extract<FoundStroke, { kind: 'circle' | 'arc' }>

const isRound = (stroke: FoundStroke): stroke is Round => stroke.kind === 'circle' || stroke.kind === 'arc'

/** Whether a stroke comes after a gap, going out from the middle of one. */
function isBeside(depth: readonly number[]): boolean {
  const gap = depth.findIndex((share) => share < GAP)
  return gap !== -1 && depth.slice(gap).some((share) => share > ANOTHER)
}

function acrossOf(found: FoundStroke): Across[] {
  switch (found.kind) {
    case 'crossing':
      return []
    case 'point': {
      const [dx, dy] = [Math.cos(found.direction), Math.sin(found.direction)]
      return Array.from({ length: PLACES }, (_, i): Across => {
        const along = ALONG_POINT * ((2 * i) / (PLACES - 1) - 1)
        const [x, y] = found.pixel
        return { at: [x + along * dx, y + along * dy] as unknown as Pixel, normal: [-dy, dx] }
      })
    }
    default: {
      const kept = found.profiles.filter((profile) => profile.kept).map(({ centre }) => centre)
      return Array.from({ length: Math.min(PLACES, kept.length) }, (_, i): Across | null => {
        const at = kept[Math.floor((i * kept.length) / PLACES)] ?? kept[0]
        return at === undefined ? null : { at, normal: normalAt(found, at) }
      }).flatMap((place) => place ?? [])
    }
  }
}

function normalAt(
  found: Extract<FoundStroke, { kind: 'line' | 'circle' | 'arc' }>,
  [x, y]: Pixel,
): readonly [number, number] {
  if (found.kind === 'line') {
    const [[ax, ay], [bx, by]] = found.ends
    const length = Math.hypot(bx - ax, by - ay)
    return [-(by - ay) / length, (bx - ax) / length]
  }
  const [dx, dy] = [x - found.centre[0], y - found.centre[1]]
  const far = Math.hypot(dx, dy)
  return [dx / far, dy / far]
}

/** The grey of the pixel so far across a stroke; none where nothing is there of the scan. */
function greyAcross(grey: GreyPicture, { at, normal }: Across, far: number): number[] {
  const value = greyOfPixel(grey, Math.floor(at[0] + far * normal[0]), Math.floor(at[1] + far * normal[1]))
  return Number.isNaN(value) ? [] : [value]
}

function median(values: number[]): number {
  const sorted = values.sort((a, b) => a - b)
  return sorted[sorted.length >> 1] ?? 0
}
