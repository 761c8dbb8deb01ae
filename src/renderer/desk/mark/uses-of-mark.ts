import { called } from '../../../core/job/ids/label.ts'
import type { Job } from '../../../core/job/model/types.ts'
import { capital } from '../../../core/words/capital.ts'
import type { Selection } from '../../bench/selection.ts'

/** What rests on a mark, in words, and how to choose it. */
export function usesOfMark(job: Job, mark: string): { words: string; selection: Selection }[] {
  const references = job.views.flatMap((view) =>
    view.references
      .filter(({ marks }) => (marks as readonly string[]).includes(mark))
      .map((reference) => ({
        words: `${capital(called('figured size', reference))} in “${view.name}”`,
        selection: { kind: 'reference', view: view.id, id: reference.id } as const,
      })),
  )
  const dimensions = job.dimensions
    .filter(({ evidence }) => evidence.some((one) => one.basis === 'scaled' && one.marks.includes(mark)))
    .map(({ name, label }) => ({
      words: label === '' ? name : label,
      selection: { kind: 'dimension', name } as const,
    }))
  return [...references, ...dimensions]
}
