import type { Metadata } from 'sharp'
import type { TileKind } from './tile-kind.ts'

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
