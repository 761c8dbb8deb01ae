import { type BoxSize, type Camera, type CameraMatrix, matrixOf } from '../camera/camera.ts'

/** From the pixels of a layer of pictures to the screen, CSS pixels both. */
export function layerMatrix(
  camera: Camera,
  box: BoxSize,
  [across, down]: readonly [number, number],
): CameraMatrix {
  const [a, b, c, d, e, f] = matrixOf(camera, box)
  return [a / across, b / across, c / down, d / down, e, f]
}

/**
 * CSS pixels of a layer for each pixel of the scan, across and down.
 * @param step pixels of the scan for each pixel of its pictures
 * @param squares device pixels across each pixel of its pictures
 * @param density device pixels for each CSS pixel
 */
export const layerUnit = (
  [across, down]: readonly [number, number],
  squares: number,
  density: number,
): readonly [number, number] => [squares / density / across, squares / density / down]
