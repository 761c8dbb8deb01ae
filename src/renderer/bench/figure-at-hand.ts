import type { FigureBox } from '../../contract/readings.ts'
import type { FigureReading } from '../../core/reading/figure-reading.ts'

/** A figure that a box was drawn round. */
export interface FigureAtHand {
  sheet: string
  /** Pixels of the scan. */
  box: FigureBox
  /** Degrees clockwise by which its lettering is turned from level, as a person says; null: that is to be found. */
  angle: number | null
  state:
    | { is: 'being read' }
    | { is: 'read'; reading: FigureReading }
    /** Why not, in a sentence. */
    | { is: 'not read'; sentence: string }
}
