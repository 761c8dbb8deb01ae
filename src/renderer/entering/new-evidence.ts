import { parseFormula } from '../../core/formula/formula.ts'
import { FormulaError } from '../../core/formula/formula-error.ts'
import { UNITS_OF_KIND } from '../../core/formula/formula-units.ts'
import { applyEdit, type Edit, readEdit } from '../../core/job/edits/edit.ts'
import type { Mint } from '../../core/job/ids/mint-ids.ts'
import { newIdentity } from '../../core/job/ids/new-identity.ts'
import type { Dimension, Evidence, Job, Unit } from '../../core/job/model/types.ts'
import { figureUnderstood } from '../../core/ledger/evidence/figure-understood.ts'
import { readFigures } from '../../core/ledger/evidence/figures.ts'
import { printedEvidence } from '../../core/ledger/evidence/printed-evidence.ts'

import { formatLength } from '../../core/quantity/format/format-length.ts'

import { NotationError } from '../../core/quantity/notation/notation-error.ts'
import type { AnyReason } from '../../core/words/reason.ts'
import { ScantlingError } from '../../core/words/scantling-error.ts'
import { foundUnderstood, type UnderstoodAs } from './found-understood.ts'
import { hasCommas } from './has-commas.ts'
import { splitReadings } from './split-readings.ts'

/** Where a printed figure stands, what was read there, and what else it could be. */
export type FigureStands = Pick<Extract<Evidence, { basis: 'printed' }>, 'box' | 'read' | 'candidates'>

/** Evidence as it is being written on the card. */
export type EvidenceDraft =
  | {
      basis: 'printed'
      text: string
      legibility: 'clear' | 'doubtful'
      sheet: string | null
      /** Of a figure that was read on the sheet. */
      stands?: FigureStands
    }
  /** One reading a line, or several parted by spaces. */
  | { basis: 'found'; readings: string; instrument: string | null }
  | { basis: 'derived'; formula: string }

/** What a draft comes to: an edit and how it is understood, or what is wrong and where. */
export type Drafted =
  | { edit: Edit; understood: string; also: readonly AnyReason[] }
  | DraftRefused
  /** Nothing is written yet. */
  | null

/** Of what can't be read: the text, and where reading stopped. */
interface DraftRefused {
  refused: AnyReason
  stopped?: { text: string; at: number }
}

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
  const item = evidenceOf(draft, dimension, job, mint)
  if (item === null) return null
  const edit: Edit = { do: 'add-evidence', dimension: dimension.name, item }
  return drafted(() => {
    const { understood, also = [] } = understoodAs(item, dimension, job, unit)
    applyEdit(job, readEdit(edit))
    return { edit, understood, also }
  })
}

/** What is tried, or what is wrong with it and where reading stopped. */
export function drafted<D extends Drafted>(attempt: () => D): D | DraftRefused {
  try {
    return attempt()
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

function evidenceOf(draft: EvidenceDraft, dimension: Dimension, job: Job, mint: Mint): Evidence | null {
  const identity = newIdentity(draft.basis, dimension.evidence, mint)
  switch (draft.basis) {
    case 'printed': {
      const text = draft.text.trim()
      if (text === '') return null
      const sheet = draft.sheet === null ? {} : { sheet: draft.sheet }
      const { legibility, stands = {} } = draft
      return { ...identity, basis: 'printed', text, legibility, ...sheet, ...stands }
    }
    case 'found': {
      const readings = splitReadings(draft.readings, dimension.kind, hasCommas(job))
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
function understoodAs(item: Evidence, dimension: Dimension, job: Job, unit: Unit): UnderstoodAs {
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
    case 'found':
      return foundUnderstood(item, dimension, job, unit)
    default:
      // By itself first, so that the place in it is shown; the edit checks the names.
      if (item.basis === 'derived') checkFormulaAlone(item.formula, job)
      return { understood: '' }
  }
}

/** @throws FormulaError with its place for what can't be read or mixes units; names that no dimension has are left aside */
export function checkFormulaAlone(text: string, job: Job): void {
  const formula = parseFormula(text)
  const kinds = new Map(job.dimensions.map(({ name, kind }) => [name, kind]))
  if (formula.names.some((name) => !kinds.has(name))) return
  formula.units((name) => UNITS_OF_KIND[kinds.get(name) ?? 'count'])
}
