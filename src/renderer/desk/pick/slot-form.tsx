import { useState } from 'react'
import { addSlot, type SlotSize } from '../../../core/job/from-picks/add-slot.ts'
import type { Job, Unit, View } from '../../../core/job/model/types.ts'
import { useBench } from '../../bench/bench-store.ts'
import { makeOf } from '../../bench/edits.ts'
import { mint } from '../../bench/mint.ts'
import { figureBeside } from '../../entering/figure-beside.ts'
import { TextField } from '../../parts/text-field.tsx'
import { type MeasurePicks, pickedSlot } from '../../picking/picked-marks.ts'
import { sentenceOf } from '../../words/window-words.ts'
import { outsideView } from '../in-hand/outside-view.ts'
import { HowSurely, PickedOn } from '../in-hand/picked-on.tsx'
import { pickAnew, showKept } from '../keeping/after-picking.ts'
import { Caution } from '../keeping/caution.tsx'
import { CautionInSight } from '../keeping/caution-in-sight.tsx'
import { KeepForm } from '../keeping/keep-form.tsx'
import { leaveAlike, takeAlike } from './alike.ts'
import { countedUp } from './counted-up.ts'
import { EndsDiffer } from './ends-differ.tsx'
import { OffField } from './off-field.tsx'
import {
  isSlotTaken,
  NO_SLOT,
  namedSizes,
  SLOT_SIZES,
  type SlotDraft,
  sizesKept,
  slotNameProblem,
  slotSizeName,
} from './slot-draft.ts'
import { SlotSizeField } from './slot-size.tsx'
import { useSlotTrial } from './use-slot-trial.ts'

/** The slot that was picked: what its sizes come to, which of them are kept, and what it is called. */
export function SlotForm({ picks, view }: { picks: MeasurePicks; view: View }) {
  const job = useBench((bench) => bench.opened?.job)
  const unit = useBench((bench) => bench.unit ?? bench.opened?.job.unit ?? 'in')
  const [draft, setDraft] = useState<SlotDraft>(() => takeAlike(picks.tool, NO_SLOT))
  if (job === undefined) return null

  const label = draft.label.trim()
  const figureOf = (size: SlotSize) =>
    figureBeside(job, draft.printed[size].trim(), { kind: 'length', unit, view, count: draft.count })
  const figures = new Map(SLOT_SIZES.map((size) => [size, figureOf(size)]))
  const said = sizesKept(draft).flatMap((size) => figures.get(size)?.count ?? [])
  const count = draft.count ?? said[0] ?? 1
  const refused = (size: SlotSize): boolean => {
    const drafted = figures.get(size)?.drafted ?? null
    return drafted !== null && 'refused' in drafted
  }
  const sizes = namedSizes(draft)
  const problem = slotNameProblem(job, draft)
  const isReady =
    sizes.length > 0 &&
    sizes.every(({ name, size }) => name !== '' && !refused(size)) &&
    problem === null &&
    label !== ''
  const keep = async (again: boolean) => {
    const made = addSlot(job, pickedSlot(picks), { label, count, sizes }, mint)
    if (!(await makeOf(made)) || 'refused' in made) return
    if (again) {
      const isCalled = (one: string) => one === label || isSlotTaken(job, one)
      leaveAlike<SlotDraft>(picks.tool, { ...draft, label: countedUp(label, isCalled) })
    }
    showKept(picks, { kind: 'dimension', name: made.id })
  }
  return (
    <KeepForm
      label="What was picked"
      keep="Keep"
      keepAgain="Keep and repeat"
      onKeep={keep}
      onAbandon={() => pickAnew(picks)}
      disabled={!isReady}
    >
      <p className="block-soft">As picked in “{view.name}”:</p>
      <EndsDiffer picks={picks} job={job} unit={unit} />
      <PickedOn picks={picks} />
      {outsideView(view, picks, job.marks) && (
        <Caution>
          Some of these picks lie outside “{view.name}”, by whose scale they are measured. Is it the right
          view?
        </Caution>
      )}
      <TextField
        label="What is it?"
        value={draft.label}
        onChange={(written) => setDraft({ ...draft, label: written })}
        autoFocus
        note="In your own words: Slot; Foot, slot for the bolt. Its sizes are named after it."
        error={sentenceOf(problem)}
      />
      {SLOT_SIZES.map((size) => (
        <OneSize
          key={size}
          {...{ size, draft, picks, job, unit }}
          drafted={figures.get(size)?.drafted ?? null}
          onWrite={setDraft}
        />
      ))}
      {sizes.length === 0 && <p className="block-soft">Nothing of it is ticked: tick what is to be kept.</p>}
      <OffField value={count} onWrite={(value) => setDraft({ ...draft, count: value })} />
      <HowSurely picks={picks} />
    </KeepForm>
  )
}

interface OneSizeProps {
  size: SlotSize
  draft: SlotDraft
  onWrite: (draft: SlotDraft) => void
  drafted: ReturnType<typeof figureBeside>['drafted']
  picks: MeasurePicks
  job: Job
  unit: Unit
}

function OneSize({ size, draft, onWrite, drafted, picks, job, unit }: OneSizeProps) {
  const printed = draft.printed[size].trim()
  const isRead = printed !== '' && (drafted === null || !('refused' in drafted))
  const trial = useSlotTrial(picks, job, unit, { size })
  return (
    <SlotSizeField
      size={size}
      name={slotSizeName(draft.label.trim(), size)}
      kept={draft.kept[size]}
      onKeep={(kept) => onWrite({ ...draft, kept: { ...draft.kept, [size]: kept } })}
      printed={draft.printed[size]}
      onPrint={(written) => onWrite({ ...draft, printed: { ...draft.printed, [size]: written } })}
      figure={drafted}
      trial={trial}
      against={isRead ? <AgainstFigure {...{ size, printed, picks, job, unit }} /> : null}
    />
  )
}

interface AgainstFigureProps extends Pick<OneSizeProps, 'size' | 'picks' | 'job' | 'unit'> {
  printed: string
}

/** Whether the figure that is written speaks against what was picked. */
function AgainstFigure({ size, printed, picks, job, unit }: AgainstFigureProps) {
  const row = useSlotTrial(picks, job, unit, { size, printed })?.row
  return row?.status === 'disputed' ? <CautionInSight>{row.why}</CautionInSight> : null
}
