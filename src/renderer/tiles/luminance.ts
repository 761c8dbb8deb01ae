/** Luminance of RGBA pixels (ITU-R BT.709 weights of the values as stored); of grey ones the grey itself. */
export function luminance(rgba: ArrayLike<number>): Uint8Array {
  const grey = new Uint8Array(rgba.length / 4)
  for (let i = 0, at = 0; i < grey.length; i++, at += 4) {
    grey[i] = Math.round(
      0.2126 * (rgba[at] as number) + 0.7152 * (rgba[at + 1] as number) + 0.0722 * (rgba[at + 2] as number),
    )
  }
  return grey
}

/** Whether most of a picture is nearer to black than to white, as a blueprint is, by the mean of its greys. */
export const isMostlyDark = (greys: Uint8Array): boolean =>
  greys.reduce((sum, grey) => sum + grey, 0) / greys.length < 128
