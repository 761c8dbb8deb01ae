import type { Job } from '../../../core/job/model/types.ts'

interface OnSheet {
  id: string
  sheet: string
}

function touchedBy(before: readonly OnSheet[], after: readonly OnSheet[], touched: Set<string>): void {
  if (before === after) return
  const old = new Map(before.map((item) => [item.id, item]))
  for (const item of after) {
    const was = old.get(item.id)
    old.delete(item.id)
    if (was === item) continue
    touched.add(item.sheet)
    if (was !== undefined) touched.add(was.sheet)
  }
  for (const gone of old.values()) touched.add(gone.sheet)
}

/** Ids of the sheets on which a mark or a view differs between two states of a job that share what they can. */
export function touchedSheets(before: Job, after: Job): Set<string> {
  const touched = new Set<string>()
  touchedBy(before.marks, after.marks, touched)
  touchedBy(before.views, after.views, touched)
  return touched
}
