import type { Locator, Page } from 'playwright-core'
import { boxOf } from '../../window/harness/box-of.ts'

type Place = readonly [number, number]

/** What somebody did. A key with Shift or Alt held is one press. */
export interface Gestures {
  clicks: number
  /** Presses of the button that are let go elsewhere. */
  drags: number
  /** Every press that is no letter of what the sheet or the person says. */
  keys: number
  /** Of names, figures, formulas and readings: the same in any window that does not write them by itself. */
  letters: number
  notches: number
}

export const NONE: Gestures = { clicks: 0, drags: 0, keys: 0, letters: 0, notches: 0 }

/** Beside the border of the sheet's box nobody aims, CSS pixels. */
const MARGIN = 24
/** One notch, CSS pixels that the page is told of. */
const NOTCH = 120
/** How far from what is meant a hand comes down, CSS pixels. */
const MISS = 1.2

/** Shares of the sheet's box, those first that lie furthest apart. */
const LOOKED_AT: readonly Place[] = [
  [0.1, 0.1],
  [0.9, 0.9],
  [0.9, 0.1],
  [0.1, 0.9],
  [0.5, 0.5],
  [0.5, 0.1],
  [0.5, 0.9],
  [0.1, 0.5],
  [0.9, 0.5],
  [0.7, 0.3],
  [0.3, 0.7],
]

const apart = (a: Place, b: Place): number => Math.hypot(a[0] - b[0], a[1] - b[1])

/** A hand at mouse and keyboard, which counts what it does. It comes down on the sheet as surely as hands do. */
export class Hand {
  readonly page: Page
  did: Gestures = { ...NONE }
  #noise = 3

  constructor(page: Page) {
    this.page = page
  }

  /** What was done since the last time that it was asked. */
  sinceThen(): Gestures {
    const { did } = this
    this.did = { ...NONE }
    return did
  }

  async press(key: string, times = 1): Promise<void> {
    for (let k = 0; k < times; k++) await this.page.keyboard.press(key)
    this.did.keys += times
  }

  async write(text: string): Promise<void> {
    await this.page.keyboard.type(text)
    this.did.letters += [...text].length
  }

  /** Clicks something, after turning the wheel over what it lies in until it is in sight. */
  async click(what: Locator, scrolled?: Locator): Promise<void> {
    await what.waitFor()
    if (scrolled !== undefined) await this.#bring(what, scrolled)
    const { x, y, width, height } = await boxOf(what)
    await this.#clickAt([x + width / 2, y + height / 2])
  }

