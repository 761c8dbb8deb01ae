import type { Edit } from '../model/edit-schema.ts'
import type { Mark } from '../model/types.ts'
import { firstPlaces } from '../picks/picks-of.ts'
import type { Stamp } from './stamp.ts'

interface Made {
  by?: string
  at?: string
  sitting?: string
}

/** What a stamp says of a pick that says nothing of itself yet: a pick with a time of its own was not made just now. */
function madeNow(pick: Made, { by, at, sitting }: Stamp): Made {
  const now = pick.at === undefined && pick.sitting === undefined && (pick.by ?? by) === by
  return {
    ...(pick.by === undefined && by !== undefined ? { by } : {}),
    ...(pick.at === undefined ? { at } : {}),
    ...(now && sitting !== undefined ? { sitting } : {}),
  }
}

/** A pick with who made it, when and in which sitting; what it says already stays. */
export const stampedPick = <T extends Made>(pick: T, stamp: Stamp): T => ({
  ...pick,
  ...madeNow(pick, stamp),
})

type Change = Extract<Edit, { do: 'change-mark' }>

/**
 * A change that puts a mark somewhere else, signed by who makes it: whoever moves a pick has picked it. The change
 * itself where it moves nothing, says who picked, or nobody is named.
 */
export function signedMove(edit: Change, mark: Mark | undefined, stamp: Stamp): Change {
  const set: Record<string, unknown> = { ...edit.set }
  const clear = edit.clear ?? []
  const said = ['by', 'at', 'sitting', 'picks'].some((field) => field in set || clear.includes(field))
  const places = 'pixel' in set ? [set['pixel']] : set['pixels']
  if (mark === undefined || stamp.by === undefined || said || places === undefined) return edit
  if (JSON.stringify(places) === JSON.stringify(firstPlaces(mark))) return edit
  const gone = stamp.sitting === undefined && mark.sitting !== undefined ? ['sitting'] : []
  return {
    ...edit,
    set: { ...set, ...madeNow({}, stamp) },
    ...(clear.length + gone.length === 0 ? {} : { clear: [...clear, ...gone] }),
  }
}
