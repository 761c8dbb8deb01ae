import type { HandOfSheet } from '../../../../contract/readings.ts'
import type { BoxOfFigure } from '../../../../core/job/figures/figure-box.ts'
import type { KnownFigure } from '../../../../core/reading/box/known-figure.ts'
import { inWords, reason } from '../../words/services-words.ts'

/** Of fewer figures nothing can be learned that another one bears out. */
const FEWEST = 2

export interface SheetHandOf {
  /** The figures of the sheet of which somebody has said what they are, the newest first. */
  known: () => readonly KnownFigure[]
  /** Where figures stand that somebody has taken or dismissed. */
  lookedAt: () => readonly BoxOfFigure[]
}

/** The hand that lettered a sheet, as far as its known figures show it. */
export class SheetHand {
  readonly #of: SheetHandOf
  /** Whether figures are read with it. */
  on = true
  /** How many figures it was learned from that were read with last. */
  #figures: number | undefined

  constructor(of: SheetHandOf) {
    this.#of = of
  }

  /** What figures are read by now; nothing where they are read without it. */
  get known(): readonly KnownFigure[] {
    return this.on ? this.#of.known() : []
  }

  get lookedAt(): readonly BoxOfFigure[] {
    return this.#of.lookedAt()
  }

  /**
   * Something was read.
   * @param figures how many the hand was learned from; 0: it was read as of nobody in particular
   * @param of how many were looked at for that
   */
  heard(figures: number, of: number): void {
    if (this.on) this.#figures = of < FEWEST ? undefined : figures
  }

  get told(): HandOfSheet {
    const known = this.#of.known().length
    return { on: this.on, known, sentence: inWords(this.#reason(known)) }
  }

  #reason(known: number) {
    if (known === 0) return reason('figures.hand-unknown')
    if (!this.on) return reason('figures.hand-off', { known })
    if (known < FEWEST) return reason('figures.hand-of-one')
    if (this.#figures === undefined) return reason('figures.hand-next', { known })
    if (this.#figures === 0) return reason('figures.hand-of-nobody', { known })
    return reason('figures.hand', { known, figures: this.#figures })
  }
}
