import type { FoundFigure, PagePlace } from '../../../../contract/readings.ts'
import type { BoxToRead } from '../../../../core/reading/box/box-to-read.ts'
import type { FigureReading } from '../../../../core/reading/figure-reading.ts'
import { type PageFigures, putReading } from '../kept/readings-file.ts'
import type { PageParts } from './page-parts.ts'
import { isDueAgain, type ReadAgain } from './read-again.ts'

/** What is to be done next of a page: a part to be looked at, or boxes to be read. */
export type NextOf = { find: number } | { read: readonly BoxAt[] }

/** A box by the part of the page and its place there. */
export interface BoxAt {
  part: number
  place: number
  box: BoxToRead
}

/** Boxes that are read in one go: whoever waits for a box of their own waits no longer than for these. */
const AT_ONCE = 2

/** More boxes than this are on no part: so an id tells a box of one part from those of others. */
const MOST = 100_000

/** Where the reading of a page stands: what was found and read, what is being done, and what comes next. */
export class FiguresOfPage {
  readonly parts: PageParts
  readonly #figures: PageFigures
  readonly #finding = new Set<number>()
  readonly #reading = new Set<number>()
  /** Boxes that ended what read them. */
  readonly #failed = new Set<number>()
  readonly #alone: BoxAt[] = []
  /** Boxes that ended what read them again: what was read before stays. */
  readonly #notAgain = new Set<number>()

  /** @param figures what was found and read before */
  constructor(parts: PageParts, figures: PageFigures) {
    this.parts = parts
    this.#figures = figures
  }

  /** Boxes that were read, of those that were found. */
  get count(): { done: number; of: number; failed: number } {
    const { boxes, readings } = this.#figures
    const sum = (sizes: number[]): number => sizes.reduce((a, b) => a + b, 0)
    const failed = this.#failed.size
    const done = sum([...readings.values()].map(({ size }) => size)) + failed
    return { done, of: sum([...boxes.values()].map(({ length }) => length)), failed }
  }

