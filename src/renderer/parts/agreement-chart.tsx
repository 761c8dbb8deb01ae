import './agreement-chart.css'
import { useEffect, useMemo, useRef } from 'react'
import type { Job } from '../../core/job/model/types.ts'
import type { Table } from '../../core/ledger/table/table.ts'
import { agreementPlot } from './agreement-plot.ts'
import { agreementPoints } from './agreement-points.ts'
import { agreementWords } from './agreement-words.ts'
import { useWidth } from './use-width.ts'

interface AgreementChartProps {
  job: Job
  /** Null while it is worked out. */
  table: Table | null
  /** Of one view; of the whole job unless said otherwise. */
  view?: string
}

/** Scaled against printed values, one line a dimension. */
export function AgreementChart({ job, table, view }: AgreementChartProps) {
  const box = useRef<HTMLDivElement>(null)
  const width = useWidth(box)
  const points = useMemo(() => (table === null ? [] : agreementPoints(table, job, view)), [table, job, view])
  const unit = table?.unit ?? 'in'

  useEffect(() => {
    if (points.length === 0 || width === 0) box.current?.replaceChildren()
    else box.current?.replaceChildren(agreementPlot(points, unit, width))
  }, [points, unit, width])

  return (
    <figure className="agreement-chart">
      <div ref={box} className="agreement-chart-drawn" aria-hidden="true" />
      {points.length === 0 ? (
        <p className="agreement-chart-words">
          Nothing to compare yet: no length {view === undefined ? '' : 'of this view '}is both printed and
          scaled.
        </p>
      ) : (
        <>
          <figcaption className="agreement-chart-words">
            Bars: scaled values at 95 %. Grey: what a printed figure may be off by, half its last graduation
            or its tolerance. Smallest size first.
          </figcaption>
          <ul className="agreement-chart-list" aria-label="Scaled against printed values">
            {points.map((point) => (
              <li key={`${point.name} ${point.evidence}`}>{agreementWords(point, unit)}</li>
            ))}
          </ul>
        </>
      )}
    </figure>
  )
}
