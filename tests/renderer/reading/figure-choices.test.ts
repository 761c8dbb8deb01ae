import { describe, expect, it } from 'vitest'
import { newJob } from '../../../src/core/job/model/new-job.ts'
import type { TableEvidence, TableRow } from '../../../src/core/ledger/table/table.ts'
import type { FigureReading } from '../../../src/core/reading/figure-reading.ts'
import { patternLattice } from '../../../src/core/reading/pattern-lattice.ts'
import { figureChoices } from '../../../src/renderer/reading/figure-choices.ts'

const job = newJob('Plate', 'in')

/** A figure of which one glyph is 3 or 8. */
const reading: FigureReading = {
  box: [0, 0, 10, 10],
  angle: 0,
  text: '1 3/8"',
  asRead: '1 3/8"',
  value: 34.925,
  kind: 'length',
  clear: false,
  probability: 0.5,
  alternatives: [{ text: '1 5/8"', probability: 0.5 }],
  lattice: patternLattice('1 [35]/8"'),
}

const piece = (value: number, u: number, more: Partial<TableEvidence> = {}): TableEvidence => ({
  id: 's1',
  label: 'scaled 1',
  basis: 'scaled',
  value,
  u,
  U: 2 * u,
  written: '',
  governs: true,
  ...more,
})

const row = (evidence: TableEvidence[]): TableRow => ({ kind: 'length', evidence }) as unknown as TableRow

const by = (evidence: TableEvidence[], unit: 'in' | 'mm' = 'in') =>
  figureChoices(reading, { job, row: row(evidence), unit, written: [] })

describe('what a figure could be', () => {
  it('stands as it was read where nothing is known of the dimension', () => {
    const { choices, besides } = figureChoices(reading, { job, row: undefined, unit: 'in', written: [] })
    expect(choices.map(({ text, probability }) => [text, probability])).toEqual([
      ['1 3/8"', 0.5],
      ['1 5/8"', 0.5],
    ])
    expect(besides).toEqual([])
  })

  it('is weighed by what is scaled, in whichever unit the table is looked at', () => {
    for (const { choices, besides } of [
      by([piece(1.62, 0.02)]),
      by([piece(1.62 * 25.4, 0.02 * 25.4)], 'mm'),
    ]) {
      expect(choices[0]?.text).toBe('1 5/8"')
      expect(choices[0]?.probability).toBeGreaterThan(0.95)
      expect(besides).toEqual(['scaled'])
    }
    expect(by([piece(1.62, 0.02)]).choices[0]?.says.join('; ')).toBe(
      'The strokes say so; scaled agrees, 0.005" off',
    )
    // 1 3/8 is 0.245 from 1.62, twelve times its standard uncertainty.
    expect(by([piece(1.62, 0.02)]).choices[1]?.says).toContain('scaled does not agree, 0.245" off')
    expect(by([piece(1.62 * 25.4, 0.02 * 25.4)], 'mm').choices[1]?.says).toContain(
      'scaled does not agree, 6.22 mm off',
    )
  })

  it('is not weighed by printed figures, by what is not used, nor twice by what counts as one', () => {
    const useless = [
      piece(1.62, 0.02, { basis: 'printed' }),
      piece(1.62, 0.02, { problem: 'not to scale' }),
      piece(1.62, 0),
    ]
    expect(by(useless).besides).toEqual([])
    const twice = [piece(1.62, 0.02), piece(1.62, 0.02, { id: 's2', countsWith: 's1' })]
    expect(by(twice).besides).toEqual(['scaled'])
  })

  it('stands as it was read where the strokes were not kept', () => {
    const bare = { ...reading, lattice: { slots: [] } }
    const { choices } = figureChoices(bare, { job, row: row([piece(1.62, 0.02)]), unit: 'in', written: [] })
    expect(choices.map(({ text }) => text)).toEqual(['1 3/8"', '1 5/8"'])
  })
})
