import { describe, expect, it } from 'vitest'
import {
  axisShareInWords,
  axisShares,
  offStatedInWords,
} from '../../../../src/core/handoff/table/axis-scales.ts'
import type { TableView } from '../../../../src/core/ledger/table/table.ts'

/** 1 : 2 stated, 10 px for each mm of paper: 0.2 mm a pixel, and half a per cent less across where the paper has shrunk. */
const view = (along: number, across: number, mapping: TableView['mapping'] = 'two-axis'): TableView => ({
  id: 'V1',
  name: 'Plate',
  mapping,
  parameters: { along: { value: along, u: 0.0002 }, across: { value: across, u: 0.0001 } },
  chi2: null,
  dof: 0,
  p: null,
  references: [],
  scale: { stated: 0.5, found: 0.1 / Math.sqrt(along * across) },
})

describe('a view with a scale each way', () => {
  it('is told by how much the sheet is smaller along and across', () => {
    const shares = axisShares(view(0.2, 0.2 / 0.985))
    expect(shares?.map(({ off }) => off)).toEqual([expect.closeTo(0, 9), expect.closeTo(-0.015, 9)])
    expect(shares?.map(axisShareInWords)).toEqual([
      'as stated ± 0.20 % along',
      '1.50 % ± 0.10 % smaller across',
    ])
    expect(shares?.map(offStatedInWords)).toEqual([
      'as stated ± 0.20 %',
      '1.50 % ± 0.10 % smaller than stated',
    ])
  })

  it('is none where one scale holds both ways, and says nothing where none is stated', () => {
    expect(axisShares(view(0.2, 0.2, 'uniform'))).toBeNull()
    const unstated = axisShares({ ...view(0.2, 0.2), scale: { stated: null, found: 0.5 } })
    expect(unstated?.map(axisShareInWords)).toEqual([null, null])
  })
})
