import { type ReactNode, useState } from 'react'
import type { AnyReason } from '../../../core/words/reason.ts'
import { DraftVerdict } from '../../entering/draft-verdict.tsx'
import type { Drafted } from '../../entering/new-evidence.ts'
import { Button } from '../../parts/button.tsx'
import { TextField } from '../../parts/text-field.tsx'
import { sentenceOf } from '../../words/window-words.ts'
import { OffField } from './off-field.tsx'

/** What is written for a new dimension. */
export interface NewDimensionDraft {
  label: string
  /** For formulas; null: made from the label. */
  name: string | null
  /** The figure on the sheet; empty where none is written down. */
  printed: string
  /** How many of it; null: as the figure says, or one. */
  count: number | null
}

interface NewDimensionProps {
  draft: NewDimensionDraft
  onWrite: (draft: NewDimensionDraft) => void
  name: string
  count: number
  /** Why the name can't be had; null when it can. */
  problem: AnyReason | null
  /** What the figure is read as. */
  figure: Drafted
  /** Whether the figure speaks against what was picked. */
  against: ReactNode
  /** Adds to the dimension that has the name; left out when there is none it could be added to. */
  onAddToExisting: (() => void) | undefined
}

/** What a new dimension is called, the figure that is printed for it, and how many there are: Enter keeps all of it. */
export function NewDimension(props: NewDimensionProps) {
  const { draft, onWrite, name, count, problem, figure, against, onAddToExisting } = props
  const [naming, setNaming] = useState(draft.name !== null)
  return (
    <>
      <TextField
        label="What is it?"
        value={draft.label}
        onChange={(label) => onWrite({ ...draft, label })}
        autoFocus
        note={
          naming || name === '' ? (
            'In your own words: Drum, length; Flange, bolt circle.'
          ) : (
            <>
              In formulas: <code>{name}</code>
            </>
          )
        }
        error={naming ? undefined : sentenceOf(problem)}
      />
      {onAddToExisting !== undefined && (
        <Button onPress={onAddToExisting}>Add this pick to it as further evidence</Button>
      )}
      <TextField
        label="Printed as"
        value={draft.printed}
        onChange={(printed) => onWrite({ ...draft, printed })}
        note="The figure on the sheet, sign for sign; empty where there is none."
      />
      {draft.printed.trim() !== '' && <DraftVerdict drafted={figure} />}
      {against}
      <OffField value={count} onWrite={(value) => onWrite({ ...draft, count: value })} />
      {naming ? (
        <TextField
          label="Name in formulas"
          value={name}
          onChange={(written) => onWrite({ ...draft, name: written })}
          error={sentenceOf(problem)}
          note="Letters, digits and underscores."
        />
      ) : (
        <Button kind="quiet" onPress={() => setNaming(true)}>
          Another name in formulas
        </Button>
      )}
    </>
  )
}
