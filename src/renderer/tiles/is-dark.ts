const SAMPLES = 24
const known = new Map<string, boolean>()

/** Whether a scan is light on dark, as a blueprint is, by the mean of its overview. */
export function isDark(address: string, overview: ImageBitmap | undefined): boolean {
  const before = known.get(address)
  if (before !== undefined) return before
  const context = new OffscreenCanvas(SAMPLES, SAMPLES).getContext('2d', { willReadFrequently: true })
  if (overview === undefined || context === null) return false
  context.drawImage(overview, 0, 0, SAMPLES, SAMPLES)
  const { data } = context.getImageData(0, 0, SAMPLES, SAMPLES)
  let sum = 0
  for (let i = 0; i < data.length; i += 4) sum += greyAt(data, i)
  const dark = sum / (data.length / 4) < 128
  known.set(address, dark)
  return dark
}

/** Luma of a pixel, 0 to 255. Rec. ITU-R BT.601. */
export const greyAt = (data: Uint8ClampedArray, i: number): number =>
  0.299 * (data[i] ?? 0) + 0.587 * (data[i + 1] ?? 0) + 0.114 * (data[i + 2] ?? 0)
