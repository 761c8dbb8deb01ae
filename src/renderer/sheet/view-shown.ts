import type { BenchContents } from '../bench/bench-store.ts'
import { useLastUsed } from '../desk/in-hand/last-used.ts'
import { viewAtWork } from '../desk/in-hand/view-at-work.ts'

/** The view that is meant by this view, by its id: that of the dimension that is chosen, else the one at work. */
export function viewShown(bench: BenchContents): string | null {
  const { selection, opened, sheet } = bench
  const dimension =
    selection?.kind === 'dimension'
      ? opened?.job.dimensions.find(({ name }) => name === selection.name)
      : undefined
  const views = opened?.job.views.filter((view) => view.sheet === sheet).map(({ id }) => id) ?? []
  const own = dimension?.evidence.flatMap((piece) =>
    piece.basis === 'scaled' && views.includes(piece.view) ? [piece.view] : [],
  )
  return own?.[0] ?? viewAtWork(bench, useLastUsed.getState().view)?.id ?? null
}
