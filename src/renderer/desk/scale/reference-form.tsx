import { useState } from 'react'
import { addKnownSize, type KnownSize } from '../../../core/job/from-picks/add-known-size.ts'
import type { View } from '../../../core/job/model/types.ts'
import { useBench } from '../../bench/bench-store.ts'
import { makeOf } from '../../bench/edits.ts'
import { mint } from '../../bench/mint.ts'
import { Section } from '../../parts/section.tsx'
import { TextField } from '../../parts/text-field.tsx'
import { pickedMarks } from '../../picking/picked-marks.ts'
import { UNIT_WORDS } from '../../words/unit-words.ts'
import { sentenceOf } from '../../words/window-words.ts'
import { useLastUsed } from '../in-hand/last-used.ts'
import { outsideView } from '../in-hand/outside-view.ts'
import { HowSurely, PickedOn } from '../in-hand/picked-on.tsx'
import { pickAnew, showKept } from '../keeping/after-picking.ts'
import { Caution } from '../keeping/caution.tsx'
import { KeepForm } from '../keeping/keep-form.tsx'
import { readAs } from '../keeping/read-as.ts'
import { lengthProblem, sizeProblem } from '../keeping/written-problem.ts'

/** Says what the size is whose marks were picked. */
export function ReferenceForm({ view }: { view: View }) {
  const job = useBench((bench) => bench.opened?.job)
  const picks = useBench((bench) => bench.picks)
  const [size, setSize] = useState('')
  const [height, setHeight] = useState('')
  const [u, setU] = useState('')
  if (job === undefined || picks.tool.kind !== 'reference') return null
  const rectangle = picks.tool.reference === 'rectangle'
  const of = picks.tool.reference
  const problems = [sizeProblem(job, size, of), sizeProblem(job, height, of), lengthProblem(job, u)].map(
    sentenceOf,
  )
  const written = size.trim() !== '' && (!rectangle || height.trim() !== '')
  const keep = async () => {
    const known: KnownSize = {
      ...(rectangle ? { width: size.trim(), height: height.trim() } : { size: size.trim() }),
      ...(u.trim() === '' ? {} : { u: u.trim() }),
    }
    const made = addKnownSize(job, view, pickedMarks(picks), known, mint)
    if (!(await makeOf(made)) || 'refused' in made) return
    useLastUsed.setState({ view: view.id })
    showKept(picks, { kind: 'reference', view: view.id, id: made.id })
  }
  const example = job.unit === 'in' ? `1'-2 3/8"` : '365 mm'
  return (
    <KeepForm
      label="Figured size"
      keep="Keep this size"
      onKeep={keep}
      onAbandon={() => pickAnew(picks)}
      disabled={!written || problems.some((problem) => problem !== '')}
    >
      <h3 className="section-title">How large is it?</h3>
      <PickedOn picks={picks} />
      {outsideView(view, picks, job.marks) && (
        <Caution>Some of these picks lie outside “{view.name}”. Is it the right view?</Caution>
      )}
      <TextField
        label={rectangle ? 'Width, as printed' : 'Size, as printed'}
        value={size}
        onChange={setSize}
        error={problems[0]}
        autoFocus
        note={readAs(job, size, of) || `For instance ${example}. A bare number is ${UNIT_WORDS[job.unit]}.`}
      />
      {rectangle && (
        <TextField
          label="Height, as printed"
          value={height}
          onChange={setHeight}
          error={problems[1]}
          note={readAs(job, height, of)}
        />
      )}
      <HowSurely picks={picks} />
      <Section title="More" fold="shut">
        <TextField
          label="Standard uncertainty of this size"
          value={u}
          onChange={setU}
          error={problems[2]}
          note="Leave it empty for a figure that is printed on the sheet."
        />
      </Section>
    </KeepForm>
  )
}
