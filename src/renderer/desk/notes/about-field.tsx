import { called, labelOfId } from '../../../core/job/ids/label.ts'
import type { Job } from '../../../core/job/model/types.ts'
import { capital } from '../../../core/words/capital.ts'
import { Combo } from '../../parts/combo.tsx'
import type { PickerOption } from '../../parts/picker.tsx'

const NOTHING = ' '

/** Everything of a job that a note can be about; ids that are there twice are offered once. */
function aboutOptions(job: Job, value: string | null): PickerOption<string>[] {
  const options = new Map<string, PickerOption<string>>()
  const offer = (id: string, label: string, note: string) => {
    if (!options.has(id)) options.set(id, { id, label, note })
  }
  offer(NOTHING, 'Nothing in particular', 'Only where it is on the sheet')
  for (const { name, label } of job.dimensions) offer(name, label === '' ? name : label, `Dimension ${name}`)
  for (const view of job.views) offer(view.id, view.name, capital(called('view', view)))
  for (const { id, title } of job.sheets) offer(id, title, 'Sheet')
  for (const mark of job.marks) offer(mark.id, capital(called('mark', mark)), mark.label ?? 'Mark')
  if (value !== null) offer(value, labelOfId(value), 'Not in this job')
  return [...options.values()]
}

interface AboutFieldProps {
  job: Job
  value: string | null
  onChange: (about: string | null) => void
}

/** What a note is about. */
export function AboutField({ job, value, onChange }: AboutFieldProps) {
  return (
    <Combo
      label="About"
      value={value ?? NOTHING}
      options={aboutOptions(job, value)}
      onChange={(about) => onChange(about === NOTHING ? null : about)}
    />
  )
}
