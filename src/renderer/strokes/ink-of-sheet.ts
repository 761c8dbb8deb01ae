import type { SheetPictures } from '../../contract/pictures.ts'
import type { Ink } from '../../core/imaging/index.ts'
import type { HowToPick } from '../picking/how-to-pick.ts'
import { overviewAddress } from '../tiles/addresses.ts'
import { inkOf } from '../tiles/the-pictures.ts'
import { inkWanted } from './ink-wanted.ts'

/** What of ink a search on a sheet is told, as picks are taken now. */
export const wantedOn = (
  pictures: SheetPictures | undefined,
  { otherInk }: Pick<HowToPick, 'otherInk'>,
): { ink?: Ink } => inkWanted(pictures === undefined ? null : inkOf(overviewAddress(pictures)), otherInk)
