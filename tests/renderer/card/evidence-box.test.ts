import { describe, expect, it } from 'vitest'
import type { Evidence } from '../../../src/core/job/model/types.ts'
import { evidencePart } from '../../../src/renderer/card/evidence-box.ts'
import { sampleDimension, sampleJob } from '../sample-job.ts'

describe('the part of the sheet that evidence comes from', () => {
  const piece = (name: string, id: string): Evidence => {
    const evidence = sampleDimension(name).evidence.find((one) => one.id === id)
    if (evidence === undefined) throw new Error('no evidence')
    return evidence
  }

  it('is the box of a printed figure, with a margin all round', () => {
    // The box is 236 by 153 at (2589, 1401), and a tenth of 236 is less than the least margin of 24 pixels.
    expect(evidencePart(piece('bolt_circle', 'p1'), sampleJob)).toEqual({
      sheet: 'sheet-1',
      box: [2565, 1377, 284, 201],
    })
  })

  it('holds all marks of a measure', () => {
    const evidence = piece('flange_thickness', 's1')
    const part = evidencePart(evidence, sampleJob)
    const [x, y, width, height] = part?.box ?? [0, 0, 0, 0]
    const marks = sampleJob.marks.filter(({ id }) => ['M29', 'M30'].includes(id))
    expect(marks).toHaveLength(2)
    for (const mark of marks) {
      for (const [px, py] of mark.kind === 'point' ? [mark.pixel] : mark.pixels) {
        expect(px > x && px < x + width && py > y && py < y + height).toBe(true)
      }
    }
  })

  it('is nowhere for readings, formulas and figures whose place is not known', () => {
    expect(evidencePart(piece('flange_thickness', 'f1'), sampleJob)).toBeNull()
    expect(
      evidencePart(piece('drum_bore', sampleDimension('drum_bore').evidence[0]?.id ?? ''), sampleJob),
    ).toBeNull()
    expect(evidencePart({ id: 'p9', basis: 'printed', text: '6"' }, sampleJob)).toBeNull()
  })
})
