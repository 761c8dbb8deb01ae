import './agreement-chart.css'
import { useEffect, useMemo, useRef } from 'react'
import { useBench } from '../bench/bench-store.ts'
import { agreementPlot } from './agreement-plot.ts'
import { agreementPoints } from './agreement-points.ts'
import { agreementWords } from './agreement-words.ts'
import { useWidth } from './use-width.ts'

/** Scaled against printed values, one line a dimension: of one view, or of the whole job. */
export function AgreementChart({ view }: { view?: string }) {
  const table = useBench((bench) => bench.table)
  const job = useBench((bench) => bench.opened?.job)
  const box = useRef<HTMLDivElement>(null)
  const width = useWidth(box)
  const points = useMemo(
    () => (table === null || job === undefined ? [] : agreementPoints(table, job, view)),
    [table, job, view],
  )
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
            Bars: scaled values at 95 % (1.96 u). Grey: what a printed figure may be off by, half its last
            graduation or its tolerance. Smallest size first.
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
