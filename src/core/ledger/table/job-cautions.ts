import { reason } from '../../words/core-words.ts'
import type { AnyReason } from '../../words/reason.ts'
import type { Assessment } from '../assessment/assessment.ts'
import type { CautionsByFeature } from './scatter-cautions.ts'
import type { TableView } from './table.ts'

/** What a person should know of this job before using its table. */
export function jobCautions(
  assessment: Assessment,
  views: readonly TableView[],
  scatter: CautionsByFeature,
): AnyReason[] {
  const ofScatter = [...scatter.values()]
  return [
    ...[...assessment.views.values()].flatMap((v) => v.caution ?? []),
    ...ofScatter.flatMap(({ picks }) => picks ?? []),
    ...ofScatter.flatMap(({ people }) => people ?? []),
    ...offPageCautions(assessment),
    ...gaugeCautions(assessment),
    ...[...assessment.singles.values()].flatMap(({ cautions }) => cautions),
    ...views.flatMap(({ name, problemReason }) =>
      problemReason === undefined ? [] : reason('caution.of-view', { view: name, problem: problemReason }),
    ),
  ]
}

/** Asks once for the job which table its sheet gauges are of, where that matters and nothing says it. */
function gaugeCautions({ singles }: Assessment): AnyReason[] {
  const assumed = [...singles].filter(([, { figures }]) => figures.gaugeAssumed !== undefined)
  const standard = assumed[0]?.[1].figures.gaugeAssumed
  if (standard === undefined) return []
  return [reason('caution.gauge-unsaid', { standard, dimensions: assumed.map(([{ name }]) => name) })]
}

/** A pick may stand on the very edge of the page, and a pixel beside it. */
const EDGE = 1

/** Names every used mark that does not lie on its page. */
function offPageCautions({ job, features }: Assessment): AnyReason[] {
  const pages = new Map(job.sheets.map((s) => [s.id, s.scan]))
  const cautions: AnyReason[] = []
  for (const [{ id, sheet }, { points }] of features) {
    const page = pages.get(sheet)
    if (page === undefined) continue
    const { width, height } = page
    const off = points.some(([x, y]) => x < -EDGE || y < -EDGE || x > width + EDGE || y > height + EDGE)
    if (off) cautions.push(reason('caution.mark-off-its-page', { mark: id, width, height }))
  }
  return cautions
}
