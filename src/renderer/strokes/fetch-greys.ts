import type { GreyTile } from '../tiles/picture-forms.ts'
import { keptPictures, pictureLoader, RANK } from '../tiles/the-pictures.ts'

const waiting = new Map<string, () => void>()

/**
 * Has the greys of pictures fetched.
 * @param who another call by the same name takes this one's place
 * @returns the greys by their addresses, once all are there; null when another took its place, or it was given up
 */
export function fetchGreys(
  who: string,
  addresses: readonly string[],
): Promise<ReadonlyMap<string, GreyTile> | null> {
  waiting.get(who)?.()
  // Held here, so that none is let go again while others are waited for.
  const greys = new Map<string, GreyTile>()
  const take = (address: string): void => {
    const grey = keptPictures.get(address, 'grey')
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
    const endListening = pictureLoader.listen((address, form) => {
      if (form !== 'grey' || !missing.has(address)) return
      take(address)
      if (greys.has(address)) missing.delete(address)
      if (missing.size > 0) return
      end(greys)
      pictureLoader.want(who, RANK.lens, 'grey', [])
    })
    waiting.set(who, () => end(null))
    // In place of what was wanted before: what both want stays on its way.
    pictureLoader.want(who, RANK.lens, 'grey', [...missing])
    if (missing.size === 0) end(greys)
  })
}

/** Waits no longer for what somebody asked for. */
export function giveUp(who: string): void {
  waiting.get(who)?.()
  pictureLoader.want(who, RANK.lens, 'grey', [])
}
