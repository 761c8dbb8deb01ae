import { labelOf } from '../../job/ids/label.ts'
import type { Mark } from '../../job/model/types.ts'
import { newSource, type Source } from '../../uncertainty/source.ts'

/** What a budget calls the uncertainty of a mark's picks. */
export const pickingOf = (mark: Mark): string => `picking of ${mark.label ?? labelOf(mark)}`

/** Sources of where a mark was drawn, n of them. */
export function draughtingOf(mark: Mark, n: number): Source[] {
  const label = `draughting of ${mark.label ?? labelOf(mark)}`
  return Array.from({ length: n }, () => newSource(label))
}
