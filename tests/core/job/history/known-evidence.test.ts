import { describe, expect, it } from 'vitest'
import type { Change } from '../../../../src/core/job/history/change.ts'
import { KnownEvidence } from '../../../../src/core/job/history/known-evidence.ts'
import { ADOPTION_ORDER } from '../../../../src/core/job/model/adoption-order.ts'
import type { Basis, Dimension, Evidence } from '../../../../src/core/job/model/types.ts'
import { decide } from '../../../../src/core/ledger/adoption/adopt.ts'
import { asStated, type EvaluatedEvidence } from '../../../../src/core/ledger/evidence/evaluated-evidence.ts'
import { expand } from '../../../../src/core/uncertainty/coverage.ts'
import { exact } from '../../../../src/core/uncertainty/uncertain.ts'

const adopting: Change = {
  thing: { kind: 'dimension', id: 'rim' },
  verb: 'adopted',
  fields: [{ field: 'adopt', after: 'P1' }],
}

const ids = (known: KnownEvidence): string[] | undefined =>
  known.adopting(adopting).first?.map(({ id }) => id)

const rim = (...evidence: Evidence[]): { dimensions: Dimension[] } => ({
  dimensions: [{ name: 'rim', label: '', kind: 'length', evidence }],
})

const printed = (more: object = {}): Evidence => ({ id: 'P1', basis: 'printed', text: '9"', ...more })
const found = (id: string): Evidence => ({ id, basis: 'found', readings: ['9"'] })

describe('what the rules come to first', () => {
  it('is what a clear figure says, but not one that is hard to read or withdrawn', () => {
    expect(ids(new KnownEvidence(rim(found('F1'), printed())))).toEqual(['P1'])
    expect(ids(new KnownEvidence(rim(found('F1'), printed({ legibility: 'doubtful' }))))).toEqual(['F1'])
    expect(ids(new KnownEvidence(rim(found('F1'), found('F2'), printed({ withdrawn: 'x' }))))).toEqual([
      'F1',
      'F2',
    ])
    expect(ids(new KnownEvidence(rim(printed({ withdrawn: 'x' }))))).toEqual([])
    expect(ids(new KnownEvidence({ dimensions: [] }))).toBeUndefined()
  })

  it('is by the evidence as it was before what came later, under the name that it had', () => {
    const known = new KnownEvidence({
      dimensions: [{ ...rim(found('F1'), printed()).dimensions[0], name: 'edge' } as Dimension],
    })
    known.goBack([{ thing: { kind: 'evidence', id: 'F1', of: 'edge' }, verb: 'added', fields: [] }])
    known.goBack([
      {
        thing: { kind: 'evidence', id: 'P1', of: 'edge' },
        verb: 'changed',
        fields: [
          { field: 'text', before: '8"', after: '9"' },
          { field: 'legibility', before: 'doubtful' },
        ],
      },
    ])
    known.goBack([
      {
        thing: { kind: 'dimension', id: 'edge' },
        verb: 'renamed',
        fields: [{ field: 'name', before: 'rim', after: 'edge' }],
      },
    ])
    expect(known.adopting(adopting)).toEqual({
      adopted: printed({ text: '8"', legibility: 'doubtful' }),
      first: [],
    })
  })

  it('is tried in the order in which the table adopts', () => {
    const value = exact(1)
    const evaluated = (basis: Basis): EvaluatedEvidence =>
      ({
        evidence: { id: basis, basis } as Evidence,
        adopted: value,
        compared: value,
        coverage: expand(value),
        workOut: asStated(value, value),
        shown: 1,
        usable: true,
      }) as EvaluatedEvidence
    const { dimensions } = rim()
    for (const [i, basis] of ADOPTION_ORDER.entries()) {
      const there = ADOPTION_ORDER.slice(i).toReversed().map(evaluated)
      expect(decide(dimensions[0] as Dimension, there).basis).toBe(basis)
    }
    expect(new Set(ADOPTION_ORDER).size).toBe(4)
  })
})
