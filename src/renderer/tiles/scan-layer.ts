import './scan-layer.css'
import type { BoxSize, Camera } from '../camera/camera.ts'
import type { ScanTone } from '../looking/scan-tone.ts'
import { layerMatrix, layerUnit } from './layer-matrix.ts'
import type { LayerWanted, PictureAt } from './scan-plan.ts'

/** The ground of a sheet, to divide its pictures by. */
export interface Ground {
  url: string
  /** Pixels of the scan. */
  width: number
  height: number
}

const pixels = (value: number): string => `${value}px`

/**
 * The pictures of a sheet in one scale, each pixel of them on whole pixels of the screen, in an element that the
 * compositor moves, zooms, turns and mirrors as it is. Aids are drawn into it once and not for each frame.
 */
export class ScanLayer {
  readonly root = document.createElement('div')
  readonly #inner = document.createElement('div')
  readonly #tiles = new Map<string, HTMLElement>()
  /** CSS pixels of the layer for each pixel of the scan. */
  readonly #unit: readonly [number, number]
  #transform = ''
  #tone: ScanTone = { filter: '', lift: null }
  #ground: Ground | null = null
  wanted: LayerWanted

  constructor(wanted: LayerWanted, density: number) {
    this.wanted = wanted
    const { step, squares, sharp, order } = wanted
    this.#unit = layerUnit(step, squares, density)
    this.root.className = 'scan-layer'
    this.root.style.zIndex = String(order)
    if (sharp) this.root.dataset['sharp'] = ''
    this.root.append(this.#inner)
  }

  /** Takes away what is not wanted any more. */
  thin(wanted: LayerWanted): void {
    this.wanted = wanted
    const keep = new Set(wanted.pictures.map(({ address }) => address))
    for (const [address, tile] of this.#tiles) {
      if (keep.has(address)) continue
      tile.remove()
      this.#tiles.delete(address)
    }
  }

  /** Adds what is wanted and not there. */
  fill(imageOf: (address: string) => HTMLImageElement | undefined): void {
    for (const at of this.wanted.pictures) {
      const [image, tile] = [imageOf(at.address), this.#tiles.get(at.address)]
      if (image === undefined || (tile !== undefined && image.parentElement === tile)) continue
      tile?.remove()
      this.#add(at, image)
    }
  }

  #add({ address, on }: PictureAt, image: HTMLImageElement): void {
    const tile = document.createElement('div')
    const [across, down] = this.#unit
    tile.className = 'scan-layer-tile'
    tile.style.left = pixels(on.left * across)
    tile.style.top = pixels(on.top * down)
    tile.style.width = pixels((on.right - on.left) * across)
    tile.style.height = pixels((on.bottom - on.top) * down)
    image.className = 'scan-layer-picture'
    tile.append(image)
    tile.dataset['left'] = String(on.left)
    tile.dataset['top'] = String(on.top)
    this.#tiles.set(address, tile)
    this.#liftTile(tile)
    this.#inner.append(tile)
  }

  #liftTile(tile: HTMLElement): void {
    tile.querySelector('.scan-layer-ground')?.remove()
    const ground = this.#ground
    if (ground === null || this.#tone.lift === null) return
    const image = new Image()
    const [across, down] = this.#unit
    image.className = 'scan-layer-ground'
    image.alt = ''
    image.decoding = 'sync'
    image.src = ground.url
    image.style.left = pixels(-Number(tile.dataset['left']) * across)
    image.style.top = pixels(-Number(tile.dataset['top']) * down)
    image.style.width = pixels(ground.width * across)
    image.style.height = pixels(ground.height * down)
    tile.append(image)
  }

  tone(tone: ScanTone, ground: Ground | null): void {
    if (tone.filter !== this.#tone.filter) this.#inner.style.filter = tone.filter
    const lifts = tone.lift !== this.#tone.lift || ground?.url !== this.#ground?.url
    this.#tone = tone
    this.#ground = ground
    if (!lifts) return
    if (tone.lift === null) delete this.root.dataset['lift']
    else this.root.dataset['lift'] = tone.lift
    for (const tile of this.#tiles.values()) this.#liftTile(tile)
  }

  /** Moves it to where the camera has the scan. */
  place(camera: Camera, box: BoxSize): void {
    const transform = `matrix(${layerMatrix(camera, box, this.#unit).join(',')})`
    if (transform === this.#transform) return
    this.#transform = transform
    this.root.style.transform = transform
  }
}
