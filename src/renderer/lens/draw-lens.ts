import { HAND_SIGMA } from '../../core/job/from-picks/mark-by-hand.ts'
import { aidsOf, useBench } from '../bench/bench-store.ts'
import { toScreen } from '../camera/camera.ts'
import { cameraOf, cameras } from '../camera/camera-store.ts'
import { isShownDark } from '../looking/scan-tone.ts'
import { inksFor } from '../overlay/inks.ts'
import { edgeWanted, useHowToPick } from '../picking/how-to-pick.ts'
import { markWithUse, placeInWords } from '../picking/pick-names.ts'
import { pickQuality } from '../picking/pick-quality.ts'
import { wanted } from '../picking/picks.ts'
import { pointer } from '../picking/pointer-store.ts'
import { seenFrom } from '../strokes/edge-sides.ts'
import { underPointer } from '../strokes/under-pointer.ts'
import { overviewAddress, tileAddress } from '../tiles/addresses.ts'
import { drawFrom, finestThere } from '../tiles/draw-from.ts'
import { lensSource } from '../tiles/lens-source.ts'
import { isDark, keptPictures, pictureLoader, RANK } from '../tiles/the-pictures.ts'
import { tilesOver } from '../tiles/wanted-tiles.ts'
import { drawLensLines, LENS_SIZE, type LensInks } from './lens-lines.ts'
import { LENS_PIXELS, LENS_ZOOM, lensExtent, lensTurn, profilesAt, turnAboutMiddle } from './lens-picture.ts'
import { drawSection, SECTION_HEIGHT, SECTION_WIDTH } from './lens-section.ts'
import { drawLensStroke } from './lens-strokes.ts'
import { lensWords } from './lens-words.ts'

const GLASS = LENS_PIXELS * LENS_ZOOM
/** The lens goes to the other side when the pointer comes so near to it, CSS pixels. */
const NEAR = 60

/** The elements that the lens is made of. */
export interface LensParts {
  frame: HTMLDivElement
  picture: HTMLCanvasElement
  lines: HTMLCanvasElement
  section: HTMLCanvasElement
  place: HTMLSpanElement
  sigma: HTMLSpanElement
  note: HTMLSpanElement
}

/** Draws the neighbourhood of the pointer, or hides the lens where there is none. */
export function drawLens(parts: LensParts): void {
  const bench = useBench.getState()
  const { pixel, by } = pointer.getState()
  const pictures = bench.sheet === null ? undefined : bench.pictures[bench.sheet]
  const camera = cameraOf(bench.sheet)
  const onSheet =
    pixel !== null &&
    pictures !== undefined &&
    pixel[0] >= 0 &&
    pixel[1] >= 0 &&
    pixel[0] <= pictures.width &&
    pixel[1] <= pictures.height
  // Once all is picked only the keys that move the last pick want it.
  const isWanted = wanted(bench.picks) !== null || by === 'cross'
  parts.frame.hidden = !onSheet || camera === undefined || !isWanted
  if (!onSheet || camera === undefined || !isWanted) {
    pictureLoader.want('lens', RANK.lens, 'bitmap', [])
    return
  }
  keepAside(parts.frame, toScreen(camera, cameras.getState().box, pixel)[0])
  const shown = lensExtent(pixel)
  const overview = overviewAddress(pictures)
  const tiles = pictures.progress.state === 'ready' ? tilesOver(shown, 0, pictures) : []
  const addresses = [...tiles.map((tile) => tileAddress(pictures, tile)), overview]
  pictureLoader.want('lens', RANK.lens, 'bitmap', addresses)
  const level = finestThere(shown, pictures)
  const hold = lensTurn(camera)
  const density = window.devicePixelRatio || 1
  const aids = aidsOf(bench, bench.sheet)
  const scan = (to: OffscreenCanvasRenderingContext2D | CanvasRenderingContext2D): void =>
    drawFrom(to, shown, level, pictures)
  const glass = contextOf(parts.picture, GLASS, GLASS, density)
  const source = lensSource(pictures, aids, shown, scan)
  if (glass !== null) {
    glass.clearRect(0, 0, GLASS, GLASS)
    glass.imageSmoothingEnabled = false
    turnAboutMiddle(glass, hold, GLASS)
    glass.scale(LENS_ZOOM, LENS_ZOOM)
    glass.translate(LENS_PIXELS / 2 - pixel[0], LENS_PIXELS / 2 - pixel[1])
    if (source !== null) glass.drawImage(source.picture, source.left, source.top)
  }
  const profiles = profilesAt(pixel, hold, scan)
  const inks = lensInks(isShownDark(isDark(overview), aids))
  const above = contextOf(parts.lines, LENS_SIZE, LENS_SIZE, density)
  const { now } = underPointer.getState()
  if (above !== null) {
    drawLensLines(above, profiles, inks)
    if (now.state === 'found') drawLensStroke(above, now.found, pixel, hold, inks)
  }
  const section = contextOf(parts.section, SECTION_WIDTH, SECTION_HEIGHT, density)
  parts.section.hidden = now.state !== 'found'
  if (section !== null) drawSection(section, now.state === 'found' ? now.found.section : null, inks)
  const quality = pickQuality(pointer.getState().by, camera.zoom, pictures)
  const coarse = coarseNote(level, pictures.width, overview, quality.sigma)
  const { near, takesOld } = pointer.getState()
  const words = lensWords(now, quality, coarse, useHowToPick.getState(), {
    from: seenFrom(camera),
    edge: edgeWanted(wanted(bench.picks), useHowToPick.getState()),
    old: { called: near === null ? null : markWithUse(near, bench.opened?.job), taken: takesOld },
  })
  parts.place.textContent = placeInWords(pixel)
  parts.sigma.textContent = words.sure
  parts.note.textContent = words.note
}

function coarseNote(level: number | null, width: number, overview: string, sigma: number): string {
  if (level === 0) return sigma > HAND_SIGMA ? 'Go closer to pick finer.' : ''
  if (level !== null) return `One pixel here is ${2 ** level} of the scan.`
  const there = keptPictures.get(overview, 'bitmap')
  return there === undefined
    ? 'The picture is on its way.'
    : `One pixel here is ${Math.max(1, Math.round(width / there.width))} of the scan.`
}

/** The side that the pointer is not on; it changes only when the pointer comes near. */
function keepAside(frame: HTMLElement, x: number): void {
  const width = cameras.getState().box.width
  const reach = LENS_SIZE + NEAR
  if (x < reach) frame.dataset['side'] = 'right'
  else if (x > width - reach) delete frame.dataset['side']
}

function contextOf(
  canvas: HTMLCanvasElement,
  width: number,
  height: number,
  density: number,
): CanvasRenderingContext2D | null {
  const device = Math.round(width * density)
  if (canvas.width !== device) {
    canvas.width = device
    canvas.height = Math.round(height * density)
  }
  const context = canvas.getContext('2d')
  context?.setTransform(density, 0, 0, density, 0, 0)
  return context
}

function lensInks(dark: boolean): LensInks {
  const style = getComputedStyle(document.documentElement)
  const token = (name: string): string => style.getPropertyValue(`--${name}`)
  const over = inksFor(dark)
  return {
    ink: token('ink'),
    soft: token('rule-strong'),
    act: token('prussian'),
    cross: over.ink,
    ground: over.ground,
  }
}
