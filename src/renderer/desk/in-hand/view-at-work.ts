import type { View } from '../../../core/job/model/types.ts'
import type { BenchContents } from '../../bench/bench-store.ts'

/**
 * The view on the sheet that the desk is about: that of the tool in hand, else the one chosen, else the last one worked
 * with, else the first; undefined when the sheet has none.
 */
export function viewAtWork(bench: BenchContents, last: string | null): View | undefined {
  const views = bench.opened?.job.views.filter(({ sheet }) => sheet === bench.sheet) ?? []
  const { tool } = bench.picks
  const { selection } = bench
  const byId = (id: string | null | undefined): View | undefined => views.find((view) => view.id === id)
  const chosen =
    selection?.kind === 'view' ? selection.id : selection?.kind === 'reference' ? selection.view : null
  return byId('view' in tool ? tool.view : null) ?? byId(chosen) ?? byId(last) ?? views[0]
}
