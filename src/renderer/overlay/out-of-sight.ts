import type { Job } from '../../core/job/model/types.ts'
import type { Item } from './items.ts'

/**
 * Whether something drawn over a sheet gives away where a mark lies: the mark, figured sizes and dimensions taken from
 * it, and what the fit makes of them.
 */
export function givesAway({ about }: Item, mark: string, job: Job): boolean {
  switch (about.kind) {
    case 'mark':
      return about.id === mark
    case 'reference': {
      const view = job.views.find(({ id }) => id === about.view)
      const marks: readonly string[] = view?.references.find(({ id }) => id === about.id)?.marks ?? []
      return marks.includes(mark)
    }
    case 'dimension': {
      const evidence = job.dimensions.find(({ name }) => name === about.name)?.evidence ?? []
      return evidence.some((piece) => piece.basis === 'scaled' && piece.marks.includes(mark))
    }
    default:
      return false
  }
}
