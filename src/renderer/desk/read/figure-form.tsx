import { useRef, useState } from 'react'
import type { Job } from '../../../core/job/model/types.ts'
import type { FigureReading } from '../../../core/reading/figure-reading.ts'
import { useBench } from '../../bench/bench-store.ts'
import { makeThen } from '../../bench/edits.ts'
import { mint, mintForTrial } from '../../bench/mint.ts'
import { DraftVerdict } from '../../entering/draft-verdict.tsx'
import { nameOfLabel, nameProblem } from '../../entering/name-of-label.ts'
import { Switch } from '../../parts/switch.tsx'
import { TextField } from '../../parts/text-field.tsx'
import { proposedLabel } from '../../reading/draft-of-reading.ts'
import { figureChoices } from '../../reading/figure-choices.ts'
import { figuresWrittenOn } from '../../reading/figures-written.ts'
import { type ReadDrafted, readDraft, type TakenAs } from '../../reading/read-draft.ts'
import { KeepForm } from '../keeping/keep-form.tsx'
import { ChoiceList } from './choice-list.tsx'
import { FigureOf, type OfDraft } from './figure-of.tsx'

interface FigureFormProps {
  job: Job
  sheet: string
  reading: FigureReading
  /** The dimension that it is offered to; null: to a new one. */
  of: string | null
  /** Whether it is to be written otherwise from the start. */
  writes?: boolean
  /** Whether the keyboard comes to it as it appears. */
  takesKeyboard?: boolean
  onKept: (dimension: string) => void
  onAbandon: () => void
}

/** A figure that was read: what it is taken for, how surely, and of which dimension. Enter takes it, Esc gives it up. */
export function FigureForm(props: FigureFormProps) {
  const { job, sheet, reading, of, writes = false, takesKeyboard = true, onKept, onAbandon } = props
  const table = useBench((bench) => bench.table)
  const unit = table?.unit ?? job.unit
  const [picked, setPicked] = useState<string | null>(null)
  const [written, setWritten] = useState('')
  const [sure, setSure] = useState<boolean | null>(null)
  const [draft, setDraft] = useState<OfDraft>({
    way: of === null ? 'new' : 'there',
    there: of,
    label: null,
    name: null,
  })
  const field = useRef<HTMLDivElement>(null)
  const row = draft.way === 'there' ? table?.rows.find(({ name }) => name === draft.there) : undefined
  const { choices, besides } = figureChoices(reading, {
    job,
    row,
    unit,
    written: figuresWrittenOn(job, sheet),
  })
  const chosen = choices.some(({ text }) => text === picked) ? picked : (choices[0]?.text ?? null)
  const isWritten = written.trim() !== ''
  const text = isWritten ? written.trim() : (chosen ?? '')
  const isSure = sure ?? (isWritten || (reading.clear && text === reading.text))
  const label = draft.label ?? proposedLabel(job, sheet, reading, text)
  const name = draft.name ?? nameOfLabel(label)
  const taken: TakenAs = { sheet, reading, text, sure: isSure, of: ofDraft(draft, label, name) }
  const read = readDraft(taken, job, { unit, mint: mintForTrial() })
  const problem = draft.way === 'new' && name !== '' ? nameProblem(job, name) : null
  const ready = read.edit !== null && problem === null
  const keep = async () => {
    if (!ready) return
    const kept = await makeThen((now) => editOf(readDraft(taken, now, { unit, mint }), read))
    if (kept && taken.of !== null) onKept(taken.of.name)
  }
  const write = () => field.current?.querySelector('input')?.focus()
  const submit = () => field.current?.closest('form')?.requestSubmit()
  return (
    <KeepForm
      label="Figure that was read"
      keep="Take this figure"
      onKeep={keep}
      onAbandon={onAbandon}
      disabled={!ready}
      staysPut
    >
      {choices.length > 0 && (
        <ChoiceList
          choices={choices}
          chosen={isWritten ? null : chosen}
          onChoose={(one) => {
            setPicked(one)
            setWritten('')
          }}
          onWrite={write}
          onTake={submit}
          takesKeyboard={takesKeyboard && !writes}
        />
      )}
      {besides.length > 0 && (
        <p className="block-soft">Weighed by what is {besides.join(' and ')} as well.</p>
      )}
      <div ref={field}>
        <TextField
          label={choices.length > 0 ? 'Or write it otherwise' : 'Write what is printed'}
          value={written}
          onChange={setWritten}
          placeholder={text}
          note={choices.length > 0 ? 'Key: C' : 'Sign for sign, as it stands on the sheet.'}
          autoFocus={takesKeyboard && (writes || choices.length === 0)}
        />
      </div>
      {text !== '' && <DraftVerdict drafted={read.drafted} />}
      <Switch
        label="I am sure of it"
        on={isSure}
        onChange={setSure}
        note={
          isSure
            ? 'It is kept as a clear figure.'
            : 'It is kept as doubtful with all that it could be, and is not adopted by itself.'
        }
      />
      <FigureOf
        job={job}
        table={table}
        texts={isWritten ? [text] : choices.map((one) => one.text)}
        draft={draft}
        label={label}
        name={name}
        problem={problem}
        onWrite={setDraft}
      />
    </KeepForm>
  )
}

function ofDraft({ way, there }: OfDraft, label: string, name: string): TakenAs['of'] {
  if (way === 'new') return { is: 'new', name, label }
  return there === null ? null : { is: 'there', name: there }
}

/** The edit of the job as it is by now; where it is refused there, the host says why. */
const editOf = (now: ReadDrafted, before: ReadDrafted) => {
  const edit = now.edit ?? before.edit
  return edit === null ? null : { edit }
}
