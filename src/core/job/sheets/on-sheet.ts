import type { Evidence, Job, Mark, Note, View } from '../model/types.ts'

/** What is on a sheet. */
export interface OnSheet {
  views: readonly View[]
  marks: readonly Mark[]
  notes: readonly Note[]
  /** Evidence that was printed there, or scaled off it, with the dimension that it is of. */
  evidence: readonly { dimension: string; evidence: Evidence }[]
}

/** Whether evidence was printed on a sheet, or scaled off it, also where it is withdrawn. */
function isFrom(evidence: Evidence, sheet: string, views: ReadonlySet<string>, marks: ReadonlySet<string>) {
  if (evidence.basis === 'printed') return evidence.sheet === sheet
  return (
    evidence.basis === 'scaled' && (views.has(evidence.view) || evidence.marks.some((id) => marks.has(id)))
  )
}

/** All that is on a sheet of a job, or rests on it. @param sheet its id */
export function whatIsOn(job: Job, sheet: string): OnSheet {
  const isThere = (item: { sheet: string }): boolean => item.sheet === sheet
  const views = job.views.filter(isThere)
  const marks = job.marks.filter(isThere)
  const [viewIds, markIds] = [views, marks].map((items) => new Set(items.map(({ id }) => id))) as [
    Set<string>,
    Set<string>,
  ]
  const evidence = job.dimensions.flatMap((dimension) =>
    dimension.evidence
      .filter((one) => isFrom(one, sheet, viewIds, markIds))
      .map((one) => ({ dimension: dimension.name, evidence: one })),
  )
  return { views, marks, notes: job.notes.filter(isThere), evidence }
}
