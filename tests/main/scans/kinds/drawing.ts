import { type Picture, picture } from './picture.ts'

/** Odd sizes, so that no row fills its last byte and no strip or tile its last place. */
export const WIDTH = 97
export const HEIGHT = 61

/** Line work as a drawing has: a border, a circle with its centre lines, a slope, hatching and a row of letters. */
export function inkAt(x: number, y: number, width = WIDTH, height = HEIGHT): boolean {
  const border = x === 2 || y === 2 || x === width - 3 || y === height - 3
  const radius = Math.hypot(x - 30, y - 30)
  const circle = radius > 17.2 && radius < 19.4
  const centreLines = (x === 30 && y % 7 !== 0 && y < 56) || (y === 30 && x % 9 !== 0 && x < 56)
  const slope = Math.abs(y - 8 - 0.37 * (x - 52)) < 0.9 && x > 52
  const hatching = x > 62 && x < 84 && y > 34 && y < 50 && (x + y) % 5 === 0
  const letters = y > height - 10 && y < height - 5 && x > 8 && x < width - 8 && (x * 7 + y * 3) % 11 < 3
  return border || circle || centreLines || slope || hatching || letters
}

/** Paper that is yellowed towards a corner, with grain: no two neighbouring pixels need be alike. */
const paperAt = (x: number, y: number): number => 232 - ((x * 3 + y * 5) >> 4) + ((x * 13 + y * 29) % 7)

const greyAt = (x: number, y: number, width: number, height: number): number =>
  inkAt(x, y, width, height) ? 24 + ((x * 5 + y * 11) % 40) : paperAt(x, y)

interface Size {
  width?: number
  height?: number
}

/** 0 is ink, 1 is paper. */
export const bitonalDrawing = ({ width = WIDTH, height = HEIGHT }: Size = {}): Picture =>
  picture({ width, height, samples: 1, bits: 1 }, (x, y) => [inkAt(x, y, width, height) ? 0 : 1])

export const greyDrawing = ({ width = WIDTH, height = HEIGHT }: Size = {}): Picture =>
  picture({ width, height, samples: 1, bits: 8 }, (x, y) => [greyAt(x, y, width, height)])

export const deepGreyDrawing = (): Picture =>
  picture({ width: WIDTH, height: HEIGHT, samples: 1, bits: 16 }, (x, y) => [
    greyAt(x, y, WIDTH, HEIGHT) * 256 + ((x * 31 + y * 17) % 256),
  ])

const colourAt = (x: number, y: number, width: number, height: number): number[] => {
  const grey = greyAt(x, y, width, height)
  const red = inkAt(x, y, width, height) && y > 34
  return [red ? 190 : grey, Math.max(0, grey - 9 - (x % 5)), Math.max(0, grey - 30 + (y % 6))]
}

export const colourDrawing = ({ width = WIDTH, height = HEIGHT }: Size = {}): Picture =>
  picture({ width, height, samples: 3, bits: 8 }, (x, y) => colourAt(x, y, width, height))

export const deepColourDrawing = (): Picture =>
  picture({ width: WIDTH, height: HEIGHT, samples: 3, bits: 16 }, (x, y) =>
    colourAt(x, y, WIDTH, HEIGHT).map((value, band) => value * 256 + ((x * 31 + y * 17 + band * 7) % 256)),
  )

/** Colours as printers have them: cyan, magenta, yellow and black, 0 for none. */
export const printedDrawing = (): Picture =>
  picture({ width: WIDTH, height: HEIGHT, samples: 4, bits: 8 }, (x, y) =>
    inkAt(x, y) ? [20, 30, 10, 200 + ((x + y) % 50)] : [3 + (x % 4), 6 + (y % 5), 18 + ((x + y) % 9), 0],
  )

/** Four colours of a map or a diazo print, as red, green and blue of 8 bits. */
export const INKS: readonly (readonly [number, number, number])[] = [
  [250, 244, 226],
  [22, 30, 44],
  [188, 32, 40],
  [40, 92, 168],
]

/** Places in `INKS`. */
export const indexedDrawing = (): Picture =>
  picture({ width: WIDTH, height: HEIGHT, samples: 1, bits: 8 }, (x, y) => [
    inkAt(x, y) ? (y > 34 ? 2 : 1) : (x * y) % 53 === 0 ? 3 : 0,
  ])

/** The colours that places in `INKS` stand for. */
export const inkedDrawing = (places: Picture): Picture =>
  picture({ ...places, samples: 3 }, (x, y) => INKS[places.values[y * places.width + x] ?? 0] ?? [0, 0, 0])
