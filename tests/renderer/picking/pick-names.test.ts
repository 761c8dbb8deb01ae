import { describe, expect, it } from 'vitest'
import { pixel } from '../../../src/core/geometry/frames.ts'
import { lastPickInWords, nextPickName } from '../../../src/renderer/picking/pick-names.ts'
import { ended, noPicks, withPick } from '../../../src/renderer/picking/picks.ts'

describe('picks in words', () => {
  it('name the ends of a distance and where they are, to a tenth of a pixel', () => {
    const none = noPicks({ kind: 'measure', view: 'V1', measure: 'distance' })
    expect(nextPickName(none)).toBe('First end')
    expect(lastPickInWords(none, [])).toBe('')
    const one = withPick(none, pixel(1204.32, 880.1))
    expect(lastPickInWords(one, [])).toBe('First end at 1204.3, 880.1')
    expect(nextPickName(one)).toBe('Second end')
    expect(nextPickName(withPick(one, pixel(0, 0)))).toBeNull()
  })

  it('count the points of a circle, and of the second one after it', () => {
    let picks = noPicks({ kind: 'measure', view: 'V1', measure: 'centres' })
    const names: (string | null)[] = []
    for (let i = 0; i < 6; i++) {
      names.push(nextPickName(picks))
      picks = withPick(picks, pixel(i, i * i))
    }
    expect(names).toEqual([
      'First circle, first point',
      'First circle, second point',
      'First circle, third point',
      'Second circle, first point',
      'Second circle, second point',
      'Second circle, third point',
    ])
  })

  it('go on along a path until it is ended', () => {
    let picks = noPicks({ kind: 'measure', view: 'V1', measure: 'run' })
    for (let i = 0; i < 4; i++) picks = withPick(picks, pixel(i, 0))
    expect(nextPickName(picks)).toBe('Path, 5th point')
    expect(nextPickName(ended(picks))).toBeNull()
  })
})
