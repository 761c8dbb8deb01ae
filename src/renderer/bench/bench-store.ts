import { create } from 'zustand'
import type { BenchState, OpenedJob } from '../../contract/bench-state.ts'
import type { SheetPictures } from '../../contract/pictures.ts'
import type { Unit } from '../../core/job/model/types.ts'
import type { Table } from '../../core/ledger/table/table.ts'
import type { FiguresAs } from '../../core/ledger/units/look.ts'
import { type Aids, PLAIN } from '../looking/aids.ts'
import { startingAids } from '../looking/starting-aids.ts'
import { noPicks, type Picks } from '../picking/picks.ts'
import type { FigureAtHand } from './figure-at-hand.ts'
import type { Selection } from './selection.ts'
import type { Shows } from './shows.ts'
import type { Station } from './stations.ts'
import type { TheirStep } from './their-step.ts'
import type { TitleBlock } from './title-block.ts'
import type { ToldReadings } from './told-readings.ts'

/** Something a person is told; it stays until they put it away. */
export interface Notice {
  id: number
  tone: 'told' | 'caution' | 'failed'
  sentence: string
  /** What it says instead once the job can be written again, of something that was not kept because it could not. */
  onceWritable?: string
}

/** Work that takes a while. */
export interface LongWork {
  id: string
  /** What is being done. */
  name: string
  /** 0 to 1. */
  done: number
  cancel?: () => void
}

/** Everything the window knows. Components read parts of it; only the files of this folder change it. */
export interface BenchContents {
  /** What the host is and offers; null until it has answered. */
  host: Omit<BenchState, 'opened'> | null
  /** Whether the host answers. */
  connected: boolean
  opened: OpenedJob | null
  /** The table of the job as it was after edit `tableOf`; the last good one while a newer is worked out. */
  table: Table | null
  tableOf: number
  station: Station
  /** The sheet on the bench. */
  sheet: string | null
  /** What can be shown of each sheet, by its id. */
  pictures: Record<string, SheetPictures>
  /** What was read of each sheet, by its id, where that was asked for. */
  readings: Record<string, ToldReadings>
  /** What was read in the title block of each sheet, by its id, where that was asked for. */
  titleBlocks: Record<string, TitleBlock>
  /** The figure that a box was drawn round; null when there is none. */
  figure: FigureAtHand | null
  selection: Selection | null
  /** Which choice it is: another one whenever something else is chosen, the same while that is given another name. */
  choice: number
  picks: Picks
  /** How each sheet is looked at, where that was changed. */
  aids: Record<string, Aids>
  /** Who makes the edits: an id or a name; empty as long as nobody has said it. */
  person: string
  /** Lengths are looked at in this unit; null: in the job's own. */
  unit: Unit | null
  /** How exact inches are set. */
  figuresAs: FiguresAs
  theme: 'system' | 'light' | 'dark'
  /** How much is drawn over a sheet. */
  shows: Shows
  /** Whether the person is being asked who they are. */
  asksWho: boolean
  /** Somebody else's edit that a step would take: the person is being asked. */
  theirs: TheirStep | null
  /** How many changes were asked for and are not on disk yet. */
  keeping: number
  notices: Notice[]
  work: LongWork[]
}

export const useBench = create<BenchContents>(() => ({
  host: null,
  connected: true,
  opened: null,
  table: null,
  tableOf: -1,
  station: 'sheet',
  sheet: null,
  pictures: {},
  readings: {},
  titleBlocks: {},
  figure: null,
  selection: null,
  choice: 0,
  picks: noPicks({ kind: 'look' }),
  aids: {},
  person: '',
  unit: null,
  figuresAs: 'fractions',
  theme: 'system',
  shows: 'all',
  asksWho: false,
  theirs: null,
  keeping: 0,
  notices: [],
  work: [],
}))

/** How a sheet is looked at now. */
export function aidsOf({ aids, opened }: BenchContents, sheet: string | null): Aids {
  const chosen = sheet === null ? undefined : aids[sheet]
  if (chosen !== undefined) return chosen
  const found = opened?.job.sheets.find(({ id }) => id === sheet)
  return found === undefined ? PLAIN : startingAids(found)
}
