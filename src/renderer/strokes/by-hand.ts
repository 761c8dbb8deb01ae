import { useBench } from '../bench/bench-store.ts'
import { useHowToPick } from '../picking/how-to-pick.ts'
import type { Picks } from '../picking/picks.ts'
import { isCornerToCorner } from '../picking/tool.ts'
import { againByHand } from './search-wish.ts'

/**
 * Whether picks are by hand now: a mark picked again as it was picked before, another by the switch or the key.
 * @param key whether the key for it is held
 */
export function isByHand({ tool, features }: Picks, key: boolean): boolean {
  if (isCornerToCorner(tool)) return true
  if (tool.kind === 'repeat') {
    const mark = useBench.getState().opened?.job.marks.find(({ id }) => id === tool.mark)
    return mark === undefined || againByHand(mark)
  }
  const current = features.at(-1)
  const begun = current !== undefined && 'pixels' in current && !current.done && current.byHand === true
  return key || begun || useHowToPick.getState().byHand
}
