/** A picture blurred by a Gaussian, cut at three sigma; what lies outside it is as its edge. Sigma in pixels. */
export function blurred(from: Float32Array, width: number, height: number, sigma: number): Float32Array {
  const reach = Math.max(1, Math.ceil(3 * sigma))
  const kernel = Float32Array.from({ length: 2 * reach + 1 }, (_, i) =>
    Math.exp(-0.5 * ((i - reach) / sigma) ** 2),
  )
  const sum = kernel.reduce((a, b) => a + b, 0)
  for (let i = 0; i < kernel.length; i++) kernel[i] = (kernel[i] ?? 0) / sum
  const along = new Float32Array(from.length)
  for (let y = 0; y < height; y++) {
    const row = y * width
    for (let x = 0; x < width; x++) {
      let total = 0
      for (let k = -reach; k <= reach; k++) {
        const at = x + k < 0 ? 0 : x + k >= width ? width - 1 : x + k
        total += (from[row + at] ?? 0) * (kernel[k + reach] ?? 0)
      }
      along[row + x] = total
    }
  }
  const down = new Float32Array(from.length)
  for (let y = 0; y < height; y++) {
    const row = y * width
    for (let k = -reach; k <= reach; k++) {
      const at = (y + k < 0 ? 0 : y + k >= height ? height - 1 : y + k) * width
      const weight = kernel[k + reach] ?? 0
      for (let x = 0; x < width; x++) down[row + x] = (down[row + x] ?? 0) + (along[at + x] ?? 0) * weight
    }
  }
  return down
}
