/** OpenCV, a general-purpose library, for comparison: only what the checks need of it. */
import { createRequire } from 'node:module'

type XY = readonly [x: number, y: number]

interface Mat {
  data64F: Float64Array
  delete(): void
}

interface OpenCv {
  Mat: new () => Mat
  CV_64FC2: number
  CV_32FC2: number
  matFromArray(rows: number, columns: number, type: number, values: number[]): Mat
  findHomography(from: Mat, to: Mat): Mat
  getPerspectiveTransform(from: Mat, to: Mat): Mat
  getAffineTransform(from: Mat, to: Mat): Mat
}

type Loading = Partial<OpenCv> & { onRuntimeInitialized?: () => void }

/**
 * Waits until the library is ready. It must not be awaited itself, nor imported by a loader that awaits it:
 * it answers `then` with itself for ever.
 */
async function loaded(): Promise<{ cv: OpenCv }> {
  const library = createRequire(import.meta.url)('@techstark/opencv-js') as Loading
  if (library.Mat === undefined) {
    await new Promise<void>((resolve) => {
      library.onRuntimeInitialized = resolve
    })
  }
  return { cv: library as OpenCv }
}

/** A plane mapping as OpenCV gives it, row by row; 3 × 3. */
export type Homography = readonly number[]

export interface Fits {
  /** Through four points or more, least squares. */
  homography(from: readonly XY[], to: readonly XY[]): Homography
  /** Through exactly four points. OpenCV takes these in single precision. */
  perspective(from: readonly XY[], to: readonly XY[]): Homography
  /** Through exactly three points, in single precision. */
  affine(from: readonly XY[], to: readonly XY[]): Homography
}

export async function openCvFits(): Promise<Fits> {
  const { cv } = await loaded()
  const fitted =
    (type: number, method: (from: Mat, to: Mat) => Mat) =>
    (from: readonly XY[], to: readonly XY[]): Homography => {
      const a = cv.matFromArray(from.length, 1, type, from.flat())
      const b = cv.matFromArray(to.length, 1, type, to.flat())
      const h = method(a, b)
      const out = [...h.data64F]
      for (const mat of [a, b, h]) mat.delete()
      return out.length === 6 ? [...out, 0, 0, 1] : out
    }
  return {
    homography: fitted(cv.CV_64FC2, (a, b) => cv.findHomography(a, b)),
    perspective: fitted(cv.CV_32FC2, (a, b) => cv.getPerspectiveTransform(a, b)),
    affine: fitted(cv.CV_32FC2, (a, b) => cv.getAffineTransform(a, b)),
  }
}

export function through(h: Homography, [x, y]: XY): [number, number] {
  const row = (i: number): number => (h[3 * i] ?? 0) * x + (h[3 * i + 1] ?? 0) * y + (h[3 * i + 2] ?? 0)
  return [row(0) / row(2), row(1) / row(2)]
}
