import type { Job } from '../../core/job/model/types.ts'
import type { Table, TableEvidence } from '../../core/ledger/table/table.ts'

/** A dimension that is both printed and scaled. In the table's unit. */
export interface AgreementPoint {
  name: string
  /** Id of the scaled evidence. */
  evidence: string
  /** What people call that. */
  label: string
  printed: number
  /** Scaled less printed. */
  deviation: number
  /** Half of the 95 % interval of the scaled value. */
  U: number
  /** What the printed figure may be off by: half its last graduation, or its tolerance. */
  limit: number
  disputed: boolean
}

/** Rectangular: the half-width of a distribution is its standard deviation times this. JCGM 100:2008, 4.3.7. */
const HALF_WIDTH = Math.sqrt(3)

/** E_n above this is a dispute. ISO/IEC 17043. */
const DISPUTED_ABOVE = 1

/**
 * Every length that is printed and scaled, smallest printed size first.
 * @param view only what was scaled in it; all views unless said otherwise
 */
export function agreementPoints(table: Table, job: Job, view?: string): AgreementPoint[] {
  const dimensions = new Map(job.dimensions.map((dimension) => [dimension.name, dimension]))
  const points: AgreementPoint[] = []
  for (const row of table.rows) {
    if (row.kind !== 'length') continue
    const inJob = dimensions.get(row.name)?.evidence ?? []
    const usable = row.evidence.filter(({ value, problem }) => value !== null && problem === undefined)
    const figures = usable.filter(({ basis }) => basis === 'printed')
    const printed = figures.find(({ value }) => value === row.value) ?? figures[0]
    if (printed === undefined) continue
    for (const scaled of usable) {
      // What follows a figure, since its scale was taken from it, neither agrees with it nor does not.
      if (scaled.basis !== 'scaled' || scaled.countsWith === printed.id || printed.countsWith === scaled.id)
        continue
      const own = inJob.find(({ id }) => id === scaled.id)
      if (view !== undefined && (own?.basis !== 'scaled' || own.view !== view)) continue
      const deviation = Number(scaled.value) - Number(printed.value)
      const { U } = scaled
      points.push({
        name: row.name,
        evidence: scaled.id,
        label: scaled.label ?? scaled.id,
        printed: Number(printed.value),
        deviation,
        U,
        limit: HALF_WIDTH * printed.u,
        disputed: enOf(scaled, printed, usable.length, deviation) > DISPUTED_ABOVE,
      })
    }
  }
  return points.sort((a, b) => a.printed - b.printed || a.name.localeCompare(b.name))
}

/** E_n of the two; where there is more evidence, without what they share, since the table keeps the largest E_n only. */
function enOf(scaled: TableEvidence, printed: TableEvidence, usable: number, deviation: number): number {
  if (usable === 2 && scaled.en !== undefined) return scaled.en
  return Math.abs(deviation) / Math.hypot(scaled.U, printed.U)
}
