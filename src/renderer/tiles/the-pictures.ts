import type { Ink } from '../../core/imaging/index.ts'
import { theHost } from '../bench/the-host.ts'
import { KeptPictures } from './kept-pictures.ts'
import { PICTURE_FORMS, type PictureForms } from './picture-forms.ts'
import { PictureLoader } from './picture-loader.ts'

const MEGABYTE = 1024 * 1024

/** So much of what is kept may stand on the screen, bytes. Mostly the browser keeps it as it came, a tenth of this. */
export const FOR_THE_SCREEN = 192 * MEGABYTE
/** The rest is for the lens, for crops on cards and for what a search looks at. */
const IN_ALL = FOR_THE_SCREEN + 48 * MEGABYTE

/**
 * So many are fetched at once for the screen, and so many for all else. The host may keep each waiting until it is made,
 * and a browser holds six connections to a host: one is its messages', and one at least is to be free for what a person
 * does.
 */
const AT_ONCE = 2

async function fetched(address: string, signal: AbortSignal): Promise<Blob> {
  const response = await fetch(theHost().pictureUrl(address), { signal })
  if (!response.ok) throw new Error(`The picture ${address} could not be had (${response.status}).`)
  return response.blob()
}

/** The pictures of this window. */
export const keptPictures = new KeptPictures<PictureForms>(IN_ALL, PICTURE_FORMS)

export const pictureLoader = new PictureLoader<PictureForms>(keptPictures, fetched, {
  most: AT_ONCE,
  lane: (form) => (form === 'image' ? 'screen' : 'other'),
})

/** What goes first: the lens, then what is in sight, then crops on cards, then what may be wanted next. */
export const RANK = { lens: 0, sight: 1, crop: 2, ring: 3 } as const

/** Whether a scan is light on dark, by its overview; until that has come it is taken for dark on light. */
export const isDark = (overview: string): boolean => keptPictures.get(overview, 'tone')?.dark ?? false

/** Whether the strokes of a scan are dark or light, by its overview; null until that has come, or where it does not show it. */
export const inkOf = (overview: string): Ink | null => keptPictures.get(overview, 'tone')?.ink ?? null
