import type { Unit } from '../../core/job/model/types.ts'
import { useBench } from '../bench/bench-store.ts'
import { mintForTrial } from '../bench/mint.ts'
import { DraftVerdict } from '../entering/draft-verdict.tsx'
import { draftedFormula, formulaInLine } from '../entering/formula-in-line.ts'
import { FormulaVerdict } from '../entering/formula-verdict.tsx'
import { draftedLine } from '../entering/readings-in-line.ts'
import { useInstrumentAtHand } from '../instruments/at-hand.ts'
import type { ColumnName } from './columns.ts'

interface CellVerdictProps {
  /** Of the dimension. */
  name: string
  column: ColumnName
  text: string
  unit: Unit
}

/** What a text that is being written in a cell comes to: the mean of readings, the value of a formula. */
export function CellVerdict({ name, column, text, unit }: CellVerdictProps) {
  const job = useBench((bench) => bench.opened?.job)
  const instrument = useInstrumentAtHand()?.id
  const dimension = job?.dimensions.find((one) => one.name === name)
  if (job === undefined || dimension === undefined) return null
  if (column === 'original') {
    const mint = mintForTrial()
    return <DraftVerdict drafted={draftedLine(text, dimension, job, { unit, mint, instrument })} />
  }
  const formula = column === 'figure' ? formulaInLine(dimension) : undefined
  if (formula === undefined) return null
  return (
    <FormulaVerdict
      drafted={draftedFormula(text, dimension, job)}
      job={job}
      dimension={name}
      id={formula.id}
      unit={unit}
    />
  )
}
