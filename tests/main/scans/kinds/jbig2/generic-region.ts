import type { Picture } from '../picture.ts'
import { ArithmeticCoder } from './arithmetic-coder.ts'

/** Pixels that a pixel is foreseen from: across and down from it. Source: ITU-T T.88, figure 3, adaptive pixels at their nominal places. */
const NEIGHBOURS: readonly (readonly [number, number])[] = [
  ...[-2, -1, 0, 1, 2].map((across) => [across, -2] as const),
  ...[-3, -2, -1, 0, 1, 2, 3].map((across) => [across, -1] as const),
  ...[-4, -3, -2, -1].map((across) => [across, 0] as const),
]

const ADAPTIVE = [3, -1, -3, -1, 2, -2, -2, -2]

/** Arithmetic code of a bitonal picture by template 0; black is 1. Source: ITU-T T.88, 6.2. */
function codeOf({ width, height, values }: Picture): Buffer {
  const black = (x: number, y: number): number =>
    x < 0 || x >= width || y < 0 ? 0 : 1 - (values[y * width + x] ?? 1)
  const coder = new ArithmeticCoder()
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const context = NEIGHBOURS.reduce((so, [across, down]) => (so << 1) | black(x + across, y + down), 0)
      coder.decide(context, black(x, y))
    }
  }
  return coder.bytes()
}

const long = (...values: number[]): Buffer => {
  const out = Buffer.alloc(values.length * 4)
  values.forEach((value, i) => {
    out.writeUInt32BE(value, i * 4)
  })
  return out
}

const PAGE_INFORMATION = 48
const IMMEDIATE_GENERIC_REGION = 38

const segment = (number: number, type: number, data: Buffer): Buffer =>
  Buffer.concat([long(number), Buffer.from([type, 0, 1]), long(data.length), data])

/** A page of one generic region, as a PDF embeds it: segments without the header of a file. Source: ITU-T T.88, 7.2 to 7.4. */
export function jbig2Page(picture: Picture): Buffer {
  const { width, height } = picture
  const page = Buffer.concat([long(width, height, 0, 0), Buffer.from([0, 0, 0])])
  const region = Buffer.concat([
    long(width, height, 0, 0),
    Buffer.from([0, 0]),
    Buffer.from(Int8Array.from(ADAPTIVE).buffer),
    codeOf(picture),
  ])
  return Buffer.concat([segment(0, PAGE_INFORMATION, page), segment(1, IMMEDIATE_GENERIC_REGION, region)])
}
