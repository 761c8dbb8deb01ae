import { beforeEach, describe, expect, it } from 'vitest'
import { pixel } from '../../../src/core/geometry/frames.ts'
import { useBench } from '../../../src/renderer/bench/bench-store.ts'
import { putDown, setPicks } from '../../../src/renderer/bench/choose.ts'
import { tell, tellOfPicks } from '../../../src/renderer/bench/notices.ts'
import { noPicks, nudged, withPick } from '../../../src/renderer/picking/picks.ts'

const told = (): string[] => useBench.getState().notices.map(({ sentence }) => sentence)

/** One end of a distance is picked. */
const ONE_END = withPick(noPicks({ kind: 'measure', view: 'V1', measure: 'distance' }), pixel(10, 10))

describe('what a person is told of a pick', () => {
  beforeEach(() => useBench.setState({ notices: [], picks: ONE_END }))

  it('stays while nothing more is picked, also when the pick is moved', () => {
    tellOfPicks('No old mark lies there.')
    setPicks(nudged(ONE_END, 1, 0))
    expect(told()).toEqual(['No old mark lies there.'])
  })

  it('goes with the next pick, and nothing else does', () => {
    tell('told', 'The table was written.')
    tellOfPicks('No old mark lies there.')
    setPicks(withPick(ONE_END, pixel(50, 10)))
    expect(told()).toEqual(['The table was written.'])
  })

  it('goes when the tool is put down', () => {
    tellOfPicks('No old mark lies there.')
    putDown()
    expect(told()).toEqual([])
  })

  it('that is told again stays with the picks that it was told of last', () => {
    tellOfPicks('No old mark lies there.')
    const both = withPick(ONE_END, pixel(50, 10))
    setPicks(both)
    tellOfPicks('No old mark lies there.')
    setPicks(nudged(both, 1, 0))
    expect(told()).toEqual(['No old mark lies there.'])
  })
})
