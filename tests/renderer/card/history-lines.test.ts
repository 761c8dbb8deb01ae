import { describe, expect, it } from 'vitest'
import { historyLines } from '../../../src/renderer/card/history-lines.ts'
import { sampleDimension, sampleJob } from '../sample-job.ts'

describe('the history of a dimension', () => {
  it('tells who did what, oldest first, and in one line what was done in one moment', () => {
    const lines = historyLines(sampleDimension('bolt_circle'), sampleJob)
    expect(lines.map(({ at }) => at ?? '')).toEqual(lines.map(({ at }) => at ?? '').toSorted())
    const told = lines.map(({ what }) => what).join('\n')
    expect(told).toContain('gave printed evidence p1')
    expect(told).toContain('gave, since withdrawn, printed evidence p2')
    expect(told).toContain('picked mark M37')
    expect(new Set(lines.map(({ by, at }) => `${by} ${at}`)).size).toBe(lines.length)
  })
})
