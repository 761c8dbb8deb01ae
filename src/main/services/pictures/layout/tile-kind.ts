import type { Metadata } from 'sharp'
import { z } from 'zod'

/** How the tiles of a page are kept. */
export const tileKindSchema = z.strictObject({
  /** `png` keeps every grey value; `jpeg` comes near, and is for colour only. */
  type: z.enum(['png', 'jpeg']),
  /** Whether the tiles of full size have the very values of the scan. */
  exact: z.boolean(),
})

export type TileKind = z.infer<typeof tileKindSchema>

/**
 * Grey scans, one-bit ones among them, are kept without loss: strokes are fitted on these pixels. One with more than 8
 * bits is brought down to 8 by scaling, so it comes near only. Colour is kept as JPEG, and so is grey that lets
 * something shine through.
 */
export function tileKind({
  space,
  channels,
  depth,
}: Pick<Metadata, 'space' | 'channels' | 'depth'>): TileKind {
  const grey = channels === 1 && (space === 'b-w' || space === 'grey16')
  return grey ? { type: 'png', exact: depth === 'uchar' } : { type: 'jpeg', exact: false }
}

/** Level 1 is quicker than JPEG and than no compression, since less is written; a noisy scan gains little by more. */
const PNG_EFFORT = 1
const JPEG_QUALITY = 92

export const PNG = { compressionLevel: PNG_EFFORT } as const
export const JPEG = { quality: JPEG_QUALITY, chromaSubsampling: '4:4:4' } as const
