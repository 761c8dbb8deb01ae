import { Fragment } from 'react'
import { axisShares, offStatedInWords } from '../../../core/handoff/table/axis-scales.ts'
import { hasSetAside, isCalibrated } from '../../../core/handoff/table/view-lines.ts'
import type { Unit, View } from '../../../core/job/model/types.ts'
import type { TableView } from '../../../core/ledger/table/table.ts'
import { formatDrawnScale } from '../../../core/quantity/format/format-drawn-scale.ts'
import { formatMeasuredScale } from '../../../core/quantity/format/format-measured-scale.ts'
import { knownSizesAgree } from '../../../core/words/known-sizes-agree.ts'
import { MAPPING_WORDS } from '../../../core/words/mapping-words.ts'
import { useBench } from '../../bench/bench-store.ts'
import { makeEdit } from '../../bench/edits.ts'
import { Button } from '../../parts/button.tsx'
import { Figure } from '../../parts/figure.tsx'
import { Section } from '../../parts/section.tsx'
import { Caution } from '../keeping/caution.tsx'
import { Alternatives } from './alternatives.tsx'
import { offStated } from './fit-words.ts'

/** What the figured sizes make of a view: its scale, how well they agree, and a way out where they do not suffice. */
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
    <Section title="Scale">
      {row.problem !== undefined && (
        <Caution>
          <p>{row.problem}</p>
          {!calibrated && view.mapping === 'two-axis' && (
            <Button disabled={!writable} onPress={() => mapBy('uniform')}>
              Use “{MAPPING_WORDS.uniform.name}”
            </Button>
          )}
        </Caution>
      )}
      <Alternatives view={view} row={row} unit={unit} />
      {calibrated && (
        <>
          <dl className="block-facts">
            <Axes view={row} unit={unit} />
            <dt>{axisShares(row) === null ? 'Measured' : 'Both together'}</dt>
            <dd>
              {found === null ? (
                'Not known without the scan’s dpi'
              ) : (
                <>
                  <Figure text={formatMeasuredScale(found, unit)} />
                  {stated !== null && `, ${offStated(found, stated)}`}
                </>
              )}
            </dd>
            <dt>Stated</dt>
            <dd>{stated === null ? 'Not stated' : <Figure text={formatDrawnScale(stated, unit)} />}</dd>
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
              Use “{MAPPING_WORDS[better].name}”
            </Button>
          </div>
        </div>
      )}
    </Section>
  )
}

/** The scale each way of a view that has two, with how the sheet came to be of that size. */
function Axes({ view, unit }: { view: TableView; unit: Unit }) {
  return axisShares(view)?.map((share) => {
    const off = offStatedInWords(share)
    return (
      <Fragment key={share.way}>
        <dt>{share.way === 'along' ? 'Along the sheet' : 'Across it'}</dt>
        <dd>
          <Figure text={formatMeasuredScale(share.found, unit)} />
          {off !== null && `, ${off}`}
        </dd>
      </Fragment>
    )
  })
}
