import { parseFormula } from '../../core/formula/formula.ts'
import { FormulaError } from '../../core/formula/formula-error.ts'
import { UNITS_OF_KIND } from '../../core/formula/formula-units.ts'
import { applyEdit, type Edit, readEdit } from '../../core/job/edits/edit.ts'
import type { Mint } from '../../core/job/ids/mint-ids.ts'
import { newIdentity } from '../../core/job/ids/new-identity.ts'
import type { Dimension, Evidence, Job, Unit } from '../../core/job/model/types.ts'
import { figureUnderstood } from '../../core/ledger/evidence/figure-understood.ts'
import { readFigures } from '../../core/ledger/evidence/figures.ts'
import { foundEvidence, limitOfError } from '../../core/ledger/evidence/found-evidence.ts'
import { readReading } from '../../core/ledger/evidence/found-reading.ts'
import { foundSpreads } from '../../core/ledger/evidence/found-spread.ts'
import { instrumentLimits } from '../../core/ledger/evidence/instrument-limits.ts'
import { printedEvidence } from '../../core/ledger/evidence/printed-evidence.ts'
import { scatterPools } from '../../core/ledger/evidence/scatter-pools.ts'

import { displayFactor, writeMeasured } from '../../core/ledger/units/display-units.ts'
import { plusMinus } from '../../core/ledger/units/plus-minus.ts'

import { formatLength } from '../../core/quantity/format/format-length.ts'

import { NotationError } from '../../core/quantity/notation/notation-error.ts'
import type { QuantityKind } from '../../core/quantity/quantity-kind.ts'
import { expand } from '../../core/uncertainty/coverage.ts'
import type { Uncertain } from '../../core/uncertainty/uncertain.ts'
import type { AnyReason } from '../../core/words/reason.ts'
import { ScantlingError } from '../../core/words/scantling-error.ts'

/** Evidence as it is being written on the card. */
export type EvidenceDraft =
  | { basis: 'printed'; text: string; legibility: 'clear' | 'doubtful'; sheet: string | null }
  /** One reading a line. */
  | { basis: 'found'; readings: string; instrument: string | null }
  | { basis: 'derived'; formula: string }

/** What a draft comes to: an edit and how it is understood, or what is wrong and where. */
export type Drafted =
  | { edit: Edit; understood: string; also: readonly AnyReason[] }
  /** Of what can't be read: the text, and where reading stopped. */
  | { refused: AnyReason; stopped?: { text: string; at: number } }
  /** Nothing is written yet. */
  | null

/**
 * Reads a draft as core will, so that what is wrong is said while it is being written.
 * @param with unit: that what was understood is shown in
 */
export function draftedEvidence(
  draft: EvidenceDraft,
  dimension: Dimension,
  job: Job,
  { unit, mint }: { unit: Unit; mint: Mint },
): Drafted {
  const item = evidenceOf(draft, dimension, mint)
  if (item === null) return null
  const edit: Edit = { do: 'add-evidence', dimension: dimension.name, item }
  try {
    const { understood, also = [] } = understoodAs(item, dimension, job, unit)
    applyEdit(job, readEdit(edit))
    return { edit, understood, also }
  } catch (error) {
    if (error instanceof NotationError) {
      const { reason: refused, text, at } = error
      return { refused, stopped: { text, at } }
    }
    if (error instanceof FormulaError && error.place !== undefined) {
      return { refused: error.reason, stopped: error.place }
    }
    if (error instanceof ScantlingError) return { refused: error.reason }
    throw error
  }
}

function evidenceOf(draft: EvidenceDraft, dimension: Dimension, mint: Mint): Evidence | null {
  const identity = newIdentity(draft.basis, dimension.evidence, mint)
  switch (draft.basis) {
    case 'printed': {
      const text = draft.text.trim()
      if (text === '') return null
      const sheet = draft.sheet === null ? {} : { sheet: draft.sheet }
      return { ...identity, basis: 'printed', text, legibility: draft.legibility, ...sheet }
    }
    case 'found': {
      const readings = draft.readings.split('\n').flatMap((line) => line.trim() || [])
      if (readings.length === 0) return null
      const instrument = draft.instrument === null ? {} : { instrument: draft.instrument }
      return { ...identity, basis: 'found', readings, ...instrument }
    }
    case 'derived': {
      const formula = draft.formula.trim()
      return formula === '' ? null : { ...identity, basis: 'derived', formula }
    }
  }
}

/** How evidence is understood, and what else a person should know of that or is asked. */
function understoodAs(
  item: Evidence,
  dimension: Dimension,
  job: Job,
  unit: Unit,
): { understood: string; also?: readonly AnyReason[] } {
  switch (item.basis) {
    case 'printed': {
      // With what the dimension has already: a radius may be the wrong figure of it.
      const whole = { ...dimension, evidence: [...dimension.evidence, item] }
      const figures = readFigures(whole, job)
      const context = { conventions: job, unit, figuresAs: 'fractions', figures, finest: null } as const
      const { written, shown, adopted, remarks = [] } = printedEvidence(item, whole, context)
      const figure = figures.of(item)
      if (figure === undefined || figure instanceof NotationError) return { understood: `Read as ${written}` }
      const size = figure.length === undefined ? written : formatLength(figure.length, { unit })
      const plain = adopted === null || shown === undefined ? size : written
      const { as, also } = figureUnderstood(figure, plain)
      return { understood: `Read as ${as}`, also: [...also, ...remarks] }
    }
    case 'found': {
      // Each by itself first, so that the line which can't be read is the one that is named.
      for (const reading of item.readings) readReading(reading, dimension.kind, job)
      const whole = { ...dimension, evidence: [...dimension.evidence, item] }
      const dimensions = [...job.dimensions.filter(({ name }) => name !== whole.name), whole]
      const limits = instrumentLimits(job.instruments, job)
      const pools = scatterPools(
        dimensions.flatMap((one) => foundSpreads(one, job)),
        limits,
      )
      const {
        adopted,
        remarks = [],
        problem,
      } = foundEvidence(item, whole, {
        conventions: job,
        instrument: job.instruments.find(({ id }) => id === item.instrument),
        limitOf: limitOfError,
        scatterOf: (pool) => pools.get(pool),
      })
      if (problem !== undefined) return { understood: 'They give no value', also: [problem] }
      const mean = adopted === null ? '' : measuredWithU(adopted, dimension.kind, unit)
      return {
        understood:
          item.readings.length === 1 ? `Read as ${mean}` : `${item.readings.length} readings, mean ${mean}`,
        also: remarks,
      }
    }
    default:
      // By itself first, so that the place in it is shown; the edit checks the names.
      if (item.basis === 'derived') checkFormulaAlone(item.formula, job)
      return { understood: 'The formula can be worked out' }
  }
}

/** As the table will have it: never a measured value without its ±. */
function measuredWithU(x: Uncertain, kind: QuantityKind, unit: Unit): string {
  const { U } = expand(x)
  const style = { kind, unit, figuresAs: 'fractions', finest: null, feetFrom: null } as const
  return `${writeMeasured(x.value, U, style)}${plusMinus(U * displayFactor(kind, unit), kind, unit)}`
}

/** @throws FormulaError with its place for what can't be read or mixes units; names that no dimension has are left aside */
function checkFormulaAlone(text: string, job: Job): void {
  const formula = parseFormula(text)
  const kinds = new Map(job.dimensions.map(({ name, kind }) => [name, kind]))
  if (formula.names.some((name) => !kinds.has(name))) return
  formula.units((name) => UNITS_OF_KIND[kinds.get(name) ?? 'count'])
}
