import type { Density } from '../../page/density.ts'
import { areaOf, type Box, boxOf, type PdfMatrix } from './matrix.ts'
import type { PageContent, PaintedPicture } from './page-content.ts'
import { type Turn, turnOf } from './turn.ts'

/** A picture's place among the pixels of the page. */
export interface Placed {
  picture: PaintedPicture
  turn: Turn
  left: number
  top: number
  /** Pixels, turned. */
  width: number
  height: number
}

/** A page that is nothing but a scan, in one picture or in bands. */
export interface ScannedPage {
  width: number
  height: number
  density: Density
  placed: Placed[]
}

const POINTS_PER_INCH = 72

/** How much of the page a scan must cover, and how far it may reach beyond it, as shares. */
const COVERS = 0.95
const BEYOND = 0.02

/** How well bands must fit together: share of resolution, and pixels. */
const SAME_RESOLUTION = 0.01
const FITS = 0.35

/** The scan that a page is nothing but; undefined when it is something else, or more. @param paper in 1/72 inch */
export function scannedPage(
  { pictures, more }: PageContent,
  paper: { width: number; height: number },
): ScannedPage | undefined {
  if (more || pictures.length === 0) return undefined
  const boxes = pictures.map(({ at }) => boxOf(at))
  const whole = boxes.reduce(union)
  if (!isThePage(whole, paper)) return undefined
  const turns = pictures.map(turnOf)
  const [turn] = turns
  const [first] = pictures
  const [firstBox] = boxes
  if (turn === undefined || first === undefined || firstBox === undefined) return undefined
  const density = densityOf(first, turn, firstBox)
  const placed: Placed[] = []
  for (const [i, picture] of pictures.entries()) {
    const [mine, box] = [turns[i], boxes[i]]
    if (mine === undefined || box === undefined) return undefined
    if (pictures.length > 1 && (picture.stencil || !isAlike(density, densityOf(picture, mine, box), picture)))
      return undefined
    const left = ((box.left - whole.left) * density.x) / POINTS_PER_INCH
    const top = ((box.top - whole.top) * density.y) / POINTS_PER_INCH
    if (Math.abs(left - Math.round(left)) > FITS || Math.abs(top - Math.round(top)) > FITS) return undefined
    placed.push({
      picture,
      turn: mine,
      left: Math.round(left),
      top: Math.round(top),
      ...sizeOf(picture, mine),
    })
  }
  const width = Math.max(...placed.map((one) => one.left + one.width))
  const height = Math.max(...placed.map((one) => one.top + one.height))
  const covered = placed.reduce((sum, one) => sum + one.width * one.height, 0)
  // Bands that lie side by side fill the whole, and none lies on another.
  if (covered !== width * height) return undefined
  const across = (width * POINTS_PER_INCH) / (whole.right - whole.left)
  const down = (height * POINTS_PER_INCH) / (whole.bottom - whole.top)
  return { width, height, density: { x: across, y: down }, placed }
}

const union = (a: Box, b: Box): Box => ({
  left: Math.min(a.left, b.left),
  top: Math.min(a.top, b.top),
  right: Math.max(a.right, b.right),
  bottom: Math.max(a.bottom, b.bottom),
})

function isThePage(box: Box, { width, height }: { width: number; height: number }): boolean {
  const inside = {
    left: Math.max(0, box.left),
    top: Math.max(0, box.top),
    right: Math.min(width, box.right),
    bottom: Math.min(height, box.bottom),
  }
  const beyond = Math.max(
    -box.left / width,
    -box.top / height,
    box.right / width - 1,
    box.bottom / height - 1,
  )
  return areaOf(inside) >= COVERS * width * height && beyond <= BEYOND
}

const sizeOf = ({ width, height }: PaintedPicture, { across }: Turn): { width: number; height: number } =>
  across ? { width: height, height: width } : { width, height }

function densityOf(picture: PaintedPicture, turn: Turn, box: Box): Density {
  const { width, height } = sizeOf(picture, turn)
  return {
    x: (width * POINTS_PER_INCH) / (box.right - box.left),
    y: (height * POINTS_PER_INCH) / (box.bottom - box.top),
  }
}

/** A band of few rows tells its resolution only roughly: half a pixel either way. */
function isAlike(one: Density, other: Density, { width, height }: PaintedPicture): boolean {
  const most = SAME_RESOLUTION + 0.5 / Math.min(width, height)
  return Math.abs(other.x / one.x - 1) <= most && Math.abs(other.y / one.y - 1) <= most
}

/** The finest resolution among pictures that cover much of a page, dots per inch; undefined when none does. */
export function finestPicture(pictures: readonly PaintedPicture[], pageArea: number): number | undefined {
  const covered = pictures.reduce((sum, { at }) => sum + areaOf(boxOf(at)), 0)
  if (covered < pageArea / 2) return undefined
  const finest = Math.max(...pictures.map(({ at, width, height }) => resolution(at, width, height)))
  return Number.isFinite(finest) && finest > 0 ? finest : undefined
}

const resolution = ([a, b, c, d]: PdfMatrix, width: number, height: number): number =>
  POINTS_PER_INCH * Math.max(width / Math.hypot(a, b), height / Math.hypot(c, d))
