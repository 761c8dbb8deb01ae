import { theHost } from '../bench/the-host.ts'
import { PictureCache } from './picture-cache.ts'
import { PictureLoader } from './picture-loader.ts'
import { ScreenPicture } from './screen-picture.ts'

const MEGABYTE = 1024 * 1024
/**
 * So many are fetched at once, of each kind. The host may keep each waiting until it is made, and a browser holds six
 * connections to a host: one is its messages', and one at least is to be free for what a person does.
 */
const AT_ONCE = 2

async function fetched(address: string, signal: AbortSignal): Promise<Blob> {
  const response = await fetch(theHost().pictureUrl(address), { signal })
  if (!response.ok) throw new Error(`The picture ${address} could not be had (${response.status}).`)
  return response.blob()
}

/** Pictures that are decoded, for what draws from them: the lens, crops on cards, what reads greys. */
export const pictureCache = new PictureCache<ImageBitmap>(64 * MEGABYTE)

export const pictureLoader = new PictureLoader<ImageBitmap>(
  pictureCache,
  async (address, signal) => createImageBitmap(await fetched(address, signal)),
  AT_ONCE,
)

/** Pictures that stand on the screen or stood there lately. Mostly they are kept as they came, about a tenth of this. */
export const screenCache = new PictureCache<ScreenPicture>(192 * MEGABYTE)

export const screenLoader = new PictureLoader<ScreenPicture>(
  screenCache,
  async (address, signal) => ScreenPicture.of(await fetched(address, signal)),
  AT_ONCE,
)

/** What goes first: the lens, then what is in sight, then crops on cards, then what may be wanted next. */
export const RANK = { lens: 0, sight: 1, crop: 2, ring: 3 } as const
