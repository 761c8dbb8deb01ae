import { useRef } from 'react'
import { Button as AriaButton } from 'react-aria-components'
import type { Edit } from '../../../core/job/edits/edit.ts'
import type { Reference, View } from '../../../core/job/model/types.ts'
import type { TableReference } from '../../../core/ledger/table/table.ts'
import { calledByFigure } from '../../../core/ledger/views/name-known-sizes.ts'
import { useBench } from '../../bench/bench-store.ts'
import { choose } from '../../bench/choose.ts'
import { makeEdit } from '../../bench/edits.ts'
import { enteredBy } from '../../bench/signature.ts'
import { Button } from '../../parts/button.tsx'
import { Figure } from '../../parts/figure.tsx'
import { SavedField } from '../../parts/saved-field.tsx'
import { useInSight } from '../../parts/use-in-sight.ts'
import { reason } from '../../words/window-words.ts'
import { readAs } from '../keeping/read-as.ts'
import { lengthProblem, sizeProblem } from '../keeping/written-problem.ts'
import { DimensionToo } from './dimension-too.tsx'
import { difference, measuredText } from './plain-figures.ts'

interface KnownSizeProps {
  view: View
  reference: Reference
  /** What the fit makes of it; two or more rows for a rectangle, none while it is worked out. */
  rows: readonly TableReference[]
  chosen: boolean
}

/** A diameter that is written as one needs no sign more. */
const SAYS_DIAMETER = /[ØøΦφ⌀∅]|\b(?:dia|diam|diameter|o\.?d|i\.?d|drill|bore)\b/i

const written = (reference: Reference): string =>
  reference.kind === 'rectangle'
    ? `${reference.width} × ${reference.height}`
    : `${reference.kind === 'diameter' && !SAYS_DIAMETER.test(reference.size) ? 'Ø ' : ''}${reference.size}`

/** Of so small a share of a size is only rounding. */
const ROUNDING = 1e-9

/** Whether the scale gives a size back, whatever it is: nothing was found out about it. */
const isTakenFrom = ({ U, fitted }: TableReference): boolean => U <= ROUNDING * Math.abs(fitted)

/** One figured size of a view: as printed, as the fit makes it, and whether it is to be doubted. */
export function KnownSize({ view, reference, rows, chosen }: KnownSizeProps) {
  const unit = useBench((bench) => bench.table?.unit ?? 'in')
  const writable = useBench((bench) => bench.opened?.writable === true)
  const { id } = reference
  const size = written(reference)
  const entry = useRef<HTMLLIElement>(null)
  useInSight(entry, chosen)
  return (
    <li className="known-sizes-one" ref={entry} data-chosen={chosen || undefined}>
      <AriaButton
        className="known-sizes-show"
        aria-expanded={chosen}
        onPress={() =>
          choose(chosen ? { kind: 'view', id: view.id } : { kind: 'reference', view: view.id, id })
        }
      >
        <span className="known-sizes-size">
          <Figure text={size} />
        </span>
      </AriaButton>
      <Button
        kind="quiet"
        icon="bin"
        label={`Remove the figured size ${calledByFigure(reference, view.references)}`}
        disabled={!writable}
        onPress={() => {
          if (chosen) choose({ kind: 'view', id: view.id })
          void makeEdit({ do: 'remove-reference', view: view.id, id })
        }}
      />
      {rows.map((row) => (
        <p className="known-sizes-fit" key={row.part ?? 'size'}>
          <span>{row.part ?? 'fit'}</span>
          {row.part === 'squareness' ? (
            <span>square to {difference(row.residual, unit)}</span>
          ) : (
            <>
              <span>
                {isTakenFrom(row) ? 'the scale is taken from it' : measuredText(row.fitted, row.U, unit)}
              </span>
              {!isTakenFrom(row) && <span>{difference(row.residual, unit)}</span>}
            </>
          )}
        </p>
      ))}
      {rows.some(({ suspect }) => suspect) && (
        <p className="known-sizes-doubt">
          {rows.some(({ setAside }) => setAside === true)
            ? 'Set aside: misread, or not to scale?'
            : 'May be wrong: misread, or not to scale?'}
        </p>
      )}
      {chosen && <Sizes view={view} reference={reference} />}
    </li>
  )
}

/** The fields of a figured size that can be changed. */
function Sizes({ view, reference }: { view: View; reference: Reference }) {
  const job = useBench((bench) => bench.opened?.job)
  const writable = useBench((bench) => bench.opened?.writable === true)
  if (job === undefined) return null
  const entered = enteredBy(job, reference)
  const change = (set: object): Edit => ({ do: 'change-reference', view: view.id, id: reference.id, set })
  const field = (label: string, key: 'size' | 'width' | 'height', value: string) => (
    <SavedField
      label={label}
      value={value}
      disabled={!writable}
      note={readAs(job, value, reference.kind)}
      check={(text) =>
        text.trim() === '' ? reason('written.no-known-size') : sizeProblem(job, text, reference.kind)
      }
      onSave={(text) => makeEdit(change({ [key]: text }))}
    />
  )
  return (
    <div className="known-sizes-more">
      {reference.kind === 'rectangle' ? (
        <>
          {field('Width, as printed', 'width', reference.width)}
          {field('Height, as printed', 'height', reference.height)}
        </>
      ) : (
        field('Size, as printed', 'size', reference.size)
      )}
      <SavedField
        label="Standard uncertainty of this size"
        value={reference.u ?? ''}
        disabled={!writable}
        note="Empty for a figure that is printed on the sheet."
        check={(text) => lengthProblem(job, text)}
        onSave={(text) =>
          makeEdit(
            text === ''
              ? { do: 'change-reference', view: view.id, id: reference.id, clear: ['u'] }
              : change({ u: text }),
          )
        }
      />
      <DimensionToo view={view} reference={reference} writable={writable} />
      {entered !== null && <p className="block-soft">Entered by {entered}</p>}
    </div>
  )
}
