import { distanceBetween } from '../../core/geometry/distance-between.ts'
import { type Screen, screen } from '../../core/geometry/frames.ts'

/** What two fingers have done to the sheet since they were last heard of. */
interface FingersStep {
  /** The place on the screen that lay between them. */
  about: Screen
  factor: number
  /** How far the place between them has gone, CSS pixels. */
  by: readonly [x: number, y: number]
}

/**
 * The fingers on the sheet. From the second one on, and until the last is lifted, they move the sheet and enlarge it,
 * and nothing else.
 */
export class Fingers {
  readonly #at = new Map<number, Screen>()
  #several = false

  /** @returns how many are on the sheet */
  down(id: number, at: Screen): number {
    this.#at.set(id, at)
    this.#several ||= this.#at.size > 1
    return this.#at.size
  }

  /** What a finger's way does; null where it is a single one, which does what a mouse does. */
  move(id: number, at: Screen): FingersStep | null {
    const before = this.#at.get(id)
    if (before === undefined || !this.#several) {
      if (before !== undefined) this.#at.set(id, at)
      return null
    }
    const other = [...this.#at].find(([one]) => one !== id)?.[1]
    this.#at.set(id, at)
    if (other === undefined) return { about: at, factor: 1, by: [0, 0] }
    const [was, is] = [middle(before, other), middle(at, other)]
    const wide = distanceBetween(before, other)
    return {
      about: was,
      factor: wide === 0 ? 1 : distanceBetween(at, other) / wide,
      by: [is[0] - was[0], is[1] - was[1]],
    }
  }

  /** @returns whether it was one of several, so that lifting it is no pick */
  up(id: number): boolean {
    const known = this.#at.delete(id)
    const several = known && this.#several
    if (this.#at.size === 0) this.#several = false
    return several
  }
}

const middle = (a: Screen, b: Screen): Screen => screen((a[0] + b[0]) / 2, (a[1] + b[1]) / 2)
