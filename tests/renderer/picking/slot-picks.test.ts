import { describe, expect, it } from 'vitest'
import { pixel } from '../../../src/core/geometry/frames.ts'
import { lastPickInWords, nextPickName, toolName } from '../../../src/renderer/picking/pick-names.ts'
import { pickedSlot } from '../../../src/renderer/picking/picked-marks.ts'
import {
  isComplete,
  isOfOnePick,
  isOpen,
  type NewFeature,
  noPicks,
  nudged,
  type Picks,
  pickedOn,
  readyForStroke,
  wanted,
  withoutLast,
  withPick,
  withStroke,
} from '../../../src/renderer/picking/picks.ts'

const SLOT = { kind: 'measure', view: 'V1', measure: 'centres', of: 'slot' } as const
const [a, b, c] = [pixel(10, 10), pixel(90, 12), pixel(50, 40)]

const ends = (picks: Picks): NewFeature[] => picks.features.flatMap((one) => ('pixels' in one ? one : []))
const endAt = (picks: Picks, i: number): NewFeature => {
  const end = ends(picks)[i]
  if (end === undefined) throw new Error(`there is no end ${i}`)
  return end
}

describe('the ends of a slot', () => {
  it('are looked for from one pick each', () => {
    const one = withPick(noPicks(SLOT), a)
    expect(readyForStroke(one)).toBe(endAt(one, 0))
    expect(isOpen(one)).toBe(false)
    expect(nextPickName(one)).toBe('Second end')
    expect(lastPickInWords(one, [])).toBe('First end at 10.0, 10.0')
    const both = withPick(one, b)
    expect(isComplete(both)).toBe(true)
    expect(withoutLast(both).features).toEqual(one.features)
    expect(toolName(SLOT)).toBe('measure: slot')
  })

  it('take two more picks where one does not settle them, and what came after is picked anew', () => {
    const both = withPick(withPick(noPicks(SLOT), a), b)
    const first = endAt(both, 0)
    const { picks, now } = withStroke(both, first, { state: 'looking' })
    expect(isOfOnePick(picks, now)).toBe(true)
    const again = pickedOn(picks, now)
    expect(ends(again)).toHaveLength(1)
    expect(isOpen(again)).toBe(true)
    expect(nextPickName(again)).toBe('First end, second point')
    const three = withPick(withPick(again, b), c)
    expect(readyForStroke(three)).toBe(endAt(three, 0))
    expect(endAt(three, 0).pixels).toEqual([a, b, c])
    expect(isOfOnePick(three, endAt(three, 0))).toBe(false)
    expect(isComplete(three)).toBe(false)
    // Picks that no longer have it stay as they are.
    expect(pickedOn(three, first)).toBe(three)
  })

  it('take three picks each by hand, also when the one that was found is moved', () => {
    const byHand = withPick(noPicks(SLOT), a, 1, true)
    expect(isOpen(byHand)).toBe(true)
    const moved = nudged(withPick(noPicks(SLOT), a), 0.5, 0)
    expect(isOpen(moved)).toBe(true)
    const three = withPick(withPick(moved, b), c)
    expect(wanted(three)).toBe('circle')
    expect(isOpen(three)).toBe(false)
    expect(readyForStroke(three)).toBeNull()
    const all = [a, b, c].reduce((picks, place) => withPick(picks, place, 2, true), three)
    if (all.tool.kind !== 'measure') throw new Error('the tool is another')
    expect(pickedSlot({ ...all, tool: all.tool }).ends).toMatchObject([
      { how: 'hand', kind: 'circle' },
      { how: 'hand', kind: 'circle', sigma: 2 },
    ])
  })
})
