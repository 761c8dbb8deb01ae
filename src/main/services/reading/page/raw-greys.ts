import type { Sharp } from 'sharp'
import { luminanceOf } from './luminance-of.ts'

/** The greys of a picture of one channel or of three, row by row. */
export async function rawGreys(picture: Sharp): Promise<{ width: number; height: number; data: Uint8Array }> {
  const { data, info } = await picture.raw({ depth: 'uchar' }).toBuffer({ resolveWithObject: true })
  const { width, height, channels } = info
  return { width, height, data: channels === 1 ? data : luminanceOf(data) }
}
