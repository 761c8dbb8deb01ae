import type { Edit } from '../../core/job/edits/edit.ts'
import type { Job, Unit } from '../../core/job/model/types.ts'
import { DraftVerdict } from './draft-verdict.tsx'
import { FormulaValue } from './formula-value.tsx'
import type { Drafted } from './new-evidence.ts'

interface FormulaVerdictProps {
  drafted: Drafted
  job: Job
  dimension: string
  /** Of the evidence that has the formula. */
  id: string
  unit: Unit
}

/** The value of a formula that is being written, or what is wrong with it and where. */
export function FormulaVerdict({ drafted, ...rest }: FormulaVerdictProps) {
  if (drafted === null || !('edit' in drafted)) return <DraftVerdict drafted={drafted} />
  const edit: Edit = drafted.edit
  return (
    <div className="draft-verdict" role="status">
      <FormulaValue edit={edit} {...rest} />
    </div>
  )
}
