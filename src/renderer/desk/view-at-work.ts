import type { View } from '../../core/job/types.ts'
import type { Bench } from '../bench/bench-store.ts'

/**
 * The view that the desk is about: that of the tool in hand, else the one chosen, else the last one worked with, else
 * the first on the sheet; undefined when the sheet has none.
 */
export function viewAtWork(bench: Bench, last: string | null): View | undefined {
  const views = bench.opened?.job.views ?? []
  const { tool } = bench.picks
  const { selection } = bench
  const byId = (id: string | null | undefined): View | undefined => views.find((view) => view.id === id)
  const chosen =
    selection?.kind === 'view' ? selection.id : selection?.kind === 'reference' ? selection.view : null
  const onSheet = views.filter(({ sheet }) => sheet === bench.sheet)
  return (
    byId('view' in tool ? tool.view : null) ??
    byId(chosen) ??
    onSheet.find(({ id }) => id === last) ??
    onSheet[0]
  )
}
