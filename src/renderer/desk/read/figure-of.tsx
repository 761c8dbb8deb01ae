import type { Job } from '../../../core/job/model/types.ts'
import type { Table } from '../../../core/ledger/table/table.ts'
import type { AnyReason } from '../../../core/words/reason.ts'
import { Button } from '../../parts/button.tsx'
import { Choice } from '../../parts/choice.tsx'
import { Combo } from '../../parts/combo.tsx'
import { TextField } from '../../parts/text-field.tsx'
import { mayBeOf } from '../../reading/may-be-of.ts'
import { sentenceOf } from '../../words/window-words.ts'

/** To which dimension a figure is given, as it is being said. */
export interface OfDraft {
  way: 'new' | 'there'
  /** The one of the job, by its name; null: not said yet. */
  there: string | null
  /** What a new one is; null: as proposed. */
  label: string | null
  /** Its name in formulas; null: made from the label. */
  name: string | null
}

const WAYS = [
  { id: 'new', label: 'A new one' },
  { id: 'there', label: 'One that is there' },
] as const

interface FigureOfProps {
  job: Job
  table: Table | null
  /** All that the figure could be, as it is taken first. */
  texts: readonly string[]
  draft: OfDraft
  label: string
  name: string
  /** Why a new one can't have that name; null where it can. */
  problem: AnyReason | null
  onWrite: (draft: OfDraft) => void
}

/** To which dimension a figure is given: a new one, or one of the job that is found by a part of its name. */
export function FigureOf({ job, table, texts, draft, label, name, problem, onWrite }: FigureOfProps) {
  const offered = draft.way === 'new' ? mayBeOf(texts, job, table) : []
  return (
    <>
      <Choice
        label="Figure of which dimension"
        value={draft.way}
        options={WAYS}
        onChange={(way) => onWrite({ ...draft, way })}
        disabled={job.dimensions.length === 0}
      />
      {draft.way === 'new' ? (
        <>
          {offered.map((one) => (
            <div key={one.name}>
              <Button onPress={() => onWrite({ ...draft, way: 'there', there: one.name })}>
                Of “{one.label}”, which comes to {one.comesTo}
              </Button>
            </div>
          ))}
          <TextField
            label="What is it?"
            value={label}
            onChange={(written) => onWrite({ ...draft, label: written, name: null })}
            note={
              <>
                In formulas: <code>{name}</code>
              </>
            }
            error={sentenceOf(problem)}
          />
        </>
      ) : (
        <Combo
          label="Evidence for"
          value={draft.there}
          options={job.dimensions.map(({ name: id, label: what }) => ({ id, label: what || id, note: id }))}
          onChange={(there) => onWrite({ ...draft, there })}
          placeholder="Type a part of its name"
        />
      )}
    </>
  )
}
