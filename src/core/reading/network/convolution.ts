import type { Kernel } from './kernel.ts'
import { addressOf, type Plane } from './plane.ts'

/** What the weights of a layer say: as they are kept, rows × columns × channels in × channels out. */
export interface ConvolutionShape {
  readonly channelsIn: number
  /** A multiple of 8. */
  readonly channelsOut: number
  /** Rows and columns of the window, 1 or 3. */
  readonly size: 1 | 3
  /** How far its rows and its columns lie apart. */
  readonly dilation: readonly [number, number]
  readonly stride: 1 | 2
}

/** A layer in the kernel's memory. */
export interface Convolution extends ConvolutionShape {
  /** Columns that lie together, and so are multiplied in one. */
  readonly together: number
  readonly weights: number
  readonly bias: number
}

const PANEL = 8

/** Puts a layer into the kernel's memory, in panels of eight channels. */
export function placeConvolution(
  kernel: Kernel,
  shape: ConvolutionShape,
  weights: Float32Array,
  bias: Float32Array,
): Convolution {
  const { size, channelsIn, channelsOut, dilation } = shape
  const together = dilation[1] === 1 ? size : 1
  const k = together * channelsIn
  const blocks = (size * size) / together
  const at = kernel.take(weights.length)
  const packed = kernel.numbers(at, weights.length)
  let to = 0
  for (let block = 0; block < blocks; block++)
    for (let panel = 0; panel < channelsOut; panel += PANEL)
      for (let row = 0; row < k; row++) {
        const from = (block * k + row) * channelsOut + panel
        packed.set(weights.subarray(from, from + PANEL), to)
        to += PANEL
      }
  const biasAt = kernel.take(bias.length)
  kernel.numbers(biasAt, bias.length).set(bias)
  return { ...shape, together, weights: at, bias: biasAt }
}

/** Convolves one plane into another, whose margin stays zero. Its source's margin reaches as far as the window does. */
export function convolve(kernel: Kernel, layer: Convolution, from: Plane, to: Plane): void {
  const { loops } = kernel
  const { channelsIn, channelsOut, size, stride, together, dilation } = layer
  const [apartY, apartX] = dilation
  const half = (size - 1) / 2
  const k = together * channelsIn
  const block = k * channelsOut * 4
  for (let y = 0; y < to.height; y++) {
    const row = addressOf(to, y, 0)
    loops.spread(row, layer.bias, to.width, channelsOut)
    let weights = layer.weights
    for (let i = 0; i < size; i++)
      for (let j = 0; j < size; j += together) {
        const source = addressOf(from, y * stride + (i - half) * apartY, (j - half) * apartX)
        loops.multiply(source, stride * channelsIn, weights, row, channelsOut, to.width, channelsOut, k)
        weights += block
      }
  }
}
