/** A grey picture, row by row from the top, 0 black to 255 white. */
export interface DrawnGrey {
  readonly width: number
  readonly height: number
  readonly pixels: Uint8Array
}
