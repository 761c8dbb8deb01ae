import type { Dimension, Job, Unit, View } from '../../core/job/model/types.ts'
import type { QuantityKind } from '../../core/quantity/quantity-kind.ts'
import { mintForTrial } from '../bench/mint.ts'
import { countIn, ofSoMany } from './count-in-figure.ts'
import { type Drafted, draftedEvidence } from './new-evidence.ts'

interface FigureOf {
  kind: QuantityKind
  /** That it is shown in. */
  unit: Unit
  view: View
  /** How many a person says that there are; null: nobody has said so. */
  count: number | null
}

/** A figure that is written beside picks. */
export interface FigureBeside {
  drafted: Drafted
  /** How many it says that there are; null where it says nothing of that. */
  count: number | null
}

/** How a figure is understood that is written beside picks, before there is a dimension to which it belongs. */
export function figureBeside(job: Job, text: string, { kind, unit, view, count }: FigureOf): FigureBeside {
  const said = countIn(job, text, kind)
  const many = count ?? said ?? 1
  const of: Dimension = {
    name: 'as_picked',
    label: '',
    kind,
    evidence: [],
    ...ofSoMany(many),
  }
  const draft = { basis: 'printed', text, legibility: 'clear', sheet: view.sheet } as const
  const withIt = { ...job, dimensions: [...job.dimensions, of] }
  return { drafted: draftedEvidence(draft, of, withIt, { unit, mint: mintForTrial() }), count: said }
}
