import { describe, expect, it } from 'vitest'
import { freshId, freshIds } from '../../../../src/core/job/from-picks/fresh-id.ts'

describe('the id of a new mark', () => {
  it('is the first one in a job that has none', () => {
    expect(freshId('M', [])).toBe('M1')
  })

  it('follows the highest number, so that the id of a removed mark is not used again', () => {
    expect(freshId('M', ['M1', 'M12', 'M3'])).toBe('M13')
  })

  it('goes by number, not by spelling', () => {
    expect(freshId('M', ['M9', 'M10'])).toBe('M11')
  })

  it('takes no notice of ids of another make', () => {
    expect(freshId('M', ['MM7', 'm8', 'M4b', 'M-5', 'bore', 'M'])).toBe('M1')
  })

  it('gives as many as a reference takes marks', () => {
    const fresh = freshIds('M', ['M2'])
    expect([fresh(), fresh(), fresh(), fresh()]).toEqual(['M3', 'M4', 'M5', 'M6'])
  })
})
