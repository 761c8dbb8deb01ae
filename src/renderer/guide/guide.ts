import { isCalibrated } from '../../core/handoff/table/view-lines.ts'
import type { Job, View } from '../../core/job/model/types.ts'
import type { Table, TableView } from '../../core/ledger/table/table.ts'
import { calledByFigure } from '../../core/ledger/views/name-known-sizes.ts'
import type { Selection } from '../bench/selection.ts'
import type { Station } from '../bench/stations.ts'
import { isComplete, type Picks } from '../picking/picks.ts'
import { pickSentence } from './pick-sentences.ts'

/** What to do next at a station, and what is still missing for the one after it; a sentence each, null where nothing is. */
interface Guide {
  next: string
  missing: string | null
  /** What is to be looked at next, where that is one thing. */
  about?: Selection
}

const hasScale = (row: TableView | undefined): boolean => row !== undefined && isCalibrated(row)

/** The views of a job that picks can be measured in, as the table has them. */
export function calibratedViews(job: Job, table: Table | null): View[] {
  return job.views.filter((view) => hasScale(table?.views.find(({ id }) => id === view.id)))
}

function atSheet(job: Job, picks: Picks): Guide {
  const picking = whilePicking(picks, { straighten: 'Press Enter to square up the sheet by this line.' })
  if (picking !== null) return { next: picking, missing: null }
  if (job.sheets.length === 0) {
    return {
      next: 'Bring in a scan of the drawing: choose the file, or drop it on this window.',
      missing: 'Missing for Scale: a sheet.',
    }
  }
  const unrecorded = job.sheets.find(({ record }) => Object.keys(record).length === 0)
  const next =
    unrecorded !== undefined && job.views.length > 0
      ? `Write down what “${unrecorded.title}” is and where it came from, while it is known.`
      : 'Turn the sheet upright and look it over, then go to Scale.'
  return { next, missing: null }
}

/** What a view still needs before it has a scale. */
function toCalibrate(view: View): string {
  if (view.references.length === 0)
    return `Add a size that is printed in “${view.name}” and pick its two ends.`
  return `“${view.name}” has no scale yet: add another figured size, in another direction.`
}

/** The first figured size that does not fit the others of its view; null where all do. */
function misfitOf(job: Job, table: Table | null) {
  for (const view of job.views) {
    const rows = table?.views.find(({ id }) => id === view.id)?.references ?? []
    const row = rows.find(({ suspect }) => suspect)
    const reference = view.references.find(({ id }) => id === row?.id)
    if (row !== undefined && reference !== undefined) {
      return { view, reference, setAside: row.setAside === true }
    }
  }
  return null
}

function atScale(job: Job, table: Table | null, picks: Picks, atWork: string | null): Guide {
  if (job.sheets.length === 0) {
    return { next: 'Bring in a scan first, at station 1.', missing: 'Missing for Pick: a sheet and a view.' }
  }
  const calibrated = calibratedViews(job, table)
  const missing =
    job.views.length === 0
      ? 'Missing for Pick: a view.'
      : calibrated.length === 0
        ? 'Missing for Pick: a view whose scale is known.'
        : null
  const picking = whilePicking(picks, {
    outline:
      picks.tool.kind === 'outline' && picks.tool.view !== undefined
        ? 'Keep the new outline, or cancel.'
        : 'Name the view, and say its scale if the sheet states one.',
    reference: 'Write the size as it is printed, and press Enter.',
  })
  if (picking !== null) return { next: picking, missing }
  if (job.views.length === 0) {
    return { next: 'Name a view: a part of the sheet that is drawn to one scale.', missing }
  }
  const misfit = misfitOf(job, table)
  if (misfit !== null) {
    const { view, reference, setAside } = misfit
    const called = calledByFigure(reference, view.references)
    return {
      next: `The figured size ${called} of “${view.name}” does not fit the others${setAside ? ' and is set aside' : ''}: look at it again.`,
      missing,
      about: { kind: 'reference', view: view.id, id: reference.id },
    }
  }
  const without = sooner(
    job.views.filter((view) => !calibrated.includes(view)),
    atWork,
  )
  if (without !== undefined) return { next: toCalibrate(without), missing }
  const unchecked = sooner(table?.views.filter(({ dof }) => dof === 0) ?? [], atWork)
  if (unchecked !== undefined) {
    return {
      next: `Add one more figured size to “${unchecked.name}”: it checks the others. Or go to Pick.`,
      missing,
    }
  }
  return { next: 'Every view has its scale. Go to Pick.', missing }
}

/** The view at work where it is one of these: what is said is of the view whose figured sizes are listed. */
const sooner = <V extends { id: string }>(views: readonly V[], atWork: string | null): V | undefined =>
  views.find(({ id }) => id === atWork) ?? views[0]

function whilePicking(
  picks: Picks,
  whenComplete: Partial<Record<Picks['tool']['kind'], string>>,
): string | null {
  if (picks.tool.kind === 'look') return null
  if (isComplete(picks)) return whenComplete[picks.tool.kind] ?? null
  return pickSentence(picks)
}

function atPick(job: Job, table: Table | null, picks: Picks): Guide {
  const missing = job.dimensions.length === 0 ? 'No dimension is in the table yet.' : null
  if (calibratedViews(job, table).length === 0) {
    return { next: 'Give a view its scale first, at station 2: until then a pick has no size.', missing }
  }
  const picking = whilePicking(picks, { measure: 'Say what it is, and press Enter to keep it.' })
  return { next: picking ?? 'Choose what to measure, then pick it on the sheet.', missing }
}

/** What to do with a figure that was read, in a box or of the list. */
export const TAKE_FIGURE = 'Take what it says, or write it otherwise.'

function atRead(job: Job, picks: Picks): Guide {
  if (job.sheets.length === 0) return { next: 'Bring in a scan first, at station 1.', missing: null }
  const picking = whilePicking(picks, { figure: TAKE_FIGURE })
  return {
    next: picking ?? 'Drag a box round a figure, or have all of this sheet read.',
    missing: job.dimensions.length === 0 ? 'No dimension is in the table yet.' : null,
  }
}

/**
 * What to do next at a station and what is still missing for the one after it, for somebody who has never seen it.
 * @param table of this job or of an earlier edit of it; null while the first one is worked out
 * @param atWork id of the view that the desk shows; null where it shows none
 */
export function guide(
  job: Job,
  table: Table | null,
  station: Station,
  picks: Picks,
  atWork: string | null = null,
): Guide {
  const guide = atStation(job, table, station, picks, atWork)
  if (picks.tool.kind !== 'note') return guide
  const noting = whilePicking(picks, {
    note:
      picks.tool.note === undefined
        ? 'Write what is to be noted, and keep it.'
        : 'Keep the new region, or cancel.',
  })
  return noting === null ? guide : { ...guide, next: noting }
}

function atStation(
  job: Job,
  table: Table | null,
  station: Station,
  picks: Picks,
  atWork: string | null,
): Guide {
  switch (station) {
    case 'sheet':
      return atSheet(job, picks)
    case 'scale':
      return atScale(job, table, picks, atWork)
    case 'pick':
      return atPick(job, table, picks)
    case 'read':
      return atRead(job, picks)
  }
}
