import type { Evidence } from '../../job/model/types.ts'
import type { Coverage } from '../../uncertainty/coverage.ts'
import type { Interval } from '../../uncertainty/interval.ts'
import type { Uncertain } from '../../uncertainty/uncertain.ts'
import type { AnyReason } from '../../words/reason.ts'
import type { Which, WorkOut } from './valuation.ts'

/** A view whose scale nothing checks, or is in doubt. */
export interface UncheckedView {
  view: string
  name: string
  because: AnyReason
}

/** Whether a scale is not only without a check, but spoken against. */
export const isDoubted = ({ because: { code, parts } }: UncheckedView): boolean =>
  code === 'stretch.unlikely' ||
  code === 'unchecked.others-tell-otherwise' ||
  parts['coarse'] === 'contradicts'

/** A piece of evidence, read. Values in mm, mm², radians or a plain number. */
export interface EvaluatedEvidence {
  evidence: Evidence
  /** What the table gives when this is adopted: a clear figure is exact. null: no value. */
  adopted: Uncertain | null
  /** What it is compared by: a figure counts as ± half its last graduation, or its tolerance; a limit has this alone. */
  compared: Uncertain | null
  /** Of what it is compared by; null: no value. */
  coverage: Coverage | null
  /** How both come about; null: no value. */
  workOut: WorkOut | null
  /** What each is between, where first order does not hold and their ± alone would mislead. */
  between?: Partial<Record<Which, Interval>>
  /** In the table's units, exactly, where it was written down exactly. */
  shown?: number
  written: string
  /** A printed figure that is written in feet. */
  feet?: boolean
  /** The tolerance stated for a printed figure, in words. */
  tolerance?: string
  /** It is no value but what the value is at most, or at least. */
  limit?: 'max' | 'min'
  /** A figure that is said not to be drawn to scale. */
  notToScale?: true
  /** What was understood of a figure that a person should know, or is asked about. */
  remarks?: readonly AnyReason[]
  /** Counts by itself: it has a value, is not withdrawn and not doubtful. */
  usable: boolean
  /** The view that it was scaled in, where nothing checks the scale of it or it is in doubt. */
  unchecked?: UncheckedView
  /** Of what is scaled: how much of it moves with a figure, mm, that is a figured size of its view between the same ends. */
  shareOfFigure?: (mm: number) => number
  /** Why it is not used, or what is wrong with it. */
  problem?: AnyReason
}

/** Evidence without a value, and why. */
export const without = (evidence: Evidence, problem: AnyReason): EvaluatedEvidence => ({
  evidence,
  adopted: null,
  compared: null,
  coverage: null,
  workOut: null,
  written: '',
  usable: false,
  problem,
})

/** What was stated or read once: the same numbers in any arithmetic. */
export const asStated =
  (adopted: Uncertain, compared: Uncertain): WorkOut =>
  (which, { arithmetic }) =>
    arithmetic.of(which === 'adopted' ? adopted : compared)
