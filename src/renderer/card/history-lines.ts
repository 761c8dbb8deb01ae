import type { Dimension, Job } from '../../core/job/model/types.ts'

/** Something that was done, and by whom and when as far as that is known. */
interface HistoryLine {
  what: string
  by?: string
  /** ISO 8601. */
  at?: string
}

/** What was done for a dimension, oldest first; what bears no date comes before all that does. */
export function historyLines(dimension: Dimension, job: Job): HistoryLine[] {
  const used = new Set(dimension.evidence.flatMap((e) => (e.basis === 'scaled' ? e.marks : [])))
  const marks = job.marks.filter(({ id }) => used.has(id))
  const lines: HistoryLine[] = [
    ...marks.map((mark) => ({ what: `picked mark ${mark.id}`, ...signed(mark) })),
    ...dimension.evidence.map((e) => ({
      what: `${e.withdrawn === undefined ? 'gave' : 'gave, since withdrawn,'} ${e.basis} evidence ${e.id}`,
      ...signed(e),
    })),
  ]
  return joined(lines.sort((a, b) => (a.at ?? '').localeCompare(b.at ?? '')))
}

const signed = ({ by, at }: { by?: string; at?: string }): Omit<HistoryLine, 'what'> => ({
  ...(by === undefined ? {} : { by }),
  ...(at === undefined ? {} : { at }),
})

/** What one person did in one moment stands in one line. */
function joined(lines: readonly HistoryLine[]): HistoryLine[] {
  const result: HistoryLine[] = []
  for (const line of lines) {
    const before = result.at(-1)
    if (before !== undefined && before.by === line.by && before.at === line.at) {
      before.what = `${before.what}, ${line.what}`
    } else result.push({ ...line })
  }
  return result
}
