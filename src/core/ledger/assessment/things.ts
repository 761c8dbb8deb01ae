import type { Instrument, Job, Mark, Sheet } from '../../job/model/types.ts'
import type { ScatterPool, ScatterPools } from '../evidence/scatter-pools.ts'
import type { Lookups } from '../kept/consulted.ts'
import type { CalibratedView } from '../views/calibrate-view.ts'
import type { PreparedView } from '../views/prepare-view.ts'
import type { SheetStretch } from '../views/sheet-stretch.ts'
import type { Assessed } from './assessed.ts'

/** What the views and dimensions of a job are worked out from; undefined where there is no such thing. */
export interface Things {
  mark: Mark | undefined
  sheet: Sheet | undefined
  instrument: Instrument | undefined
  view: CalibratedView | undefined
  /** By the id of its view. */
  prepared: PreparedView | undefined
  /** By the id of its sheet. */
  stretch: SheetStretch | undefined
  /** By the name of the pool. */
  scatter: ScatterPool | undefined
  /** By name; undefined as well before it is assessed. */
  dimension: Assessed | undefined
}

/** What was worked out of the views of a job so far, and of the sheets that they are on. */
export interface ViewsWorkedOut {
  readonly prepared: ReadonlyMap<string, PreparedView>
  readonly stretches: ReadonlyMap<string, SheetStretch>
  readonly views: ReadonlyMap<string, CalibratedView>
}

/** Views and dimensions are found as far as they have been worked out. */
export function thingsOf(
  { marks, sheets, instruments }: Job,
  { views, prepared, stretches }: ViewsWorkedOut,
  scatters: ScatterPools,
  dimensions: ReadonlyMap<string, Assessed>,
): Lookups<Things> {
  const [mark, sheet, instrument] = [byId(marks), byId(sheets), byId(instruments)]
  return {
    mark: (id) => mark.get(id),
    sheet: (id) => sheet.get(id),
    instrument: (id) => instrument.get(id),
    view: (id) => views.get(id),
    prepared: (id) => prepared.get(id),
    stretch: (id) => stretches.get(id),
    scatter: (pool) => scatters.get(pool),
    dimension: (name) => dimensions.get(name),
  }
}

function byId<T extends { readonly id: string }>(items: readonly T[]): ReadonlyMap<string, T> {
  const found = new Map<string, T>()
  for (const item of items) found.set(item.id, item)
  return found
}
