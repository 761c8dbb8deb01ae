import type { CoreReason } from '../../words/core-words.ts'
import type { Edit } from '../edits/edit.ts'
import type { Mark } from '../model/types.ts'

type Unnamed<M> = M extends Mark ? Omit<M, 'id' | 'sheet'> : never

/** A mark that was picked and is not in the job yet: all of it but its id and its sheet. */
export type UnnamedMark = Unnamed<Mark>

/** One of the marks that something is picked by: a new one, or the id of one that is in the job. */
export type PickedMark = UnnamedMark | string

/** Why nothing can be made of what was picked. */
export interface PicksRefused {
  refused: CoreReason
}

/** What is made of picks: an edit to be kept, with the id of what it adds where that is new. */
export type Made = { edit: Edit; id: string } | PicksRefused

/** A thousandth of a pixel is far below what can be found or picked, and keeps the job readable. */
export const toThousandth = (value: number): number => Math.round(value * 1000) / 1000
