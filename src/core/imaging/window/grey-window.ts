/** A part of a scan in grey: one value a pixel, 0 black to 255 white, row by row. */
export interface GreyWindow {
  /** Where its first pixel's outer corner is in the scan, pixels: the centre of that pixel is half a pixel further. */
  left: number
  top: number
  width: number
  height: number
  data: Uint8Array | Float32Array
}