  /** Whether every part was looked at. */
  get found(): boolean {
    return this.parts.rows.every((_, part) => this.#figures.boxes.has(part))
  }

  /** Whether nothing is left to be done. */
  get whole(): boolean {
    const { done, of } = this.count
    return this.found && done >= of
  }

  /** Where something is written, whether a figure or not, as it stands on the page. */
  get figures(): FoundFigure[] {
    const all: FoundFigure[] = []
    for (const [part, readings] of this.#figures.readings)
      for (const [place, reading] of readings) all.push(...seen(part, place, reading))
    return all.sort((a, b) => a.id - b.id)
  }

  /**
   * What to do next, which is then under way; undefined: nothing, unless what is under way brings more.
   * @param near what comes first lies nearest to it, pixels of the page; undefined: from above to below
   * @param finds whether parts are looked at before boxes are read
   * @param again what is read again once all is read
   */
  next(near: PagePlace | undefined, finds: boolean, again: ReadAgain): NextOf | undefined {
    const one = this.#alone.pop()
    if (one !== undefined) return this.#begin([one])
    const part = this.#nearestPart(near)
    if (finds && part !== undefined) return this.#look(part)
    const waiting = this.#waiting()
    if (waiting.length === 0) {
      if (part !== undefined) return this.#look(part)
      waiting.push(...this.#due(again))
      if (waiting.length === 0) return undefined
    }
    if (near !== undefined) waiting.sort(nearestTo(near))
    return this.#begin(waiting.slice(0, AT_ONCE))
  }

  foundIn(part: number, boxes: readonly BoxToRead[]): void {
    this.#finding.delete(part)
    this.#figures.boxes.set(part, boxes)
  }

  /** How many doubtful figures are due to be read again, or just being read. */
  left(again: ReadAgain): number {
    const { readings } = this.#figures
    const all = [...readings].flatMap(([part, of]) => [...of.keys()].map((place) => idOf(part, place)))
    return this.#due(again).length + all.filter((id) => this.#reading.has(id)).length
  }

  /**
   * @param knew names of the known figures that it was read by
   * @returns what is to be told of it
   */
  read({ part, place }: BoxAt, reading: FigureReading, knew: readonly string[]): FoundFigure[] {
    this.#reading.delete(idOf(part, place))
    putReading(this.#figures, { part, place }, reading, knew)
    return seen(part, place, reading)
  }

  /** What was under way is to be done again. */
  leave(next: NextOf): void {
    if ('find' in next) this.#finding.delete(next.find)
    else for (const { part, place } of next.read) this.#reading.delete(idOf(part, place))
  }

  /** The reading of boxes ended what read them: each is tried once more by itself, and one alone is given up. */
  endedAt(boxes: readonly BoxAt[]): void {
    const [only] = boxes
    if (only === undefined) return
    if (boxes.length > 1) this.#alone.push(...boxes)
    else {
      this.leave({ read: boxes })
      const before = this.#figures.readings.get(only.part)?.has(only.place) === true
      const gone = before ? this.#notAgain : this.#failed
      gone.add(idOf(only.part, only.place))
    }
  }

  #look(part: number): NextOf {
    this.#finding.add(part)
    return { find: part }
  }

  #begin(boxes: readonly BoxAt[]): NextOf {
    for (const { part, place } of boxes) this.#reading.add(idOf(part, place))
    return { read: boxes }
  }

  /** Boxes that nobody has read or is reading, from above to below. */
  #waiting(): BoxAt[] {
    const { boxes, readings } = this.#figures
    return [...boxes.keys()]
      .sort((a, b) => a - b)
      .flatMap((part) =>
        (boxes.get(part) ?? []).flatMap((box, place) => {
          const id = idOf(part, place)
          const done = readings.get(part)?.has(place) === true
          return done || this.#reading.has(id) || this.#failed.has(id) ? [] : [{ part, place, box }]
        }),
      )
  }

  /** Boxes that were read and are to be read again, from above to below. */
  #due(again: ReadAgain): BoxAt[] {
    const { boxes, readings, knew } = this.#figures
    const due: BoxAt[] = []
    for (const [part, of] of readings)
      for (const [place, reading] of of) {
        const box = boxes.get(part)?.[place]
        const id = idOf(part, place)
        if (box === undefined || this.#reading.has(id) || this.#notAgain.has(id)) continue
        if (isDueAgain(reading, knew.get(part)?.get(place) ?? [], again)) due.push({ part, place, box })
      }
    return due.sort((a, b) => idOf(a.part, a.place) - idOf(b.part, b.place))
  }

  #nearestPart(near: PagePlace | undefined): number | undefined {
    const { level, rows } = this.parts
    const row = near === undefined ? 0 : near.y / 2 ** level
    const off = (part: number): number => {
      const { from = 0, to = 0 } = rows[part] ?? {}
      return Math.max(from - row, row - to, 0)
    }
    const left = [...rows.keys()].filter((part) => !this.#figures.boxes.has(part) && !this.#finding.has(part))
    return left.sort((a, b) => off(a) - off(b) || a - b)[0]
  }
}

const idOf = (part: number, place: number): number => part * MOST + place

/** Rows of a page that are read out of its file at about the same time. */
const BAND = 500

/** What lies in the same rows as a place comes first, for it is read out of the file together; of that the nearest. */
function nearestTo({ x, y }: PagePlace): (a: BoxAt, b: BoxAt) => number {
  const off = ({ box }: BoxAt): [rows: number, far: number] => {
    const [across, down] = [box.x + box.width / 2 - x, box.y + box.height / 2 - y]
    return [Math.round(Math.abs(down) / BAND), Math.hypot(across, down)]
  }
  const known = new Map<BoxAt, [number, number]>()
  const of = (at: BoxAt): [number, number] => {
    const there = known.get(at) ?? off(at)
    known.set(at, there)
    return there
  }
  return (a, b) => of(a)[0] - of(b)[0] || of(a)[1] - of(b)[1]
}

/** A box in which nothing is written is no figure. */
const seen = (part: number, place: number, reading: FigureReading): FoundFigure[] =>
  reading.asRead === '' && reading.text === null ? [] : [{ id: idOf(part, place), reading }]
