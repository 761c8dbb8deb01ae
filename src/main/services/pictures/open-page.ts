import type { Sharp } from 'sharp'

/** Paper, behind whatever a scan leaves transparent. */
export const PAPER = '#ffffff'

/**
 * A page of a scan, to be made pictures of: its pixels as they are stored (a camera's turn flag is not applied),
 * read from top to bottom, in 8 bits of sRGB on white.
 * @param page from 1
 */
export async function openPage(path: string, page: number): Promise<Sharp> {
  const { default: sharp } = await import('sharp')
  return sharp(path, {
    failOn: 'error',
    sequentialRead: true,
    limitInputPixels: false,
    page: page - 1,
  })
    .flatten({ background: PAPER })
    .toColourspace('srgb')
}
