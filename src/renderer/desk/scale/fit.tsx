import { hasSetAside, isCalibrated } from '../../../core/handoff/table/view-lines.ts'
import type { View } from '../../../core/job/model/types.ts'
import { formatDrawnScale } from '../../../core/quantity/format/format-drawn-scale.ts'
import { knownSizesAgree } from '../../../core/words/known-sizes-agree.ts'
import { useBench } from '../../bench/bench-store.ts'
import { makeEdit } from '../../bench/edits.ts'
import { Button } from '../../parts/button.tsx'
import { Figure } from '../../parts/figure.tsx'
import { Section } from '../../parts/section.tsx'
import { MAPPING_WORDS } from '../../words/mapping-words.ts'
import { Caution } from '../keeping/caution.tsx'
import { Alternatives } from './alternatives.tsx'
import { offStated } from './fit-words.ts'

/** What the known sizes make of a view: its scale, how well they agree, and a way out where they do not suffice. */
export function Fit({ view }: { view: View }) {
  const unit = useBench((bench) => bench.opened?.job.unit ?? 'in')
  const row = useBench((bench) => bench.table?.views.find(({ id }) => id === view.id))
  const writable = useBench((bench) => bench.opened?.writable === true)
  if (row === undefined || view.references.length === 0) return null
  const { id } = view
  const calibrated = isCalibrated(row)
  const better = row.suggests
  const mapBy = (mapping: View['mapping']) => void makeEdit({ do: 'change-view', id, set: { mapping } })
  const { stated, found } = row.scale ?? { stated: null, found: null }
  return (
    <Section title="Scale found">
      {row.problem !== undefined && (
        <Caution>
          <p>{row.problem}</p>
          {!calibrated && view.mapping === 'two-axis' && (
            <Button disabled={!writable} onPress={() => mapBy('uniform')}>
              Use one scale both ways
            </Button>
          )}
        </Caution>
      )}
      <Alternatives view={view} row={row} unit={unit} />
      {calibrated && (
        <>
          <dl className="block-facts">
            <dt>Found</dt>
            <dd>{found === null ? 'Not known without the scan’s dpi' : found.toPrecision(4)}</dd>
            <dt>Stated</dt>
            <dd>
              {stated === null ? (
                'Not stated'
              ) : (
                <>
                  {Number(stated.toPrecision(4))} (<Figure text={formatDrawnScale(stated, unit)} />)
                </>
              )}
            </dd>
            {stated !== null && found !== null && (
              <>
                <dt>On the scan</dt>
                <dd>{offStated(found, stated)}</dd>
              </>
            )}
          </dl>
          {row.unchecked !== true && <p>{knownSizesAgree(row.p, hasSetAside(row))}</p>}
          {row.remarks?.map((remark) => (
            <p key={remark}>{remark}</p>
          ))}
        </>
      )}
      {better !== undefined && (
        <div className="block-words">
          <p>{row.suggestion}</p>
          <div className="block-row">
            <Button disabled={!writable} onPress={() => mapBy(better)}>
              Use “{MAPPING_WORDS[better].label}”
            </Button>
          </div>
        </div>
      )}
    </Section>
  )
}
