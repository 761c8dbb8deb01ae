import { useReducer, useRef } from 'react'
import { goTo } from '../bench/choose.ts'
import { makeThen } from '../bench/edits.ts'
import { mint } from '../bench/mint.ts'
import { DraftVerdict } from '../entering/draft-verdict.tsx'
import { EvidenceFields } from '../entering/evidence-fields.tsx'
import { draftedEvidence, type EvidenceDraft } from '../entering/new-evidence.ts'
import { TriedFormula } from '../entering/tried-formula.tsx'
import { currentInstrument } from '../instruments/at-hand.ts'
import { Button } from '../parts/button.tsx'
import { Choice } from '../parts/choice.tsx'
import { Section } from '../parts/section.tsx'
import { useInSight } from '../parts/use-in-sight.ts'
import type { CardProps } from './card-props.ts'
import { evidenceForm, SHUT_FORM } from './evidence-form.ts'

const BASES = [
  { id: 'printed', label: 'Printed' },
  { id: 'found', label: 'Measured' },
  { id: 'derived', label: 'Derived' },
] as const

/** A form for evidence that is not picked on the sheet, read while it is being written. */
export function AddEvidence({ job, dimension, unit, writable }: CardProps) {
  const [{ state, basis, drafts }, act] = useReducer(evidenceForm, SHUT_FORM)
  /** What was sent to be kept last, while it is on its way. */
  const sent = useRef<EvidenceDraft | null>(null)
  const latest = useRef<EvidenceDraft | null>(null)
  const form = useRef<HTMLFormElement>(null)
  useInSight(form, state !== 'shut')
  const written = [drafts.printed.text, drafts.found.readings, drafts.derived.formula]
  // What was written stays to be read and copied, also where it can't be kept any more.
  if (!writable && (state === 'shut' || written.every((text) => text.trim() === ''))) return null
  if (state === 'shut') {
    return (
      <Section title="More evidence">
        <div className="dimension-card-actions">
          <Button
            icon="plus"
            onPress={() => act({ do: 'open', instrument: currentInstrument()?.id ?? null })}
          >
            Add evidence
          </Button>
          <Button onPress={() => goTo('pick')} hint="A scaled value comes from marks on the sheet.">
            Pick on the sheet
          </Button>
        </div>
      </Section>
    )
  }
  const draft = drafts[basis]
  latest.current = draft
  const drafted = draftedEvidence(draft, dimension, job, { unit, mint })
  const ready = writable && drafted !== null && 'edit' in drafted
  const end = () => act({ do: 'end' })
  const keep = async () => {
    // Enter twice is no second piece; another text is, also while the first is on its way.
    if (!ready || sent.current === draft) return
    sent.current = draft
    const kept = await makeThen((now) => {
      const current = now.dimensions.find(({ name }) => name === dimension.name)
      return current === undefined ? drafted : draftedEvidence(draft, current, now, { unit, mint })
    })
    if (sent.current === draft) sent.current = null
    // What was written meanwhile stays to be kept.
    if (kept && latest.current === draft) end()
  }
  return (
    <Section title="More evidence">
      <form
        ref={form}
        className="dimension-card-form"
        aria-label="New evidence"
        onSubmit={(event) => event.preventDefault()}
        // Before what has the keyboard hears it: the button of a list keeps every key to itself.
        onKeyDownCapture={(event) => {
          if (event.key !== 'Escape' || event.defaultPrevented) return
          // A list that is open lies elsewhere, and is shut by it.
          if (!(event.target instanceof Node && event.currentTarget.contains(event.target))) return
          event.preventDefault()
          end()
        }}
      >
        <Choice
          label="Basis"
          hideLabel
          value={basis}
          options={BASES}
          onChange={(chosen) => act({ do: 'take', basis: chosen })}
        />
        <EvidenceFields
          draft={draft}
          job={job}
          onWrite={(written) => act({ do: 'write', draft: written })}
          takesKeyboard={state === 'opened'}
          verdict={
            ready && draft.basis === 'derived' ? (
              <TriedFormula draft={draft} {...{ job, dimension, unit }} />
            ) : (
              <DraftVerdict drafted={drafted} />
            )
          }
          onEnter={() => void keep()}
          onEscape={end}
        />
        {!writable && (
          <p className="dimension-card-soft" role="status">
            Not kept, for the job is read-only now: what was written stays here to be copied.
          </p>
        )}
        <div className="dimension-card-actions">
          <Button kind="main" disabled={!ready} onPress={() => void keep()}>
            Keep
          </Button>
          <Button onPress={end}>Cancel</Button>
        </div>
      </form>
    </Section>
  )
}
