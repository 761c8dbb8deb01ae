import { element } from '../../linear-algebra/element.ts'
import { fromBase64 } from './base64.ts'
import type { CellMap } from './cell-map.ts'
import { type Convolution, type ConvolutionShape, convolve, placeConvolution } from './convolution.ts'
import { fromHalfFloats } from './half-floats.ts'
import { Kernel } from './kernel.ts'
import { addressOf, type Plane, takePlane } from './plane.ts'
import type { NetworkWeights } from './weights-form.ts'

/** Ink over a field: 1 full ink, 0 bare ground, row by row. */
export interface InkField {
  readonly width: number
  readonly height: number
  readonly ink: Float32Array
}

/**
 * The network that sees glyphs: convolutions all through, so that a field may have any size. Trained by
 * `training/reading`, which says how, and what it is worth.
 */
export class GlyphNetwork {
  readonly #kernel = new Kernel()
  readonly #stem: Convolution
  readonly #down: Convolution
  readonly #blocks: readonly (readonly [Convolution, Convolution])[]
  readonly #head: Convolution
  readonly #weights: NetworkWeights

  constructor(weights: NetworkWeights) {
    this.#weights = weights
    const numbers = fromHalfFloats(fromBase64(weights.numbers))
    const shapes = shapesOf(weights)
    const asked = shapes.reduce((sum, shape) => sum + weightsIn(shape) + shape.channelsOut, 0)
    if (asked !== numbers.length)
      throw new RangeError(
        `The network's weights are ${numbers.length} numbers, but its layers ask for ${asked}.`,
      )
    let read = 0
    const layers = shapes.map((shape) => {
      const bias = read + weightsIn(shape)
      const layer = placeConvolution(
        this.#kernel,
        shape,
        numbers.subarray(read, bias),
        numbers.subarray(bias, bias + shape.channelsOut),
      )
      read = bias + shape.channelsOut
      return layer
    })
    this.#stem = element(layers, 0)
    this.#down = element(layers, 1)
    this.#blocks = weights.dilations.map((_, i) => [element(layers, 2 + 2 * i), element(layers, 3 + 2 * i)])
    this.#head = element(layers, layers.length - 1)
  }

  /** What each cell of a field holds. */
  look(field: InkField): CellMap {
    const kernel = this.#kernel
    const mark = kernel.mark
    try {
      return this.#look(field)
    } finally {
      kernel.releaseTo(mark)
    }
  }

  #look({ width, height, ink }: InkField): CellMap {
    const kernel = this.#kernel
    const { stem, trunk, dilations, glyphs } = this.#weights
    const [h, w] = [Math.ceil(height / 4), Math.ceil(width / 4)]
    const reach = [0, 1].map((i) => Math.max(...dilations.flat().map((d) => d[i] ?? 0))) as [number, number]

    // All room first: what is taken later may move the memory.
    const fours = takePlane(kernel, [2 * h, 2 * w, 4], [1, 1])
    const halves = takePlane(kernel, [2 * h, 2 * w, stem], [1, 1])
    const a = takePlane(kernel, [h, w, trunk], reach)
    const b = takePlane(kernel, [h, w, trunk], reach)
    const c = takePlane(kernel, [h, w, trunk], reach)
    const out = takePlane(kernel, [h, w, 2 * (glyphs.length + 5)], [0, 0])

    this.#putInk(fours, { width, height, ink })
    convolve(kernel, this.#stem, fours, halves)
    this.#rectify(halves)
    convolve(kernel, this.#down, halves, a)
    this.#rectify(a)
    let [x, y, z] = [a, b, c]
    for (const [first, second] of this.#blocks) {
      convolve(kernel, first, x, y)
      this.#rectify(y)
      convolve(kernel, second, y, z)
      for (let row = 0; row < h; row++)
        kernel.loops.addAndRectify(addressOf(z, row, 0), addressOf(x, row, 0), w * trunk)
      ;[x, z] = [z, x]
    }
    convolve(kernel, this.#head, x, out)
    const numbers = kernel.numbers(out.at, h * w * out.channels).slice()
    const traits = new Float32Array(h * w * trunk)
    for (let row = 0; row < h; row++)
      traits.set(kernel.numbers(addressOf(x, row, 0), w * trunk), row * w * trunk)
    return { rows: h, columns: 2 * w, channels: glyphs.length + 5, numbers, features: trunk, traits }
  }

  /** Four pixels of a square become the four channels of one place: upper left, upper right, lower left, lower right. */
  #putInk(plane: Plane, { width, height, ink }: InkField): void {
    const numbers = this.#kernel.numbers(plane.at, 0)
    const all = new Float32Array(numbers.buffer)
    for (let y = 0; y < height; y++) {
      let to = addressOf(plane, y >> 1, 0) / 4 + (y & 1) * 2
      for (let x = 0, from = y * width; x < width; x++, from++) {
        all[to] = ink[from] ?? 0
        to += x & 1 ? 3 : 1
      }
    }
  }

  #rectify(plane: Plane): void {
    for (let y = 0; y < plane.height; y++)
      this.#kernel.loops.rectify(addressOf(plane, y, 0), plane.width * plane.channels)
  }
}

const weightsIn = ({ size, channelsIn, channelsOut }: ConvolutionShape): number =>
  size ** 2 * channelsIn * channelsOut

/** The layers in order. */
function shapesOf({ stem, trunk, dilations, glyphs }: NetworkWeights): ConvolutionShape[] {
  const near = [1, 1] as const
  return [
    { channelsIn: 4, channelsOut: stem, size: 3, dilation: near, stride: 1 },
    { channelsIn: stem, channelsOut: trunk, size: 3, dilation: near, stride: 2 },
    ...dilations
      .flat()
      .map((dilation) => ({ channelsIn: trunk, channelsOut: trunk, size: 3, dilation, stride: 1 }) as const),
    { channelsIn: trunk, channelsOut: 2 * (glyphs.length + 5), size: 1, dilation: near, stride: 1 },
  ]
}
