import type { PyramidLevel, SheetPictures } from '../../contract/pictures.ts'
import type { Extent } from '../camera/camera.ts'
import { overviewAddress, tileAddress } from './addresses.ts'
import type { LevelInSight, SheetFrame } from './shown-level.ts'
import { coarser, extentInSight, levelStep, type Tile, tileExtent } from './wanted-tiles.ts'

/** A set of pictures of a sheet in one scale: the overview, or one level with its pixels drawn as squares. */
export interface LayerWanted {
  key: string
  /** Finer ones lie over coarser ones. */
  order: number
  /** Pixels of the scan for each pixel of its pictures. */
  step: readonly [across: number, down: number]
  /** Device pixels that each pixel of its pictures is drawn with, before it is zoomed. */
  squares: number
  /** Whether its pixels are seen as squares. */
  sharp: boolean
  pictures: readonly PictureAt[]
}

/** A picture and where it lies on the scan. */
export interface PictureAt {
  address: string
  on: Extent
}

export type Has = (address: string) => boolean

const layerOf = (
  of: PyramidLevel,
  squares: number,
  sharp: boolean,
  pictures: readonly PictureAt[],
): LayerWanted => ({
  key: `${of.level}:${squares}${sharp ? ' sharp' : ''}`,
  order: 100 - of.level,
  step: [levelStep(of), levelStep(of)],
  squares,
  sharp,
  pictures,
})

const overviewLayer = (pictures: SheetPictures): LayerWanted => ({
  key: 'overview',
  order: 0,
  step: [pictures.width / pictures.overview.width, pictures.height / pictures.overview.height],
  squares: 1,
  sharp: false,
  pictures: [
    {
      address: overviewAddress(pictures),
      on: { left: 0, top: 0, right: pictures.width, bottom: pictures.height },
    },
  ],
})

const touches = (a: Extent, b: Extent): boolean =>
  a.left < b.right && a.right > b.left && a.top < b.bottom && a.bottom > b.top

/**
 * What is to stand on the screen for a frame. Once all that is in sight of the wanted level is there, that level alone,
 * with what there is round it. Until then also what was shown before and still is in sight, and coarser pictures under
 * what is missing: nothing is ever blank that was seen before.
 * @param sight null: only the overview can be had
 * @param has whether a picture is there
 * @param now what stands on the screen
 */
export function scanPlan(
  frame: SheetFrame,
  sight: LevelInSight | null,
  has: Has,
  now: readonly LayerWanted[],
): LayerWanted[] {
  const { pictures, camera, box } = frame
  const whole = overviewLayer(pictures)
  const under = has(overviewAddress(pictures)) ? [whole] : []
  if (sight === null) return under
  const { of: level, tiles, around, squares, sharp } = sight
  const at = (tile: Tile, of: PyramidLevel): PictureAt => ({
    address: tileAddress(pictures, tile),
    on: tileExtent(tile, of),
  })
  // Those round it save a wait; with pixels as squares each is many screens, and dear to draw.
  const round = (squares > 1 ? tiles : around).map((tile) => at(tile, level))
  const own = round.filter(({ address }) => has(address))
  const target = layerOf(level, squares, sharp, own)
  const missing = tiles.filter((tile) => !has(tileAddress(pictures, tile)))
  if (missing.length === 0) return [target]
  const layers = new Map<string, LayerWanted>(own.length === 0 ? [] : [[target.key, target]])
  const taken = new Set(own.map(({ address }) => address))
  const add = (layer: LayerWanted): void => {
    const free = layer.pictures.filter(({ address }) => !taken.has(address))
    if (free.length === 0) return
    for (const { address } of free) taken.add(address)
    const before = layers.get(layer.key)?.pictures ?? []
    layers.set(layer.key, { ...layer, pictures: [...before, ...free] })
  }
  const seen = extentInSight(camera, box)
  for (const layer of now) {
    if (layer.key === whole.key) continue
    add({ ...layer, pictures: layer.pictures.filter(({ address, on }) => has(address) && touches(on, seen)) })
  }
  for (const tile of missing) {
    for (const of of pictures.levels.slice(tile.level + 1)) {
      const parent = at(coarser(tile, of.level - tile.level), of)
      if (!has(parent.address)) continue
      if (!taken.has(parent.address)) add(layerOf(of, 1, false, [parent]))
      break
    }
  }
  return [...under, ...layers.values()]
}
