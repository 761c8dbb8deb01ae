import { parseFormula } from '../../core/formula/formula.ts'
import { sameUnits, UNITS_OF_KIND } from '../../core/formula/formula-units.ts'
import { applyEdit, type Edit, readEdit } from '../../core/job/edits/edit.ts'
import type { Mint } from '../../core/job/ids/mint-ids.ts'
import { newIdentity } from '../../core/job/ids/new-identity.ts'
import { kindOfMeasure } from '../../core/job/model/mark-needs.ts'
import type { Dimension, Evidence, Job, Unit } from '../../core/job/model/types.ts'
import { GAUGE_CALL_OUTS, type GaugeStandard } from '../../core/quantity/gauges.ts'
import { QUANTITY_KINDS, type QuantityKind } from '../../core/quantity/quantity-kind.ts'
import { attempted } from '../words/refusal.ts'
import { ofSoMany } from './count-in-figure.ts'
import { nameProblem } from './name-of-label.ts'
import type { DimensionBegun } from './new-dimension-asked.ts'
import { type Drafted, drafted, draftedEvidence, type EvidenceDraft } from './new-evidence.ts'

/** A sheet gauge as it is written: its number, and of which table. */
export interface GaugeDraft {
  basis: 'gauge'
  number: string
  standard: GaugeStandard
}

/** A dimension as it is being written. */
export interface DimensionDraft {
  name: string
  label: string
  /** null: by what is written. */
  kind: QuantityKind | null
  /** How many there are; one unless said otherwise. */
  count?: number
  from: EvidenceDraft | GaugeDraft
  /** The picks that it can be scaled between. */
  scaled?: DimensionBegun['scaled']
}

/** What a draft comes to: one edit, and how its evidence is understood; or what is wrong with it. */
export type DraftedDimension =
  | { edit: Edit; understood: Drafted; evidence: string }
  | { refused: NonNullable<Drafted> }
  | null

/** A gauge as a drawing calls it out: `No. 16 U.S.S.G.` */
export const gaugeCalledOut = ({ number, standard }: GaugeDraft): string =>
  `No. ${number.trim()} ${GAUGE_CALL_OUTS[standard]}`

/** The kind of quantity that is written; a length where nothing says otherwise. */
export function kindWritten(
  { from, scaled }: Pick<DimensionDraft, 'from' | 'scaled'>,
  job: Job,
): QuantityKind {
  if (scaled !== undefined) return kindOfMeasure(scaled.measure)
  if (from.basis === 'derived') return kindOfFormula(from.formula, job) ?? 'length'
  const written = from.basis === 'printed' ? from.text : from.basis === 'found' ? from.readings : ''
  return /[°º]|\bdeg/i.test(written) ? 'angle' : 'length'
}

/** undefined: it can't be read yet, or gives none of the kinds. */
function kindOfFormula(text: string, job: Job): QuantityKind | undefined {
  const kinds = new Map(job.dimensions.map(({ name, kind }) => [name, kind]))
  const came = attempted(() => parseFormula(text).units((name) => UNITS_OF_KIND[kinds.get(name) ?? 'length']))
  if (!('done' in came)) return undefined
  const { done } = came
  return QUANTITY_KINDS.find((kind) => sameUnits(UNITS_OF_KIND[kind], done))
}

const evidenceDraftOf = (from: DimensionDraft['from']): EvidenceDraft => {
  if (from.basis !== 'gauge') return from
  const text = from.number.trim() === '' ? '' : gaugeCalledOut(from)
  return { basis: 'printed', text, legibility: 'clear', sheet: null }
}

/** Reads a draft as core will; null: nothing is written that it rests on. */
export function draftedDimension(
  draft: DimensionDraft,
  job: Job,
  { unit, mint }: { unit: Unit; mint: Mint },
): DraftedDimension {
  const { name, label, scaled } = draft
  const kind = draft.kind ?? kindWritten(draft, job)
  // Under a name that nothing has, so that what is written is read also while that is being settled.
  const free = name !== '' && nameProblem(job, name) === null ? name : freeName(job)
  const empty: Dimension = {
    name: free,
    label: label.trim(),
    kind,
    evidence: [],
    ...ofSoMany(draft.count ?? 1),
  }
  const having = { ...job, dimensions: [...job.dimensions, empty] }
  const read = draftedEvidence(evidenceDraftOf(draft.from), empty, having, { unit, mint })
  if (read === null) return null
  if ('refused' in read || read.edit.do !== 'add-evidence') return { refused: read }
  const { item } = read.edit
  const evidence: Evidence[] = [item]
  if (scaled !== undefined) {
    evidence.push({ ...newIdentity('scaled', evidence, mint), basis: 'scaled', ...scaled })
  }
  const edit: Edit = { do: 'add-dimension', item: { ...empty, evidence } }
  const tried = drafted(() => {
    applyEdit(job, readEdit(edit))
    return read
  })
  return 'refused' in tried ? { refused: tried } : { edit, understood: read, evidence: item.id }
}

function freeName(job: Job): string {
  let name = 'as_written'
  while (job.dimensions.some((one) => one.name === name)) name += '_'
  return name
}
