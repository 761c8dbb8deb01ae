import type { Job } from '../../../core/job/model/types.ts'

interface OnSheet {
  id: string
  sheet: string
}

/** What two lists hold between the items that they share at their beginnings and at their ends. */
function apart<T>(before: readonly T[], after: readonly T[]): { before: readonly T[]; after: readonly T[] } {
  const most = Math.min(before.length, after.length)
  let start = 0
  while (start < most && before[start] === after[start]) start++
  let end = 0
  while (end < most - start && before[before.length - 1 - end] === after[after.length - 1 - end]) end++
  return { before: before.slice(start, before.length - end), after: after.slice(start, after.length - end) }
}

function touchedBy(before: readonly OnSheet[], after: readonly OnSheet[]): string[] {
  const parts = apart(before, after)
  const touched: string[] = []
  const old = new Map(parts.before.map((item) => [item.id, item]))
  for (const item of parts.after) {
    const was = old.get(item.id)
    old.delete(item.id)
    if (was === item) continue
    touched.push(item.sheet)
    if (was !== undefined) touched.push(was.sheet)
  }
  return [...touched, ...[...old.values()].map(({ sheet }) => sheet)]
}

/** Ids of the sheets on which a mark or a view differs between two states of a job that share what they can. */
export const touchedSheets = (before: Job, after: Job): Set<string> =>
  new Set([...touchedBy(before.marks, after.marks), ...touchedBy(before.views, after.views)])
