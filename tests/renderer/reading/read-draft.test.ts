import { describe, expect, it } from 'vitest'
import { mintForTrial } from '../../../src/renderer/bench/mint.ts'
import { readDraft } from '../../../src/renderer/reading/read-draft.ts'
import { sampleJob as job } from '../sample-job.ts'

function taken(text: string) {
  const reading = {
    box: [100, 100, 200, 60] as const,
    angle: 0,
    text,
    asRead: text,
    value: null,
    kind: null,
    clear: true,
    probability: 0.999,
    alternatives: [],
    lattice: { slots: [] },
  }
  const of = { is: 'new', name: 'as_taken', label: 'As taken' } as const
  const how = { unit: 'in', mint: mintForTrial() } as const
  return readDraft({ sheet: job.sheets[0]?.id ?? '', reading, text, sure: true, of }, job, how)
}

describe('a figure that becomes a dimension', () => {
  it.each([
    ['8 HOLES DRILL 9/16"', 8],
    ['DRILL 9/16"', undefined],
    ['4 7/8"', undefined],
  ])('has as many as the call-out %s says', (text, count) => {
    const { drafted, edit } = taken(text)
    const codes = drafted !== null && 'also' in drafted ? drafted.also.map(({ code }) => code) : null
    expect(codes).not.toBeNull()
    expect(codes).not.toContain('question.count-differs')
    expect(edit?.do === 'add-dimension' ? edit.item.count : null).toBe(count)
  })
})
