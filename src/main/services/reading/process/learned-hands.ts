import { LRUCache } from 'lru-cache'
import { type GlyphReader, readerOfHand } from '../../../../core/reading/box/glyph-reader.ts'
import { glyphsOfKnownFigure, type KnownFigure } from '../../../../core/reading/box/known-figure.ts'
import { handOfFigures } from '../../../../core/reading/hand/hand-of-figures.ts'
import type { NamedGlyph } from '../../../../core/reading/hand/learn-hand.ts'
import type { PixelSize } from '../../scans/page/pixel-size.ts'
import type { GreyPage } from '../page/grey-page.ts'
import { windowAbout } from '../page/window-about.ts'

/**
 * Known figures that are looked at in one order, each about as long as a figure is read: whoever waits for a box waits no
 * longer than for these, and a hand of many is known some orders later.
 */
const LOOKS = 4
/** Figures whose glyphs are kept, of all pages; a few kilobytes each. */
const KEPT = 600

/** Of which page, and how it is got. */
export interface PageOfHand {
  /** Tells it from others. */
  key: string
  page: GreyPage
  size: PixelSize
}

/** A reader that knows a hand as far as it could be told. */
export interface ReaderOfHand {
  reader: GlyphReader
  /** The places of the known figures that were looked at, whether they taught anything or not. */
  heard: number[]
  /** How many figures the hand was learned from; 0 where it is read as of nobody in particular. */
  figures: number
}

/** The hands of pages, learned of their known figures: each figure is looked at once. */
export class LearnedHands {
  readonly #glyphs = new LRUCache<string, readonly NamedGlyph[]>({ max: KEPT })
  /** The hand of the order before. */
  #last: { key: string; learned: Omit<ReaderOfHand, 'heard'> } | undefined

  /**
   * A reader of the hand of some figures of a page.
   * @param trained the reader as it was trained
   * @param known those that matter most first
   * @throws Error when the page can't be read
   */
  async readerOf(
    trained: GlyphReader,
    { key, page, size }: PageOfHand,
    known: readonly KnownFigure[],
  ): Promise<ReaderOfHand> {
    let looks = 0
    const heard: { place: number; id: string; glyphs: readonly NamedGlyph[] }[] = []
    for (const [place, { box, text }] of known.entries()) {
      const id = JSON.stringify([key, box, text])
      let glyphs = this.#glyphs.get(id)
      if (glyphs === undefined && looks < LOOKS) {
        looks++
        glyphs = glyphsOfKnownFigure(trained, await page.greys(windowAbout(box, size), 0), { box, text })
        this.#glyphs.set(id, glyphs)
      }
      if (glyphs !== undefined) heard.push({ place, id, glyphs })
    }
    const of = JSON.stringify(heard.map(({ id }) => id))
    if (this.#last?.key !== of)
      this.#last = {
        key: of,
        learned: learn(
          trained,
          heard.map(({ glyphs }) => glyphs),
        ),
      }
    return { ...this.#last.learned, heard: heard.map(({ place }) => place) }
  }
}

function learn(
  trained: GlyphReader,
  figures: readonly (readonly NamedGlyph[])[],
): Omit<ReaderOfHand, 'heard'> {
  const telling = figures.filter(({ length }) => length > 0)
  const hand = handOfFigures(telling)
  return { reader: readerOfHand(trained, hand), figures: hand === undefined ? 0 : telling.length }
}
