import { applyEdit, type Edit, readEdit } from '../../../core/job/edits/edit.ts'
import type { Job } from '../../../core/job/model/types.ts'
import { GAUGE_STANDARDS } from '../../../core/quantity/gauges.ts'
import { GAUGE_NAMES } from '../../../core/words/gauge-names.ts'
import { useBench } from '../../bench/bench-store.ts'
import { makeEdit } from '../../bench/edits.ts'
import { Picker } from '../../parts/picker.tsx'
import { SavedField } from '../../parts/saved-field.tsx'
import { Section } from '../../parts/section.tsx'
import { refusalOf } from '../../words/refusal.ts'

/** No gauge is said. */
const NOT_SAID = ''

const GAUGES = [
  { id: NOT_SAID, label: 'Not said' },
  ...GAUGE_STANDARDS.map((id) => ({ id, label: GAUGE_NAMES[id] })),
] as const

const toleranceEdit = (text: string): Edit =>
  text === '' ? { do: 'describe', clear: ['tolerance'] } : { do: 'describe', set: { tolerance: text } }

/** What figures of the whole job mean where they do not say it themselves. */
export function ConventionsSection({ job }: { job: Job }) {
  const writable = useBench((bench) => bench.opened?.writable === true)
  return (
    <Section title="What its figures mean" fold="shut">
      <SavedField
        label="General tolerance"
        value={job.tolerance ?? ''}
        disabled={!writable}
        note={`Of figures without one of their own, as the title block states it, e.g. ${job.unit === 'in' ? '±1/32"' : '±0.5 mm'}.`}
        check={(text) =>
          text.trim() === '' ? null : refusalOf(() => applyEdit(job, readEdit(toleranceEdit(text.trim()))))
        }
        onSave={(text) => makeEdit(toleranceEdit(text))}
      />
      <Picker
        label="Numbers of sheet gauges are of"
        value={job.gauge ?? NOT_SAID}
        options={GAUGES}
        disabled={!writable}
        onChange={(gauge) =>
          void makeEdit(
            gauge === NOT_SAID ? { do: 'describe', clear: ['gauge'] } : { do: 'describe', set: { gauge } },
          )
        }
      />
    </Section>
  )
}
