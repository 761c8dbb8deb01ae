/** OpenCV, a general-purpose library: what a careful engineer would take of it to find strokes. */
import { createRequire } from 'node:module'

export interface Mat {
  data32F: Float32Array
  data64F: Float64Array
  delete(): void
}

export interface OpenCv {
  Mat: new () => Mat
  CV_8UC1: number
  CV_32FC1: number
  CV_32FC2: number
  CV_64FC1: number
  INTER_LINEAR: number
  BORDER_REPLICATE: number
  THRESH_OTSU: number
  DIST_HUBER: number
  DECOMP_QR: number
  matFromArray(rows: number, columns: number, type: number, values: ArrayLike<number>): Mat
  remap(from: Mat, to: Mat, mapX: Mat, mapY: Mat, interpolation: number, border: number): void
  threshold(from: Mat, to: Mat, at: number, most: number, type: number): number
  fitLine(points: Mat, line: Mat, distance: number, parameter: number, radius: number, angle: number): void
  fitEllipse(points: Mat): { center: { x: number; y: number }; size: { width: number; height: number } }
  solve(left: Mat, right: Mat, solution: Mat, method: number): boolean
}

type Loading = Partial<OpenCv> & { onRuntimeInitialized?: () => void }

/** Wrapped, for the library answers `then` with itself for ever and so must not be awaited. */
export async function openCv(): Promise<{ cv: OpenCv }> {
  const library = createRequire(import.meta.url)('@techstark/opencv-js') as Loading
  if (library.Mat === undefined) {
    await new Promise<void>((resolve) => {
      library.onRuntimeInitialized = resolve
    })
  }
  return { cv: library as OpenCv }
}