  async #bring(what: Locator, scrolled: Locator): Promise<void> {
    for (let k = 0; k < 60; k++) {
      const [item, frame] = [await boxOf(what), await boxOf(scrolled)]
      const below = item.y + item.height - (frame.y + frame.height)
      if (below <= 0 && item.y >= frame.y) return
      await this.page.mouse.move(frame.x + frame.width / 2, frame.y + frame.height / 2)
      await this.page.mouse.wheel(0, below > 0 ? NOTCH : -NOTCH)
      this.did.notches++
      await this.page.waitForTimeout(40)
      await this.page.waitForTimeout(60)
    }
    throw new Error(`${what} does not come in sight.`)
  }

  async #clickAt([x, y]: Place): Promise<void> {
    await this.page.mouse.move(x, y)
    await this.page.mouse.down()
    await this.page.mouse.up()
    this.did.clicks++
  }

  #miss(): number {
    this.#noise = (Math.imul(this.#noise, 1664525) + 1013904223) >>> 0
    return MISS * (this.#noise / 2 ** 31 - 1)
  }

  /** Where places of the scan are seen on the page, and how large: as it lies; a tool must be in hand. */
  async #lens(): Promise<{ at: (place: Place) => Place; zoom: number }> {
    const box = await this.sheet()
    const known: { seen: Place; pixel: Place }[] = []
    for (const [x, y] of LOOKED_AT) {
      const seen: Place = [box.x + x * box.width, box.y + y * box.height]
      await this.page.mouse.move(...seen)
      await this.page.waitForTimeout(40)
      // Beside the sheet the lens is put away, and says what it said last.
      if (!(await this.page.locator('.lens').isVisible())) continue
      const words = (await this.page.locator('.lens-words').textContent()) ?? ''
      const [, px, py] = /(-?[\d.]+), (-?[\d.]+)/.exec(words) ?? []
      if (px === undefined || py === undefined) continue
      known.push({ seen, pixel: [Number(px), Number(py)] })
      const [a, b] = known
      if (a === undefined || b === undefined) continue
      const zoom = apart(a.seen, b.seen) / apart(a.pixel, b.pixel)
      const at = ([i, j]: Place): Place => [
        a.seen[0] + (i - a.pixel[0]) * zoom,
        a.seen[1] + (j - a.pixel[1]) * zoom,
      ]
      return { at, zoom }
    }
    throw new Error('Too little of the sheet is in sight.')
  }

  sheet() {
    return boxOf(this.page.getByRole('application'))
  }

  /** How large the sheet is seen: CSS pixels for a pixel of the scan. */
  async zoom(): Promise<number> {
    return (await this.#lens()).zoom
  }

  async isInSight(places: readonly Place[]): Promise<boolean> {
    const { at } = await this.#lens()
    const box = await this.sheet()
    return places.map(at).every(([x, y]) => inBox([x, y], box))
  }

  /** Picks a place of the scan that is in sight, with a key held or none. */
  async pick(place: Place, held?: string): Promise<void> {
    const { at } = await this.#lens()
    const [x, y] = at(place)
    const seen: Place = [x + this.#miss(), y + this.#miss()]
    if (!inBox(seen, await this.sheet())) throw new Error(`${place} is not in sight, but at ${seen}.`)
    if (held !== undefined) await this.page.keyboard.down(held)
    await this.#clickAt(seen)
    if (held !== undefined) await this.page.keyboard.up(held)
    await this.page.waitForTimeout(120)
  }

  /** Picks by a drag from one place of the scan to another, both in sight. */
  async pickAlong(from: Place, to: Place): Promise<void> {
    const { at } = await this.#lens()
    const [a, b] = [from, to].map((place): Place => {
      const [x, y] = at(place)
      return [x + this.#miss(), y + this.#miss()]
    }) as [Place, Place]
    await this.page.mouse.move(...a)
    await this.page.mouse.down()
    await this.page.mouse.move((a[0] + b[0]) / 2, (a[1] + b[1]) / 2)
    await this.page.mouse.move(...b)
    await this.page.mouse.up()
    this.did.drags++
    await this.page.waitForTimeout(120)
  }

  /** Puts the pointer over a place of the scan, as on the way to pick it: that is no gesture. */
  async over(place: Place): Promise<void> {
    const { at } = await this.#lens()
    await this.page.mouse.move(...at(place))
    await this.page.waitForTimeout(40)
  }

  /** Whether the lens shows a stroke under the pointer, once it says the same for a while. */
  async seesStroke(): Promise<boolean> {
    let [said, still] = ['', 0]
    for (let k = 0; k < 30 && still < 4; k++) {
      await this.page.waitForTimeout(100)
      const words = (await this.page.locator('.lens-words').textContent()) ?? ''
      still = words === said ? still + 1 : 0
      said = words
    }
    return /±/.test(said) && !/by hand/.test(said)
  }

  /** Turns the wheel over a place of the scan. */
  async wheel(place: Place, notches: number): Promise<void> {
    await this.over(place)
    for (let k = 0; k < Math.abs(notches); k++) {
      await this.page.mouse.wheel(0, notches > 0 ? -NOTCH : NOTCH)
      await this.page.waitForTimeout(40)
    }
    this.did.notches += Math.abs(notches)
    await this.page.waitForTimeout(150)
  }

  /** Drags the sheet as with Space held, a key and a drag, until places of the scan lie about the middle of its box. */
  async drag(places: readonly Place[]): Promise<void> {
    for (let k = 0; k < 6; k++) {
      const { at } = await this.#lens()
      const box = await this.sheet()
      const seen = places.map(at)
      if (seen.every((place) => inBox(place, box))) return
      const middle = (i: 0 | 1) => seen.reduce((sum, place) => sum + place[i], 0) / seen.length
      const [mx, my] = [box.x + box.width / 2, box.y + box.height / 2]
      const [halfX, halfY] = [box.width / 2 - MARGIN, box.height / 2 - MARGIN]
      const within = (far: number, half: number) => Math.max(-2 * half, Math.min(2 * half, far))
      const [dx, dy] = [within(mx - middle(0), halfX), within(my - middle(1), halfY)]
      // With the middle button it is the same drag, wherever the keyboard is.
      await this.page.mouse.move(mx - dx / 2, my - dy / 2)
      await this.page.mouse.down({ button: 'middle' })
      await this.page.mouse.move(mx, my)
      await this.page.mouse.move(mx + dx / 2, my + dy / 2)
      await this.page.mouse.up({ button: 'middle' })
      this.did.keys++
      this.did.drags++
      await this.page.waitForTimeout(120)
    }
    throw new Error(`${places} do not come in sight together.`)
  }
}

const inBox = ([x, y]: Place, box: { x: number; y: number; width: number; height: number }): boolean =>
  x > box.x + MARGIN &&
  x < box.x + box.width - MARGIN &&
  y > box.y + MARGIN &&
  y < box.y + box.height - MARGIN
