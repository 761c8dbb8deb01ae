import { LENS_PIXELS, LENS_ZOOM, type Profiles } from './lens-picture.ts'

/** CSS pixels. */
const GLASS = LENS_PIXELS * LENS_ZOOM
const STRIP = 48
const AIR = 4
const FREE = 6

export const LENS_SIZE = GLASS + STRIP

/** Colours of the lens, of the window's theme. */
export interface LensInks {
  ink: string
  soft: string
  act: string
  /** Of the cross over the picture, and of what is laid under it. */
  cross: string
  ground: string
}

type Context = CanvasRenderingContext2D

/** Draws the cross over the picture, and the grey profiles under and beside it: dark is far from the picture. */
export function drawLensLines(context: Context, profiles: Profiles | null, inks: LensInks): void {
  context.clearRect(0, 0, LENS_SIZE, LENS_SIZE)
  const middle = GLASS / 2
  const cross = (): void => {
    context.beginPath()
    for (const [from, to] of [
      [0, middle - FREE],
      [middle + FREE, GLASS],
    ] as const) {
      context.moveTo(from, middle)
      context.lineTo(to, middle)
      context.moveTo(middle, from)
      context.lineTo(middle, to)
    }
    context.stroke()
  }
  context.setLineDash([])
  context.globalAlpha = 0.6
  context.strokeStyle = inks.ground
  context.lineWidth = 3
  cross()
  context.globalAlpha = 1
  context.strokeStyle = inks.cross
  context.lineWidth = 1
  cross()
  context.strokeStyle = inks.soft
  context.strokeRect(0.5, 0.5, GLASS - 1, GLASS - 1)
  if (profiles === null) return
  const [wx, wy] = profiles.within
  drawProfile(context, profiles.row, wx, inks, ([along, deep]) => [along, GLASS + deep])
  drawProfile(context, profiles.column, wy, inks, ([along, deep]) => [GLASS + deep, along])
}

/** One profile as steps a pixel wide, in line with the pixels in the picture. */
function drawProfile(
  context: Context,
  greys: readonly number[],
  within: number,
  inks: LensInks,
  place: (at: [along: number, deep: number]) => [number, number],
): void {
  const deep = (grey: number): number => AIR + (STRIP - 2 * AIR) * (1 - grey / 255)
  const start = (0.5 - within) * LENS_ZOOM
  const clip = (along: number): number => Math.min(GLASS, Math.max(0, along))
  context.beginPath()
  greys.forEach((grey, i) => {
    const from = clip(start + i * LENS_ZOOM)
    const to = clip(start + (i + 1) * LENS_ZOOM)
    if (i === 0) context.moveTo(...place([from, deep(grey)]))
    else context.lineTo(...place([from, deep(grey)]))
    context.lineTo(...place([to, deep(grey)]))
  })
  context.strokeStyle = inks.ink
  context.lineWidth = 1.25
  context.stroke()
  context.beginPath()
  context.moveTo(...place([GLASS / 2, AIR / 2]))
  context.lineTo(...place([GLASS / 2, STRIP]))
  context.strokeStyle = inks.act
  context.setLineDash([3, 3])
  context.lineWidth = 1
  context.stroke()
  context.setLineDash([])
}
