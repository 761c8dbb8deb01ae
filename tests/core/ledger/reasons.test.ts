import { describe, expect, it } from 'vitest'
import { pixel } from '../../../src/core/geometry/frames.ts'
import type { Job } from '../../../src/core/job/model/types.ts'
import { dimensionTable } from '../../../src/core/ledger/table/dimension-table.ts'
import type { Table } from '../../../src/core/ledger/table/table.ts'
import { tableSchema } from '../../../src/core/ledger/table/table-schema.ts'
import { inWords } from '../../../src/core/words/core-words.ts'
import type { AnyReason } from '../../../src/core/words/reason.ts'
import { derived, dimension, found, point, printed, scaled, smallJob } from './small-job.ts'

/** A job in which much is wrong. */
const troubled = (): Job =>
  smallJob({
    marks: [point('D', pixel(400, 900)), point('E', pixel(2000, 1500)), point('off', pixel(9000, 100))],
    references: [{ id: 'R1', kind: 'distance', marks: ['A', 'B'], size: '20"' }],
    views: [...smallJob().views, { id: 'V2', sheet: 'S1', name: 'Plan', mapping: 'affine', references: [] }],
    dimensions: [
      dimension('agreed', [scaled(['D', 'E']), printed('11 3/8')]),
      dimension('disputed', [scaled(['D', 'E']), printed('12')]),
      dimension('rests', [derived('disputed + agreed')]),
      dimension('twice', [printed('5'), printed('5', 'q')]),
      dimension('mean', [scaled(['D', 'E']), found(['11.4 in', '11.42 in'])], { adopt: 'mean' }),
      dimension('unread', [printed('1? 3/8')]),
      dimension('doubtful', [printed('4', 'p', { legibility: 'doubtful' }), printed('5?', 'q')]),
      dimension('withdrawn', [scaled(['D', 'E'], 's', { withdrawn: 'picked the hidden edge' })], {
        adopt: 's',
      }),
      dimension('needs', [derived('unread * 2')]),
      dimension('plan', [scaled(['D', 'E'], 's', { view: 'V2' })]),
      dimension('slip', [found(['7.5 in', '75 in'])]),
      dimension('far', [scaled(['D', 'off'])]),
    ],
    relations: [
      { id: 'Q1', text: 'agreed = disputed' },
      { id: 'Q2', text: 'agreed = unread' },
    ],
  })

/** Every reason of a table beside its words. */
function told(table: Table): [words: string | undefined, reason: AnyReason | undefined][] {
  const withProblem = [...table.rows.flatMap((r) => r.evidence), ...table.views, ...table.relations]
  return [
    ...table.cautions.map((words, i): [string, AnyReason | undefined] => [words, table.cautionReasons[i]]),
    ...withProblem.map((p): [string | undefined, AnyReason | undefined] => [p.problem, p.problemReason]),
  ]
}

describe('what a table says in words', () => {
  const table = dimensionTable(troubled())

  it('it says by codes and parts as well, from which the words are made', () => {
    const pairs = told(table)
    expect(pairs.filter(([words]) => words !== undefined).length).toBeGreaterThan(10)
    for (const [words, reason] of pairs) expect(reason && inWords(reason)).toBe(words)
    expect(table.cautionReasons).toHaveLength(table.cautions.length)
    for (const { why, whyReasons } of table.rows) {
      expect(whyReasons.length).toBeGreaterThan(0)
      expect(whyReasons.map(inWords).join(' ')).toBe(why)
    }
  })

  it('a program finds what it looks for by code', () => {
    const codesOf = (name: string): string[] =>
      table.rows.find((r) => r.name === name)?.whyReasons.map((r) => r.code) ?? []
    expect(codesOf('rests')).toEqual(['why.adopted', 'why.rests-on-disputed'])
    expect(codesOf('agreed')).toEqual(['why.adopted', 'why.does-not-close'])
    expect(codesOf('withdrawn')).toEqual(['adoption.chosen-unusable'])
    expect(codesOf('doubtful')).toEqual(['adoption.none-usable'])
    expect(table.rows.flatMap((r) => r.evidence.flatMap((e) => e.problemReason?.code ?? []))).toEqual([
      'notation.stopped',
      'evidence.hard-to-read',
      'notation.stopped',
      'evidence.withdrawn',
      'evidence.needs-values',
      'evidence.view-not-calibrated',
      'evidence.readings-slip',
    ])
    expect(table.views.map((v) => v.problemReason?.code)).toEqual([undefined, 'view.not-calibrated'])
    expect(table.relations.map((q) => q.problemReason?.code)).toEqual([undefined, 'relation.not-checked'])
    expect(table.cautionReasons.slice(3).map((c) => c.code)).toEqual([
      'caution.mark-off-its-page',
      'caution.readings-far-apart',
      'caution.of-view',
    ])
  })

  it('is as its schema says, and nothing of it is lost as JSON', () => {
    expect(tableSchema.parse(table)).toEqual(table)
    expect(JSON.parse(JSON.stringify(table))).toEqual(table)
  })
})
