import type { Evidence } from '../../job/model/types.ts'
import type { Uncertain } from '../../uncertainty/uncertain.ts'

/** A piece of evidence, read. Values in mm, mm², radians or a plain number. */
export interface Weighed {
  evidence: Evidence
  /** What the table gives when this is adopted: a clear figure is exact. null: no value. */
  adopted: Uncertain | null
  /** What it is compared by: a figure counts as ± half its last graduation, or its tolerance. */
  compared: Uncertain | null
  /** In the table's units, exactly, where it was written down exactly. */
  shown?: number
  written: string
  /** A printed figure that is written in feet. */
  feet?: boolean
  /** The tolerance stated for a printed figure, in words. */
  tolerance?: string
  /** Counts by itself: it has a value, is not withdrawn and not doubtful. */
  usable: boolean
  problem?: string
}

/** Evidence without a value, and why. */
export const without = (evidence: Evidence, problem: string): Weighed => ({
  evidence,
  adopted: null,
  compared: null,
  written: '',
  usable: false,
  problem,
})
