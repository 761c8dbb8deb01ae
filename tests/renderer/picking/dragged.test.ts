import { describe, expect, it } from 'vitest'
import { pixel } from '../../../src/core/geometry/frames.ts'
import { draggedPicks } from '../../../src/renderer/picking/dragged.ts'
import { noPicks, withPick } from '../../../src/renderer/picking/picks.ts'
import type { Tool } from '../../../src/renderer/picking/tool.ts'

const [from, to] = [pixel(100, 200), pixel(300, 200)]
const measure = (kind: 'distance' | 'spacing' | 'diameter' | 'run'): Tool => ({
  kind: 'measure',
  view: 'V1',
  measure: kind,
})

describe('one drag', () => {
  it('picks both ends, two places along a line, or three round a circle', () => {
    expect(draggedPicks(noPicks(measure('distance')), from, to)).toEqual([from, to])
    expect(draggedPicks(noPicks(measure('spacing')), from, to)).toEqual([from, to])
    const round = draggedPicks(noPicks(measure('diameter')), from, to) ?? []
    expect(round).toHaveLength(3)
    for (const [x, y] of round) expect(Math.hypot(x - 200, y - 200)).toBeCloseTo(100, 9)
  })

  it('picks the two round ends of a slot, and nothing once one of them is picked', () => {
    const slot: Tool = { kind: 'measure', view: 'V1', measure: 'centres', of: 'slot' }
    expect(draggedPicks(noPicks(slot), from, to)).toEqual([from, to])
    expect(draggedPicks(withPick(noPicks(slot), from), from, to)).toBeNull()
    expect(draggedPicks(withPick(noPicks(slot), from, 1, true), from, to)).toBeNull()
  })

  it('picks nothing in the middle of a mark, along a path, for one place, or while nothing is picked', () => {
    const begun = withPick(noPicks(measure('spacing')), from)
    expect(draggedPicks(begun, from, to)).toBeNull()
    expect(draggedPicks(noPicks(measure('run')), from, to)).toBeNull()
    expect(draggedPicks(withPick(noPicks(measure('distance')), from), from, to)).toBeNull()
    const corners: Tool = { kind: 'reference', view: 'V1', reference: 'rectangle' }
    expect(draggedPicks(noPicks(corners), from, to)).toBeNull()
    expect(draggedPicks(noPicks({ kind: 'look' }), from, to)).toBeNull()
  })
})
