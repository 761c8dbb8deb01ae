/** Luminance of RGB pixels (ITU-R BT.709 weights of the values as stored), as the window takes it of colour scans. */
export function luminanceOf(rgb: Uint8Array): Uint8Array {
  const grey = new Uint8Array(rgb.length / 3)
  for (let i = 0, at = 0; i < grey.length; i++, at += 3)
    grey[i] = Math.round(0.2126 * (rgb[at] ?? 0) + 0.7152 * (rgb[at + 1] ?? 0) + 0.0722 * (rgb[at + 2] ?? 0))
  return grey
}
