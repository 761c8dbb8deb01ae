import type { Metadata, Sharp, SharpOptions } from 'sharp'

/** Only what reads scans may be used of the library, whatever a file claims to be. */
const LOADERS = ['VipsForeignLoadJpeg', 'VipsForeignLoadPng', 'VipsForeignLoadTiff', 'VipsForeignLoadWebp']

let prepared: Promise<typeof import('sharp').default> | undefined

/** The library of pictures, kept to the kinds of scan and without a cache of its own. */
export function pictureLibrary(): Promise<typeof import('sharp').default> {
  prepared ??= import('sharp').then(({ default: sharp }) => {
    sharp.cache(false)
    sharp.block({ operation: ['VipsForeignLoad'] })
    sharp.unblock({ operation: LOADERS })
    return sharp
  })
  return prepared
}

const STRICT: SharpOptions = { failOn: 'error', limitInputPixels: false }

/** A page of a picture file, from 1, read from top to bottom; every fault of the file is an error. */
export async function openRaster(path: string, page: number, more: SharpOptions = {}): Promise<Sharp> {
  const sharp = await pictureLibrary()
  return sharp(path, { ...STRICT, sequentialRead: true, page: page - 1, ...more })
}

/** What the head of a page says; undefined when the library can't read it. */
export async function headOf(path: string, page: number): Promise<Metadata | undefined> {
  try {
    return await (await openRaster(path, page)).metadata()
  } catch {
    return undefined
  }
}
