import type { Evidence, Job } from '../../core/job/model/types.ts'
import { firstPlaces } from '../../core/job/picks/picks-of.ts'

/** A part of a sheet, in pixels. */
interface SheetPart {
  sheet: string
  box: [x: number, y: number, width: number, height: number]
}

/** What is left free round marks and figures, as a share of their larger side, and pixels at least. */
const MARGIN = 0.1
const LEAST_MARGIN = 24

/**
 * The part of a sheet that evidence comes from, with a margin: the box of a figure, or what holds all marks of a
 * measure. null: it stands on no sheet.
 */
export function evidencePart(evidence: Evidence, job: Job): SheetPart | null {
  if (evidence.basis === 'printed') {
    if (evidence.sheet === undefined || evidence.box === undefined) return null
    const [x, y, width, height] = evidence.box
    return { sheet: evidence.sheet, box: widened(x, y, x + width, y + height) }
  }
  if (evidence.basis !== 'scaled') return null
  const marks = job.marks.filter(({ id }) => evidence.marks.includes(id))
  const [first] = marks
  if (first === undefined) return null
  const points = marks.flatMap((mark) => [...firstPlaces(mark)])
  const xs = points.map(([x]) => x)
  const ys = points.map(([, y]) => y)
  const [left, top, right, bottom] = [least(xs), least(ys), most(xs), most(ys)]
  return { sheet: first.sheet, box: widened(left, top, right, bottom) }
}

const least = (values: readonly number[]): number => values.reduce((a, b) => Math.min(a, b))
const most = (values: readonly number[]): number => values.reduce((a, b) => Math.max(a, b))

function widened(left: number, top: number, right: number, bottom: number): SheetPart['box'] {
  const margin = Math.max(LEAST_MARGIN, MARGIN * Math.max(right - left, bottom - top))
  return [left - margin, top - margin, right - left + 2 * margin, bottom - top + 2 * margin]
}
