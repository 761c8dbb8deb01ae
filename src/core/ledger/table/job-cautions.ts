import type { Mark } from '../../job/model/types.ts'
import { reason } from '../../words/core-words.ts'
import type { AnyReason } from '../../words/reason.ts'
import type { Assessment } from '../assessment/assessment.ts'
import { readingCautions } from './reading-cautions.ts'
import { peopleCautions, scatterCautions } from './scatter-cautions.ts'
import type { TableView } from './table.ts'

/** What a person should know of this job before using its table. */
export function jobCautions(assessment: Assessment, views: readonly TableView[]): AnyReason[] {
  return [
    ...[...assessment.views.values()].flatMap((v) => v.caution ?? []),
    ...scatterCautions(assessment.features.values()),
    ...peopleCautions(assessment.features.values()),
    ...offPageCautions(assessment),
    ...readingCautions(assessment.job),
    ...views.flatMap(({ name, problemReason }) =>
      problemReason === undefined ? [] : reason('caution.of-view', { view: name, problem: problemReason }),
    ),
  ]
}

/** A pick may stand on the very edge of the page, and a pixel beside it. */
const EDGE = 1

/** Names every used mark that does not lie on its page. */
function offPageCautions({ job, features }: Assessment): AnyReason[] {
  const pages = new Map(job.sheets.map((s) => [s.id, s.scan]))
  const marks = new Map(job.marks.map((m): [string, Mark] => [m.id, m]))
  const cautions: AnyReason[] = []
  for (const { mark, points } of features.values()) {
    const page = pages.get(marks.get(mark)?.sheet ?? '')
    if (page === undefined) continue
    const off = points.some(
      ([x, y]) => x < -EDGE || y < -EDGE || x > page.width + EDGE || y > page.height + EDGE,
    )
    if (off) {
      cautions.push(reason('caution.mark-off-its-page', { mark, width: page.width, height: page.height }))
    }
  }
  return cautions
}
