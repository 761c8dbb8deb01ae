import type { Mark } from '../../job/model/types.ts'
import type { Assessment } from '../assessment/assessment.ts'
import { readingCautions } from './reading-cautions.ts'
import { scatterCautions } from './scatter-cautions.ts'
import type { TableView } from './table.ts'

/** What a person should know of this job before using its table. */
export function jobCautions(assessment: Assessment, views: readonly TableView[]): string[] {
  return [
    ...[...assessment.views.values()].flatMap((v) => v.caution ?? []),
    ...scatterCautions(assessment.features.values()),
    ...offPageCautions(assessment),
    ...readingCautions(assessment.job),
    ...views.flatMap((v) => (v.problem === undefined ? [] : [`View "${v.name}": ${v.problem}`])),
  ]
}

/** A pick may stand on the very edge of the page, and a pixel beside it. */
const EDGE = 1

/** Names every used mark that does not lie on its page. */
function offPageCautions({ job, features }: Assessment): string[] {
  const pages = new Map(job.sheets.map((s) => [s.id, s.scan]))
  const marks = new Map(job.marks.map((m): [string, Mark] => [m.id, m]))
  const cautions: string[] = []
  for (const { mark, points } of features.values()) {
    const page = pages.get(marks.get(mark)?.sheet ?? '')
    if (page === undefined) continue
    const off = points.some(
      ([x, y]) => x < -EDGE || y < -EDGE || x > page.width + EDGE || y > page.height + EDGE,
    )
    if (off) {
      cautions.push(`Mark ${mark} lies off its page of ${page.width} × ${page.height} pixels: pick it again.`)
    }
  }
  return cautions
}
