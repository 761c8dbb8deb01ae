import { useState } from 'react'
import { addDimension, addScaledEvidence } from '../../../core/job/from-picks/add-measured.ts'
import { kindOfMeasure } from '../../../core/job/model/mark-needs.ts'
import type { Job, Unit, View } from '../../../core/job/model/types.ts'
import { useBench } from '../../bench/bench-store.ts'
import { makeOf } from '../../bench/edits.ts'
import { mint, mintForTrial } from '../../bench/mint.ts'
import { figureBeside } from '../../entering/figure-beside.ts'
import { isTaken, nameOfLabel, nameProblem } from '../../entering/name-of-label.ts'
import { useTrial } from '../../entering/use-trial.ts'
import { Choice } from '../../parts/choice.tsx'
import { holesOffOneCircle, type MeasurePicks, pickedMeasure } from '../../picking/picked-marks.ts'
import { isLooking } from '../../picking/picks.ts'
import { holesOffInWords } from '../in-hand/holes-words.ts'
import { outsideView } from '../in-hand/outside-view.ts'
import { HowSurely, PickedOn } from '../in-hand/picked-on.tsx'
import { pickAnew, showKept } from '../keeping/after-picking.ts'
import { Caution } from '../keeping/caution.tsx'
import { CautionInSight } from '../keeping/caution-in-sight.tsx'
import { KeepForm } from '../keeping/keep-form.tsx'
import { leaveAlike, takeAlike } from './alike.ts'
import { countedUp } from './counted-up.ts'
import { ExistingDimension } from './existing-dimension.tsx'
import { fromAfarInWords } from './from-afar.ts'
import { NewDimension, type NewDimensionDraft } from './new-dimension.tsx'
import { TrialFigure } from './trial-figure.tsx'
import { WhichAngle } from './which-angle.tsx'

/** Of trials with one name only the newest is worked out. */
const TRIAL = 'as_picked'
const FIGURED = 'as_figured'

const NOTHING: NewDimensionDraft = { label: '', name: null, printed: '', count: null }

/** What was picked, what it comes to, and what it is called. */
export function MeasureForm({ picks, view }: { picks: MeasurePicks; view: View }) {
  const job = useBench((bench) => bench.opened?.job)
  const unit = useBench((bench) => bench.unit ?? bench.opened?.job.unit ?? 'in')
  const chosen = useBench(({ selection }) => (selection?.kind === 'dimension' ? selection.name : null))
  const [as, setAs] = useState<'new' | 'evidence'>('new')
  const [draft, setDraft] = useState<NewDimensionDraft>(() => takeAlike(picks.tool, NOTHING))
  const [dimension, setDimension] = useState(chosen)
  if (job === undefined) return null

  const label = draft.label.trim()
  const name = draft.name ?? nameOfLabel(label)
  const printed = draft.printed.trim()
  const kind = kindOfMeasure(picks.tool.measure)
  const alike = job.dimensions.filter((one) => one.kind === kind)
  const target = alike.find((one) => one.name === dimension)?.name ?? null
  const figure = figureBeside(job, printed, { kind, unit, view, count: draft.count })
  const count = draft.count ?? figure.count ?? 1
  const isRefused = figure.drafted !== null && 'refused' in figure.drafted
  const keep = async (again: boolean) => {
    const measured = pickedMeasure(picks, job)
    const made =
      as === 'new'
        ? addDimension(job, measured, { name, label, count, ...(printed === '' ? {} : { printed }) }, mint)
        : target === null
          ? null
          : addScaledEvidence(job, measured, target, mint)
    if (made === null || !(await makeOf(made))) return
    if (as === 'new' && again) {
      const isCalled = (one: string) => one === label || isTaken(job, nameOfLabel(one))
      leaveAlike(picks.tool, { ...draft, label: countedUp(label, isCalled), name: null })
    }
    showKept(picks, { kind: 'dimension', name: as === 'new' ? name : (target ?? name) })
  }
  const ready =
    as === 'new'
      ? label !== '' && name !== '' && nameProblem(job, name) === null && !isRefused
      : target !== null
  return (
    <KeepForm
      label="What was picked"
      keep={as === 'new' ? 'Keep' : 'Keep as evidence'}
      {...(as === 'new' ? { keepAgain: 'Keep and repeat' } : {})}
      onKeep={keep}
      onAbandon={() => pickAnew(picks)}
      disabled={!ready}
    >
      <TrialOf picks={picks} job={job} unit={unit} view={view} />
      <PickedOn picks={picks} />
      <HolesOff picks={picks} job={job} />
      <WhichAngle picks={picks} marks={job.marks} />
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
          draft={draft}
          onWrite={setDraft}
          name={name}
          count={count}
          problem={name === '' ? null : nameProblem(job, name)}
          figure={figure.drafted}
          against={
            printed !== '' && !isRefused ? (
              <AgainstFigure picks={picks} job={job} unit={unit} printed={printed} />
            ) : null
          }
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
      <HowSurely picks={picks} />
    </KeepForm>
  )
}

/** Of the holes of a bolt circle, that one of them is on no circle with the others. */
function HolesOff({ picks, job }: { picks: MeasurePicks; job: Job }) {
  const off = holesOffOneCircle(picks, job)
  return off === null ? null : <Caution>{holesOffInWords(off)}</Caution>
}

interface TrialOfProps {
  picks: MeasurePicks
  job: Job
  unit: Unit
  view: View
}

function TrialOf({ picks, job, unit, view }: TrialOfProps) {
  const looking = isLooking(picks)
  const as = { name: TRIAL, label: TRIAL, count: 1 }
  const trial = useTrial(job, addDimension(job, pickedMeasure(picks, job), as, mintForTrial()), TRIAL, unit)
  const row = trial?.row ?? null
  const afar = looking || row === null ? '' : fromAfarInWords(picks, row)
  return (
    <>
      {/* A pick by hand is less sure than what is found of it, so nothing is said before that is known. */}
      <TrialFigure label={`As picked in “${view.name}”`} trial={looking ? null : trial} />
      {afar !== '' && <Caution>{afar}</Caution>}
    </>
  )
}

interface AgainstFigureProps extends Omit<TrialOfProps, 'view'> {
  printed: string
}

/** Whether the figure that is written speaks against what was picked. */
function AgainstFigure({ picks, job, unit, printed }: AgainstFigureProps) {
  const as = { name: FIGURED, label: FIGURED, count: 1, printed }
  const made = addDimension(job, pickedMeasure(picks, job), as, mintForTrial())
  const row = useTrial(job, made, FIGURED, unit)?.row
  return row?.status === 'disputed' ? <CautionInSight>{row.why}</CautionInSight> : null
}
