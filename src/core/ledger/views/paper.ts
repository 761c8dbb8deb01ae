import { PER_CENT } from '../../job/model/per-cent.ts'
import type { Sheet } from '../../job/model/types.ts'
import { NORMAL_95, NORMAL_99 } from '../../uncertainty/distributions.ts'
import { measured, type Uncertain } from '../../uncertainty/uncertain.ts'

/**
 * How much more paper shrinks or swells one way than the other, standard, as a share of a length. Common practice, no
 * source: makers state a tenth to four tenths of a per cent one way more than the other for one change of moisture,
 * and old prints were made wet.
 */
const DEFAULT_PAPER = 0.005

/** Standard uncertainty of the stretch of a sheet, as far as nothing on it tells; a share of a length. */
export function paperOf(sheet: Sheet): number {
  const stated = sheet.paper === undefined ? null : PER_CENT.exec(sheet.paper)
  return stated === null ? DEFAULT_PAPER : Number(stated[1]) / 100
}

/** The stretch of a sheet of which nothing is known but that it is paper; the same for all its views. */
export const paperStretch = (sheet: Sheet): Uncertain =>
  measured(0, paperOf(sheet), `paper of ${sheet.title}`)

/**
 * Whether paper seldom stretches so much: not once in twenty.
 * @param u and paper: standard uncertainties of the stretch as it was found, and as paper has it; shares
 */
export const isSeldom = (stretch: number, u: number, paper: number): boolean =>
  Math.abs(stretch) > NORMAL_95 * Math.hypot(u, paper)

/** Whether it does so not once in a hundred, so that a misread figure is the likelier reason. */
export const isBeyondPaper = (stretch: number, u: number, paper: number): boolean =>
  Math.abs(stretch) > NORMAL_99 * Math.hypot(u, paper)
