import type { Dimension, Job, Unit } from '../../core/job/model/types.ts'
import { mintForTrial } from '../bench/mint.ts'
import { FormulaVerdict } from './formula-verdict.tsx'
import { draftedEvidence, type EvidenceDraft } from './new-evidence.ts'

interface TriedFormulaProps {
  draft: EvidenceDraft
  dimension: Dimension
  job: Job
  unit: Unit
}

/** What a new formula of a dimension comes to, before it is kept. */
export function TriedFormula({ draft, dimension, job, unit }: TriedFormulaProps) {
  const read = draftedEvidence(draft, dimension, job, { unit, mint: mintForTrial() })
  if (read === null || !('edit' in read) || read.edit.do !== 'add-evidence') return null
  return (
    <FormulaVerdict drafted={read} job={job} dimension={dimension.name} id={read.edit.item.id} unit={unit} />
  )
}
