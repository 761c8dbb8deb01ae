import type { Table, TableRelation, TableRow } from '../../../../src/core/ledger/table/table.ts'
import { inWords, reason } from '../../../../src/core/words/core-words.ts'

export const aRow = (change: Partial<TableRow> = {}): TableRow => ({
  name: 'drum_length',
  label: 'Drum, length',
  kind: 'length',
  count: 1,
  value: 14.375,
  written: '14 3/8"',
  u: 0,
  U: 0,
  k: 1.96,
  dof: null,
  by: {},
  basis: 'printed',
  status: 'agreed',
  why: 'The printed figure governs.',
  whyReasons: [reason('why.adopted', { from: reason('from.figure', { chosen: false }), agreement: null })],
  evidence: [],
  budget: [],
  ...change,
})

export const aTable = (change: Partial<Table> = {}): Table => ({
  job: 'Drum of the chain ferry',
  unit: 'in',
  figuresAs: 'fractions',
  coverage: 0.95,
  rows: [
    aRow({ tolerance: '±1/32' }),
    aRow({
      name: 'rim',
      value: 1.5,
      written: '1.5"',
      u: 0.0158,
      U: 0.0312,
      by: { 'own.rim': 0.0158 },
      basis: 'scaled',
      status: 'single',
      count: 4,
    }),
    aRow({
      name: 'neck',
      value: null,
      written: '',
      basis: null,
      status: 'open',
      why: 'No usable evidence.',
      whyReasons: [],
    }),
  ],
  views: [
    {
      id: 'V1',
      name: 'Elevation',
      mapping: 'uniform',
      parameters: { scale: { value: 0.0400012, u: 0.00029 } },
      chi2: 14.2,
      dof: 2,
      p: 0.00083,
      references: [
        { id: 'R1', stated: 12, fitted: 12.01, U: 0.05, residual: 0.01, w: 0.4, suspect: false },
        { id: 'R3', stated: 8, fitted: 8.4, U: 0.04, residual: 0.4, w: 4.12, suspect: true, setAside: true },
      ],
      problem: 'Reference R3 does not fit the others: misread figure, or not to scale? It is set aside.',
      suggestion: 'A two-axis mapping fits better.',
    },
  ],
  relations: [
    {
      id: 'Q1',
      text: 'overall = neck + drum_length',
      kind: 'length',
      missesBy: '1/4"',
      U: 0.039,
      misclosure: 0.25,
      u: 0.02,
      w: 12.5,
      holds: false,
    },
    {
      id: 'Q2',
      text: 'a = b',
      kind: 'length',
      missesBy: '0"',
      U: 0.039,
      misclosure: 0,
      u: 0.02,
      w: 0,
      holds: true,
    },
  ],
  sources: [{ id: 'own.rim', name: 'only in rim' }],
  cautions: ['Values scaled from a print are estimates.'],
  cautionReasons: [reason('caution.scaled-values-are-estimates')],
  ...change,
})

/** A table that tells of what is wrong with its views among its cautions too, as a job's own table does. */
export function withCautionsOfViews(table: Table): Table {
  const reasons = table.views.map(({ name, problem = '' }) =>
    reason('caution.of-view', { view: name, problem: reason('schema.other', { text: problem }) }),
  )
  return {
    ...table,
    cautions: [...table.cautions, ...reasons.map(inWords)],
    cautionReasons: [...table.cautionReasons, ...reasons],
  }
}

/** A relation over dimensions that have no value. */
export function uncheckedRelation(id: string, text: string, names: string[]): TableRelation {
  const problemReason = reason('relation.not-checked', {
    problem: reason('relation.needs-values', { names }),
  })
  return {
    id,
    text,
    kind: 'length',
    missesBy: '',
    U: 0,
    misclosure: 0,
    u: 0,
    w: 0,
    holds: false,
    problem: inWords(problemReason),
    problemReason,
  }
}
