import { describe, expect, it } from 'vitest'
import { MESSAGE_BYTES } from '../../../../src/contract/requests.ts'
import { type Pixel, pixel } from '../../../../src/core/geometry/frames.ts'
import type { Edit } from '../../../../src/core/job/edits/edit.ts'
import { applyEdit } from '../../../../src/core/job/edits/edit.ts'
import { fileNameOf } from '../../../../src/renderer/desk/notes/download.ts'
import { aboutEdit, inBatches } from '../../../../src/renderer/desk/notes/note-edits.ts'
import { sampleJob } from '../../sample-job.ts'

const outline: Pixel[] = [pixel(10, 10), pixel(50, 10), pixel(50, 30), pixel(10, 30)]

describe('A note is', () => {
  it('about something else, or about nothing in particular', () => {
    const changed = applyEdit(sampleJob, aboutEdit('N1', 'neck_height')).job
    expect(changed.notes.find(({ id }) => id === 'N1')?.about).toBe('neck_height')
    const cleared = applyEdit(changed, aboutEdit('N1', null)).job
    expect(cleared.notes.find(({ id }) => id === 'N1')).not.toHaveProperty('about')
  })
})

describe('Many notes are brought in', () => {
  it('in as few edits as a host takes, all of them and in order', () => {
    const edits = Array.from({ length: 900 }, (_, k): Edit => {
      const text = 'ø'.repeat(2000)
      return { do: 'add-note', item: { id: `N${k + 100}`, sheet: 'sheet-1', outline, text } }
    })
    const batches = inBatches(edits, 'bring in 900 notes')
    expect(batches.flatMap((batch) => (batch.do === 'several' ? batch.edits : []))).toEqual(edits)
    for (const batch of batches) {
      expect(new TextEncoder().encode(JSON.stringify(batch)).length).toBeLessThan(MESSAGE_BYTES)
    }
    expect(batches.length).toBeLessThan(8)
    expect(inBatches(edits.slice(0, 3), 'bring in 3 notes')).toHaveLength(1)
    expect(inBatches([], 'bring in nothing')).toEqual([])
  })

  it('from files that every system can name', () => {
    expect(fileNameOf('Deck ventilator: “No. 2”', 'notes.jsonld')).toBe('Deck-ventilator-No-2-notes.jsonld')
    expect(fileNameOf('../..', 'notes.jsonld')).toBe('job-notes.jsonld')
  })
})
