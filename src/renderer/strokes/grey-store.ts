import { PictureCache } from '../tiles/picture-cache.ts'
import { pictureCache, pictureLoader, RANK } from '../tiles/the-pictures.ts'
import { type GreyTile, luminance } from './grey-tiles.ts'

const MEGABYTE = 1024 * 1024

/** Counted at four bytes a pixel, and kept at one. */
const greys = new PictureCache<GreyTile>(128 * MEGABYTE)

/** The grey values of a picture that has come; undefined while it has not. */
export function greyOf(address: string): GreyTile | undefined {
  const before = greys.get(address)
  if (before !== undefined) return before
  const picture = pictureCache.get(address)
  if (picture === undefined) return undefined
  const { width, height } = picture
  const context = new OffscreenCanvas(width, height).getContext('2d', { willReadFrequently: true })
  if (context === null) return undefined
  context.drawImage(picture, 0, 0)
  const data = luminance(context.getImageData(0, 0, width, height).data)
  const grey: GreyTile = { width, height, data, close: () => undefined }
  greys.put(address, grey)
  return grey
}

const waiting = new Map<string, () => void>()

/**
 * Has pictures fetched and made grey.
 * @param who another call by the same name takes this one's place
 * @returns true once all are there; false when another took its place, or it was given up
 */
export function greysThere(who: string, addresses: readonly string[]): Promise<boolean> {
  waiting.get(who)?.()
  const missing = new Set(addresses.filter((address) => greyOf(address) === undefined))
  return new Promise((resolve) => {
    const end = (there: boolean): void => {
      endListening()
      waiting.delete(who)
      resolve(there)
    }
    const endListening = pictureLoader.listen((address) => {
      if (missing.has(address) && greyOf(address) !== undefined) missing.delete(address)
      if (missing.size > 0) return
      end(true)
      pictureLoader.want(who, RANK.lens, [])
    })
    waiting.set(who, () => end(false))
    // In place of what was wanted before: what both want stays on its way.
    pictureLoader.want(who, RANK.lens, [...missing])
    if (missing.size === 0) end(true)
  })
}

/** Waits no longer for what somebody asked for. */
export function giveUp(who: string): void {
  waiting.get(who)?.()
  pictureLoader.want(who, RANK.lens, [])
}
