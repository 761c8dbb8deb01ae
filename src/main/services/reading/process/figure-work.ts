import type { BoxToRead } from '../../../../core/reading/box/box-to-read.ts'
import type { GlyphReader } from '../../../../core/reading/box/glyph-reader.ts'
import { readBox } from '../../../../core/reading/box/read-box.ts'
import { IS_FIGURE } from '../../../../core/reading/finding/figure-chance.ts'
import { findFigures } from '../../../../core/reading/finding/find-figures.ts'
import type { SeenWord } from '../../../../core/reading/labels/seen-word.ts'
import type { GreyPage } from '../page/grey-page.ts'
import { openGreyPage } from '../page/open-grey-page.ts'
import type { PageSource } from '../page/page-source.ts'
import { windowAbout } from '../page/window-about.ts'
import type { BoxesRead, FigureOrder, FigureTask } from './figure-protocol.ts'
import type { LearnedHands } from './learned-hands.ts'

/** Rows beyond those whose figures are wanted that are looked at as well: no lettering is higher. */
const OVERLAP = 160

type TaskOf<D extends FigureTask['do']> = Extract<FigureTask, { do: D }>

/** What figures are read with. */
interface Reader {
  trained: GlyphReader
  hands: LearnedHands
}

/** Does what a process that reads figures is told to, one order after another. */
export class FigureWork {
  #reader: Promise<Reader> | undefined
  /** The page of the order before, with what was kept of it. */
  #page: { key: string; page: GreyPage } | undefined

  /** @throws Error when the page can't be read */
  async does({ page, task }: FigureOrder): Promise<BoxToRead[] | BoxesRead | SeenWord[]> {
    switch (task.do) {
      case 'find':
        return this.#find(page, task)
      case 'read':
        return this.#read(page, task)
      case 'words': {
        const { readWords } = await import('../words/read-words.ts')
        return readWords(await this.#open(page).page.greys(task.area, task.level), 2 ** task.level)
      }
    }
  }

  async #read(source: PageSource, { boxes, context, known }: TaskOf<'read'>): Promise<BoxesRead> {
    const { key, page } = this.#open(source)
    this.#reader ??= loadReader()
    const of = { key, page, size: source.size }
    const { trained, hands } = await this.#reader
    const { reader, heard, figures } = await hands.readerOf(trained, of, known)
    const readings: BoxesRead['readings'] = []
    for (const box of boxes) {
      const picture = await page.greys(windowAbout(box, source.size), 0)
      readings.push(readBox(reader, picture, box, context))
    }
    return { readings, heard, hand: figures }
  }

  async #find(source: PageSource, { level, rows, context }: TaskOf<'find'>): Promise<BoxToRead[]> {
    const side = 2 ** level
    const width = Math.ceil(source.size.width / side)
    const height = Math.ceil(source.size.height / side)
    const top = Math.max(0, rows.from - OVERLAP)
    const area = { left: 0, top, width, height: Math.min(height, rows.to + OVERLAP) - top }
    this.#reader ??= loadReader()
    const found = findFigures(
      (await this.#reader).trained,
      await this.#open(source).page.greys(area, level),
      {
        context,
      },
    )
    // What lies across two parts is found in both, and belongs to the one that has its middle.
    const own = found.filter(({ y, height }) => y + height / 2 >= rows.from && y + height / 2 < rows.to)
    return own
      .filter(({ chance }) => chance >= IS_FIGURE)
      .map(({ x, y, width, height, angle, digitHeight }) => ({
        x: x * side,
        y: y * side,
        width: width * side,
        height: height * side,
        angle,
        digitHeight: digitHeight * side,
      }))
  }

  #open(source: PageSource): { key: string; page: GreyPage } {
    const key = JSON.stringify(source)
    if (this.#page?.key !== key) this.#page = { key, page: openGreyPage(source) }
    return this.#page
  }
}

/** The weights are a megabyte of text: they are loaded when something is read. */
async function loadReader(): Promise<Reader> {
  const [{ glyphReader }, { LearnedHands }] = await Promise.all([
    import('../../../../core/reading/box/glyph-reader.ts'),
    import('./learned-hands.ts'),
  ])
  return { trained: glyphReader(), hands: new LearnedHands() }
}
