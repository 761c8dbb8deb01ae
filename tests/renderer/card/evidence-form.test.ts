import { describe, expect, it } from 'vitest'
import { type EvidenceForm, evidenceForm, SHUT_FORM } from '../../../src/renderer/card/evidence-form.ts'
import type { EvidenceDraft } from '../../../src/renderer/entering/new-evidence.ts'

const printed: EvidenceDraft = { basis: 'printed', text: '6"', legibility: 'doubtful', sheet: 'sheet-1' }
const found: EvidenceDraft = { basis: 'found', readings: '6.01', instrument: 'caliper' }
const derived: EvidenceDraft = { basis: 'derived', formula: 'drum_od' }

const formAfter = (...actions: Parameters<typeof evidenceForm>[1][]): EvidenceForm =>
  actions.reduce(evidenceForm, SHUT_FORM)

describe('the form for new evidence', () => {
  it('begins with a printed figure and nothing written', () => {
    expect(formAfter({ do: 'open' })).toEqual({ ...SHUT_FORM, state: 'opened' })
    expect(SHUT_FORM.drafts.printed.text).toBe('')
  })

  it('keeps what was written for one basis while another is looked at', () => {
    const form = formAfter({ do: 'open' }, { do: 'write', draft: printed }, { do: 'take', basis: 'found' })
    expect(form.basis).toBe('found')
    expect(form.drafts.found.readings).toBe('')
    expect(evidenceForm(form, { do: 'take', basis: 'printed' }).drafts.printed).toEqual(printed)
  })

  it('writes in the draft of the basis that is written, and in no other', () => {
    const { drafts } = formAfter({ do: 'open' }, { do: 'write', draft: found })
    expect(drafts).toEqual({ ...SHUT_FORM.drafts, found })
  })

  it('leaves the keyboard at the bases once they are gone through, until it is opened anew', () => {
    const gone = formAfter({ do: 'open' }, { do: 'take', basis: 'derived' })
    expect(gone.state).toBe('gone through')
    expect(evidenceForm(gone, { do: 'write', draft: derived }).state).toBe('gone through')
    expect(evidenceForm(evidenceForm(gone, { do: 'end' }), { do: 'open' }).state).toBe('opened')
  })

  it('drops all that was written as it ends, and keeps basis, legibility, sheet and instrument for the next', () => {
    const form = formAfter(
      { do: 'open' },
      { do: 'write', draft: printed },
      { do: 'write', draft: found },
      { do: 'write', draft: derived },
      { do: 'take', basis: 'found' },
      { do: 'end' },
    )
    expect(form).toEqual({
      state: 'shut',
      basis: 'found',
      drafts: {
        printed: { ...printed, text: '' },
        found: { ...found, readings: '' },
        derived: { basis: 'derived', formula: '' },
      },
    })
  })
})
