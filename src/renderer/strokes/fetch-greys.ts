import type { KeptPictures } from '../tiles/kept-pictures.ts'
import type { GreyTile, PictureForms } from '../tiles/picture-forms.ts'
import type { PictureLoader } from '../tiles/picture-loader.ts'
import { keptPictures, pictureLoader, RANK } from '../tiles/the-pictures.ts'

/** Where pictures are kept, and what fetches them. */
interface From {
  kept: KeptPictures<PictureForms>
  loader: PictureLoader<PictureForms>
}

const OF_THE_WINDOW: From = { kept: keptPictures, loader: pictureLoader }

const waiting = new Map<string, () => void>()

/**
 * Has the greys of pictures fetched.
 * @param who another call by the same name takes this one's place
 * @returns the greys by their addresses, once all are there; null when another took its place, or it was given up
 */
export function fetchGreys(
  who: string,
  addresses: readonly string[],
  { kept, loader }: From = OF_THE_WINDOW,
): Promise<ReadonlyMap<string, GreyTile> | null> {
  waiting.get(who)?.()
  // Held here, so that none is let go again while others are waited for.
  const greys = new Map<string, GreyTile>()
  const take = (address: string): void => {
    const grey = kept.get(address, 'grey')
    if (grey !== undefined) greys.set(address, grey)
  }
  for (const address of addresses) take(address)
  const missing = new Set(addresses.filter((address) => !greys.has(address)))
  return new Promise((resolve) => {
    const end = (all: ReadonlyMap<string, GreyTile> | null): void => {
      endListening()
      waiting.delete(who)
      resolve(all)
    }
    const endListening = loader.listen((address, form) => {
      if (form !== 'grey' || !missing.has(address)) return
      take(address)
      if (greys.has(address)) missing.delete(address)
      loader.want(who, RANK.lens, 'grey', [...missing])
      if (missing.size === 0) end(greys)
    })
    waiting.set(who, () => end(null))
    // In place of what was wanted before: what both want stays on its way.
    loader.want(who, RANK.lens, 'grey', [...missing])
    if (missing.size === 0) end(greys)
  })
}

/** Waits no longer for what somebody asked for. */
export function giveUp(who: string, { loader }: From = OF_THE_WINDOW): void {
  waiting.get(who)?.()
  loader.want(who, RANK.lens, 'grey', [])
}
