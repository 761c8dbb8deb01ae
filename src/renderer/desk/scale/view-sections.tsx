import { problemOfUse as whyInUse } from '../../../core/job/checks/uses.ts'
import type { View } from '../../../core/job/model/types.ts'
import { formatDrawnScale } from '../../../core/quantity/format/format-drawn-scale.ts'
import { parseDrawnScale } from '../../../core/quantity/parse/parse-drawn-scale.ts'
import { useBench } from '../../bench/bench-store.ts'
import { putDown, takeUp } from '../../bench/choose.ts'
import { makeEdit } from '../../bench/edits.ts'
import { enteredBy } from '../../bench/signature.ts'
import { toTheSheet } from '../../focus/to-the-sheet.ts'
import { HistorySection } from '../../history/history-section.tsx'
import { AgreementChart } from '../../parts/agreement-chart.tsx'
import { Button } from '../../parts/button.tsx'
import { SavedField } from '../../parts/saved-field.tsx'
import { Section } from '../../parts/section.tsx'
import { reason } from '../../words/window-words.ts'
import { Remove } from '../keeping/remove.tsx'
import { scaleProblem } from '../keeping/written-problem.ts'
import { Fit } from './fit.tsx'
import { FitNumbers } from './fit-numbers.tsx'
import { KnownSizes } from './known-sizes.tsx'
import { MappingChoice } from './mapping-choice.tsx'

/** All that is known of a view: its sizes, what they make of its scale, how it is mapped. */
export function ViewSections({ view }: { view: View }) {
  const job = useBench((bench) => bench.opened?.job)
  const table = useBench((bench) => bench.table)
  const writable = useBench((bench) => bench.opened?.writable === true)
  const drawing = useBench(({ picks: { tool } }) => tool.kind === 'outline' && tool.view === view.id)
  if (job === undefined) return null
  const { id } = view
  const inUse = whyInUse(job, 'view', id)
  const entered = enteredBy(job, view)
  return (
    <>
      <KnownSizes view={view} />
      <Fit view={view} />
      <MappingChoice view={view} />
      <Section title="Scaled against printed" fold="shut">
        <AgreementChart job={job} table={table} view={id} />
      </Section>
      <FitNumbers view={view} />
      <Section title="This view" fold="shut">
        <SavedField
          label="Name"
          value={view.name}
          disabled={!writable}
          check={(name) => (name.trim() === '' ? reason('written.no-view-name') : null)}
          onSave={(name) => makeEdit({ do: 'change-view', id, set: { name } })}
        />
        <SavedField
          label="Scale as the sheet states it"
          value={view.drawnScale === undefined ? '' : formatDrawnScale(view.drawnScale, job.unit)}
          disabled={!writable}
          check={(text) => scaleProblem(text, job.unit)}
          onSave={(text) =>
            makeEdit(
              text === ''
                ? { do: 'change-view', id, clear: ['drawnScale'] }
                : { do: 'change-view', id, set: { drawnScale: parseDrawnScale(text, job.unit) } },
            )
          }
        />
        <div className="block-row">
          {drawing ? (
            <Button onPress={putDown}>Cancel</Button>
          ) : (
            <Button
              icon="outline"
              disabled={!writable}
              onPress={() => {
                takeUp({ kind: 'outline', view: id })
                toTheSheet()
              }}
            >
              {view.outline === undefined ? 'Draw its outline' : 'Draw its outline again'}
            </Button>
          )}
        </div>
        {entered !== null && <p className="block-soft">Entered by {entered}</p>}
        <Remove
          words="Remove this view"
          writable={writable}
          because={inUse}
          onRemove={() => void makeEdit({ do: 'remove-view', id })}
        />
      </Section>
      <HistorySection of={{ kind: 'view', id }} />
    </>
  )
}
