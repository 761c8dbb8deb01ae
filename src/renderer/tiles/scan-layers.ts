import type { SheetPictures } from '../../contract/pictures.ts'
import type { BoxSize, Camera } from '../camera/camera.ts'
import type { ScanTone } from '../looking/scan-tone.ts'
import { type Ground, ScanLayer } from './scan-layer.ts'
import type { LayerWanted } from './scan-plan.ts'

/** The scan on the screen: a layer for each scale that is shown, coarser ones under finer ones. */
export class ScanLayers {
  readonly #host: HTMLElement
  readonly #layers = new Map<string, ScanLayer>()
  #of = ''
  #density = 0
  #tone: ScanTone = { filter: '', lift: null }
  #ground: Ground | null = null

  constructor(host: HTMLElement) {
    this.#host = host
  }

  /** What stands there now. */
  get shown(): LayerWanted[] {
    return [...this.#layers.values()].map(({ wanted }) => wanted)
  }

  /** Whatever is there of another scan, or for another screen, goes. */
  begin({ sheet, version }: SheetPictures, density: number): void {
    const of = `${sheet} ${version}`
    if (of === this.#of && density === this.#density) return
    this.clear()
    this.#of = of
    this.#density = density
  }

  show(plan: readonly LayerWanted[], imageOf: (address: string) => HTMLImageElement | undefined): void {
    const keep = new Map(plan.map((wanted) => [wanted.key, wanted]))
    for (const [key, layer] of this.#layers) {
      const wanted = keep.get(key)
      if (wanted !== undefined) layer.thin(wanted)
      else {
        layer.root.remove()
        this.#layers.delete(key)
      }
    }
    for (const wanted of plan) {
      const there = this.#layers.get(wanted.key)
      const layer = there ?? new ScanLayer(wanted, this.#density)
      layer.tone(this.#tone, this.#ground)
      layer.fill(imageOf)
      if (there === undefined) {
        this.#layers.set(wanted.key, layer)
        this.#host.append(layer.root)
      }
    }
  }

  tone(tone: ScanTone, ground: Ground | null): void {
    this.#tone = tone
    this.#ground = ground
    for (const layer of this.#layers.values()) layer.tone(tone, ground)
  }

  place(camera: Camera, box: BoxSize): void {
    for (const layer of this.#layers.values()) layer.place(camera, box)
  }

  clear(): void {
    for (const { root } of this.#layers.values()) root.remove()
    this.#layers.clear()
    this.#of = ''
  }
}
