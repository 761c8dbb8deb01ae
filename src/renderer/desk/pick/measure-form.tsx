import { useState } from 'react'
import { addDimension, addScaledEvidence } from '../../../core/job/from-picks/add-measured.ts'
import { kindOfMeasure } from '../../../core/job/model/mark-needs.ts'
import type { Job, Unit, View } from '../../../core/job/model/types.ts'
import { useBench } from '../../bench/bench-store.ts'
import { choose, nextAfter, takeUp } from '../../bench/choose.ts'
import { makeOf } from '../../bench/edits.ts'
import { mint, mintForTrial } from '../../bench/mint.ts'
import { toTheSheet } from '../../focus/to-the-sheet.ts'
import { Choice } from '../../parts/choice.tsx'
import { type MeasurePicks, pickedMeasure } from '../../picking/picked-marks.ts'
import { outsideView } from '../in-hand/outside-view.ts'
import { searchInWords } from '../in-hand/stroke-words.ts'
import { Caution } from '../keeping/caution.tsx'
import { KeepForm } from '../keeping/keep-form.tsx'
import { ExistingDimension } from './existing-dimension.tsx'
import { isTaken, nameOfLabel, nameProblem } from './name-of-label.ts'
import { NewDimension } from './new-dimension.tsx'
import { TrialFigure } from './trial-figure.tsx'
import { useTrial } from './use-trial.ts'

const TRIAL = 'as_picked'

/** What was picked, what it comes to, and what it is called. */
export function MeasureForm({ picks, view }: { picks: MeasurePicks; view: View }) {
  const job = useBench((bench) => bench.opened?.job)
  const unit = useBench((bench) => bench.unit ?? bench.opened?.job.unit ?? 'in')
  const chosen = useBench(({ selection }) => (selection?.kind === 'dimension' ? selection.name : null))
  const [as, setAs] = useState<'new' | 'evidence'>('new')
  const [label, setLabel] = useState('')
  const [written, setWritten] = useState<string | null>(null)
  const [count, setCount] = useState(1)
  const [dimension, setDimension] = useState(chosen)
  if (job === undefined) return null

  const name = written ?? nameOfLabel(label)
  const kind = kindOfMeasure(picks.tool.measure)
  const alike = job.dimensions.filter((one) => one.kind === kind)
  const target = alike.find((one) => one.name === dimension)?.name ?? null
  const abandon = () => {
    takeUp(picks.tool)
    toTheSheet()
  }
  const keep = async () => {
    const measured = pickedMeasure(picks)
    const made =
      as === 'new'
        ? addDimension(job, measured, { name, label: label.trim(), count }, mint)
        : target === null
          ? null
          : addScaledEvidence(job, measured, target, mint)
    if (made === null || !(await makeOf(made))) return
    nextAfter(picks, picks.tool)
    choose({ kind: 'dimension', name: as === 'new' ? name : (target ?? name) })
    toTheSheet()
  }
  const ready =
    as === 'new' ? label.trim() !== '' && name !== '' && nameProblem(job, name) === null : target !== null
  return (
    <KeepForm
      label="What was picked"
      keep={as === 'new' ? 'Keep this dimension' : 'Keep as evidence'}
      onKeep={keep}
      onAbandon={abandon}
      disabled={!ready}
    >
      <TrialOf picks={picks} job={job} unit={unit} view={view} />
      <p className="block-soft" aria-live="polite">
        {searchInWords(picks)}
      </p>
      {outsideView(view, picks, job.marks) && (
        <Caution>
          Some of these picks lie outside “{view.name}”, by whose scale they are measured. Is it the right
          view?
        </Caution>
      )}
      {alike.length > 0 && (
        <Choice
          label="Keep it as"
          value={as}
          options={[
            { id: 'new', label: 'A new dimension' },
            { id: 'evidence', label: 'Further evidence' },
          ]}
          onChange={setAs}
        />
      )}
      {as === 'new' ? (
        <NewDimension
          label={label}
          onLabel={setLabel}
          name={name}
          onName={setWritten}
          problem={name === '' ? null : nameProblem(job, name)}
          count={count}
          onCount={setCount}
          onAddToExisting={
            alike.some((one) => one.name === name) && isTaken(job, name)
              ? () => {
                  setDimension(name)
                  setAs('evidence')
                }
              : undefined
          }
        />
      ) : (
        <ExistingDimension
          job={job}
          unit={unit}
          dimensions={alike}
          value={target}
          onChange={setDimension}
          picks={picks}
        />
      )}
    </KeepForm>
  )
}

interface TrialOfProps {
  picks: MeasurePicks
  job: Job
  unit: Unit
  view: View
}

function TrialOf({ picks, job, unit, view }: TrialOfProps) {
  const as = { name: TRIAL, label: TRIAL, count: 1 }
  const made = addDimension(job, pickedMeasure(picks), as, mintForTrial())
  const trial = useTrial(job, made, TRIAL, unit)
  return <TrialFigure label={`As picked in “${view.name}”`} trial={trial} />
}
