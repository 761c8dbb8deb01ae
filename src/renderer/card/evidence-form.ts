import type { EvidenceDraft } from '../entering/new-evidence.ts'

type DraftBasis = EvidenceDraft['basis']

/** The draft of each basis, so that what was written for one is there again when a person comes back to it. */
type Drafts = { [B in DraftBasis]: Extract<EvidenceDraft, { basis: B }> }

/** The form for new evidence. */
export interface EvidenceForm {
  /** opened: the keyboard goes into its first field; gone through: it stays at the bases, since one was changed there. */
  state: 'shut' | 'opened' | 'gone through'
  basis: DraftBasis
  drafts: Drafts
}

type FormAction =
  /** instrument: with which readings are taken now, by its id. */
  | { do: 'open'; instrument?: string | null }
  | { do: 'end' }
  | { do: 'take'; basis: DraftBasis }
  | { do: 'write'; draft: EvidenceDraft }

/** Before anything was written. */
export const SHUT_FORM: EvidenceForm = {
  state: 'shut',
  basis: 'printed',
  drafts: {
    printed: { basis: 'printed', text: '', legibility: 'clear', sheet: null },
    found: { basis: 'found', readings: '', instrument: null },
    derived: { basis: 'derived', formula: '' },
  },
}

/** The form after something was done in it. What was written goes as it ends; how it was written stays for the next. */
export function evidenceForm(form: EvidenceForm, action: FormAction): EvidenceForm {
  switch (action.do) {
    case 'open':
      return {
        ...form,
        state: 'opened',
        drafts: { ...form.drafts, found: { ...form.drafts.found, ...taken(action) } },
      }
    case 'end':
      return { ...form, state: 'shut', drafts: emptied(form.drafts) }
    case 'take':
      return { ...form, state: 'gone through', basis: action.basis }
    case 'write':
      return { ...form, drafts: { ...form.drafts, [action.draft.basis]: action.draft } }
  }
}

const taken = ({ instrument }: { instrument?: string | null }) =>
  instrument === undefined ? {} : { instrument }

const emptied = ({ printed, found, derived }: Drafts): Drafts => ({
  printed: { ...printed, text: '' },
  found: { ...found, readings: '' },
  derived: { ...derived, formula: '' },
})
