import { theHost } from '../../bench/the-host.ts'
import { PictureCache } from './picture-cache.ts'
import { PictureLoader } from './picture-loader.ts'

const MEGABYTE = 1024 * 1024

/** Every picture of the window that is decoded. */
export const pictureCache = new PictureCache<ImageBitmap>(96 * MEGABYTE)

export const pictureLoader = new PictureLoader<ImageBitmap>(pictureCache, async (address, signal) => {
  const response = await fetch(theHost().pictureUrl(address), { signal })
  if (!response.ok) throw new Error(`The picture ${address} could not be had (${response.status}).`)
  return createImageBitmap(await response.blob())
})

/** What goes first: the lens, then what is in sight, then crops on cards, then what may be wanted next. */
export const RANK = { lens: 0, sight: 1, crop: 2, ring: 3 } as const
