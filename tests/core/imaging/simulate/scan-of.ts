import type { GreyWindow } from '../../../../src/core/imaging/index.ts'
import type { RandomStream } from '../../../../src/core/uncertainty/random.ts'
import { inkOf, type Look } from './look.ts'
import { draw, type Layer, type Picture, type Scene } from './picture.ts'
import { noisy, oneBit, rounded, throughJpeg } from './scan.ts'
import type { Shape } from './shapes.ts'

export interface Scan {
  window: GreyWindow
  /** The same without noise. */
  clean: Picture
}

export interface Drawing {
  width: number
  height: number
  strokes: readonly Shape[]
  stains?: readonly Layer[]
}

/** What a look makes of a drawing, before noise. */
export function cleanScene({ width, height, strokes, stains = [] }: Drawing, look: Look): Scene {
  const { ground, slope, blur } = look
  const layers = strokes.map((shape): Layer => ({ shape, adds: inkOf(look) }))
  return { width, height, ground, slope, strokes: layers, stains, blur }
}

/** The same, drawn. */
export const cleanPicture = (drawing: Drawing, look: Look): Picture => draw(cleanScene(drawing, look))

export async function scanOf(drawing: Drawing, look: Look, random: RandomStream): Promise<Scan> {
  const clean = cleanPicture(drawing, look)
  const window = rounded(noisy(clean, look.noise, random, look.grain))
  if (look.finish === 'jpeg') return { clean, window: await throughJpeg(window) }
  if (look.finish === 'one bit')
    return { clean, window: oneBit(window, look.ground + (look.cut ?? 0.5) * inkOf(look)) }
  return { clean, window }
}
