import type { Shape } from './shapes.ts'

/** A picture without noise: grey values, row by row, unrounded. The centre of its first pixel is (0.5, 0.5). */
export interface Picture {
  width: number
  height: number
  data: Float64Array
}

/** Something laid on the ground. */
export interface Layer {
  shape: Shape
  /** What it adds to the grey value where it covers: below 0 for ink darker than its ground. */
  adds: number
}

export interface Scene {
  width: number
  height: number
  /** Grey value of the ground in the middle of the picture, and how much it changes per pixel. */
  ground: number
  slope: readonly [number, number]
  /** Ink: where shapes overlap they count once. */
  strokes: readonly Layer[]
  /** Stains add to what is there. */
  stains: readonly Layer[]
  blur: number
}

/** @param only which pixels are drawn, row by row: those that are 0 here are 0; all unless given */
export function draw(
  { width, height, ground, slope, strokes, stains, blur }: Scene,
  only?: Uint8Array,
): Picture {
  const data = new Float64Array(width * height)
  const shapes = strokes.map((s) => s.shape)
  const adds = strokes[0]?.adds ?? 0
  for (let row = 0; row < height; row++) {
    for (let column = 0; column < width; column++) {
      if (only?.[row * width + column] === 0) continue
      const [x, y] = [column + 0.5, row + 0.5]
      let clear = 1
      for (const shape of shapes) clear *= 1 - shape(x, y, blur)
      let value = ground + slope[0] * (x - width / 2) + slope[1] * (y - height / 2) + adds * (1 - clear)
      for (const stain of stains) value += stain.adds * stain.shape(x, y, blur)
      data[row * width + column] = value
    }
  }
  return { width, height, data }
}
