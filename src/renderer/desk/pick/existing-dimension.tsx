import { addScaledEvidence } from '../../../core/job/from-picks/add-measured.ts'
import type { Dimension, Job, Unit } from '../../../core/job/model/types.ts'
import { statusWord } from '../../../core/words/status-word.ts'
import { mintForTrial } from '../../bench/mint.ts'
import { useTrial } from '../../entering/use-trial.ts'
import { Combo } from '../../parts/combo.tsx'
import { type MeasurePicks, pickedMeasure } from '../../picking/picked-marks.ts'
import { TrialFigure } from './trial-figure.tsx'

interface ExistingDimensionProps {
  job: Job
  unit: Unit
  /** Those of the kind that was picked. */
  dimensions: readonly Dimension[]
  value: string | null
  onChange: (name: string | null) => void
  picks: MeasurePicks
}

/** To which dimension the picks are added. */
export function ExistingDimension(props: ExistingDimensionProps) {
  const { job, unit, dimensions, value, onChange, picks } = props
  return (
    <>
      <Combo
        label="Evidence for"
        value={value}
        options={dimensions.map(({ name, label }) => ({ id: name, label: label || name, note: name }))}
        onChange={onChange}
        placeholder="Type a part of its name"
        autoFocus
        opensAtOnce
      />
      {value !== null && <WithIt job={job} unit={unit} name={value} picks={picks} key={value} />}
    </>
  )
}

function WithIt({ job, unit, name, picks }: { job: Job; unit: Unit; name: string; picks: MeasurePicks }) {
  const made = addScaledEvidence(job, pickedMeasure(picks, job), name, mintForTrial())
  const trial = useTrial(job, made, name, unit)
  const status = trial?.row == null ? '' : `, ${statusWord(trial.row.status)}`
  return <TrialFigure label={`${name} with it${status}`} trial={trial} />
}
