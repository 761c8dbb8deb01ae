import './known-sizes.css'
import type { Reference, View } from '../../../core/job/model/types.ts'
import type { TableView } from '../../../core/ledger/table/table.ts'
import { useBench } from '../../bench/bench-store.ts'
import { putDown } from '../../bench/choose.ts'
import { Button } from '../../parts/button.tsx'
import { Choice } from '../../parts/choice.tsx'
import { Section } from '../../parts/section.tsx'
import type { ReferenceKind } from '../../picking/tool.ts'
import { PickAt } from '../in-hand/pick-at.tsx'
import { keyOf, REFERENCES, takeUpToWork } from '../in-hand/tool-keys.ts'
import { KnownSize } from './known-size.tsx'

const LABELS: Readonly<Record<ReferenceKind, string>> = {
  distance: 'Two points',
  diameter: 'Circle',
  rectangle: 'Rectangle',
}

const KINDS = REFERENCES.map((id, place) => ({ id, label: LABELS[id], icon: id, key: keyOf(place) }))

const WHAT: Readonly<Record<ReferenceKind, string>> = {
  distance: 'Pick both ends of a size that is printed; the longer, the better.',
  diameter: 'Pick three points on the rim of a circle whose diameter is printed.',
  rectangle: 'Pick the four corners going round; the first side is the width.',
}

/** Those that do not fit the others come first: something is to be done about them. */
function misfitsFirst(references: readonly Reference[], row: TableView | undefined): Reference[] {
  const fits = ({ id }: Reference): number =>
    row?.references.some((one) => one.id === id && one.suspect) === true ? 0 : 1
  return [...references].sort((a, b) => fits(a) - fits(b))
}

/** The sizes known in a view, and three ways to add one. */
export function KnownSizes({ view }: { view: View }) {
  const tool = useBench((bench) => bench.picks.tool)
  const writable = useBench((bench) => bench.opened?.writable === true)
  const row = useBench((bench) => bench.table?.views.find(({ id }) => id === view.id))
  const chosen = useBench(({ selection }) =>
    selection?.kind === 'reference' && selection.view === view.id ? selection.id : null,
  )
  const kind = tool.kind === 'reference' ? tool.reference : null
  return (
    <Section title={`Figured sizes of “${view.name}”`}>
      <Choice
        label="Add a figured size"
        value={kind}
        options={KINDS}
        columns={3}
        disabled={!writable}
        note={kind === null ? 'A size that is printed on the sheet and can be trusted.' : WHAT[kind]}
        onChange={(reference) => takeUpToWork({ kind: 'reference', view: view.id, reference })}
      />
      {kind !== null && (
        <>
          <PickAt />
          <div className="block-row">
            <Button onPress={putDown}>Cancel</Button>
          </div>
        </>
      )}
      {view.references.length > 0 && (
        <p className="block-soft">
          Under each: what the scale makes of it, and how far the printed size is from that.
        </p>
      )}
      {view.references.length > 0 && (
        <ul className="known-sizes-list">
          {misfitsFirst(view.references, row).map((reference) => (
            <KnownSize
              key={reference.id}
              view={view}
              reference={reference}
              rows={row?.references.filter(({ id }) => id === reference.id) ?? []}
              chosen={reference.id === chosen}
            />
          ))}
        </ul>
      )}
    </Section>
  )
}
