import { describe, expect, it } from 'vitest'
import { newJob } from '../../../../src/core/job/model/new-job.ts'
import type { Job } from '../../../../src/core/job/model/types.ts'
import { leaveAlike, takeAlike } from '../../../../src/renderer/desk/pick/alike.ts'
import {
  isSlotTaken,
  NO_SLOT,
  namedSizes,
  type SlotDraft,
  slotNameProblem,
  slotSizeName,
} from '../../../../src/renderer/desk/pick/slot-draft.ts'
import type { Tool } from '../../../../src/renderer/picking/tool.ts'
import { inWords } from '../../../../src/renderer/words/window-words.ts'

const JOB = newJob('Gland plate', 'mm')
const with_ = (name: string): Job => ({
  ...JOB,
  dimensions: [{ name, label: name, kind: 'length', evidence: [] }],
})
const SLOT: SlotDraft = { ...NO_SLOT, label: ' Slot ' }

describe('what the sizes of a slot are called', () => {
  it('begins with what the slot is called', () => {
    expect(namedSizes(SLOT)).toEqual([
      { size: 'width', name: 'slot_width', label: 'Slot, width' },
      { size: 'length', name: 'slot_length', label: 'Slot, length over all' },
      { size: 'centres', name: 'slot_centres', label: 'Slot, between centres' },
    ])
    expect(slotSizeName('Foot, slot 2', 'length')).toBe('foot_slot_2_length')
    expect(slotSizeName('Øse', 'width')).toMatch(/^[a-z_]+_width$/)
    expect(slotSizeName('…', 'width')).toBe('')
  })

  it('is of the sizes alone that are ticked, with the figures beside them', () => {
    const draft: SlotDraft = {
      ...SLOT,
      kept: { width: false, length: true, centres: true },
      printed: { width: '12', length: ' 42,5 ', centres: '' },
    }
    expect(namedSizes(draft)).toEqual([
      { size: 'length', name: 'slot_length', label: 'Slot, length over all', printed: '42,5' },
      { size: 'centres', name: 'slot_centres', label: 'Slot, between centres' },
    ])
  })

  it('is asked anew where a size that is ticked is called so already', () => {
    const job = with_('slot_length')
    const problem = slotNameProblem(job, SLOT)
    expect(problem === null ? '' : inWords(problem)).toMatch(/slot_length/)
    expect(slotNameProblem(job, { ...SLOT, kept: { ...SLOT.kept, length: false } })).toBeNull()
    expect(slotNameProblem(JOB, SLOT)).toBeNull()
    expect([isSlotTaken(job, 'Slot'), isSlotTaken(job, 'Slot 2')]).toEqual([true, false])
  })
})

describe('what is left for the next that is measured alike', () => {
  const slot: Tool = { kind: 'measure', view: 'V1', measure: 'centres', of: 'slot' }

  it('is taken once, in whatever view, and by the same tool only', () => {
    leaveAlike(slot, SLOT)
    expect(takeAlike({ ...slot, view: 'V2' }, NO_SLOT)).toBe(SLOT)
    expect(takeAlike(slot, NO_SLOT)).toBe(NO_SLOT)
    leaveAlike(slot, SLOT)
    expect(takeAlike({ kind: 'measure', view: 'V1', measure: 'centres' }, 'nothing')).toBe('nothing')
    expect(takeAlike(slot, NO_SLOT)).toBe(NO_SLOT)
  })
})
