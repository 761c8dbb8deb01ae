import type { Job } from '../job/types.ts'
import { parseLength } from '../quantity/parse-length.ts'
import { subtract } from '../uncertainty/arithmetic.ts'
import { expand } from '../uncertainty/coverage.ts'
import { measured, propagate, type Uncertain } from '../uncertainty/uncertain.ts'
import type { Assessment } from './assessment.ts'
import { displayFactor } from './display-units.ts'
import type { Formula } from './formula.ts'
import { ANGLE, AREA, LENGTH, NUMBER, type Units } from './formula-units.ts'
import { parseRelation } from './relation-text.ts'
import type { TableRelation } from './table.ts'

/** w of a relation between exact numbers that does not close. */
const BEYOND_DOUBT = 999

/**
 * Misclosure of each relation: left less right, with the correlations of what stands in it.
 * Figures count as ± half their last graduation or their tolerance. It holds when the misclosure is within U at 95 %.
 */
export function relationRows(assessment: Assessment): TableRelation[] {
  const { job } = assessment
  return job.relations.map((relation) => {
    const { left, right } = parseRelation(relation.text)
    const base = { id: relation.id, text: relation.text }
    const missing = [...new Set([...left.names, ...right.names])].filter(
      (name) => (assessment.dimensions.get(name)?.decision.compared ?? null) === null,
    )
    if (missing.length > 0) {
      const problem = `Not checked: ${missing.join(' and ')} ${missing.length > 1 ? 'have' : 'has'} no value.`
      return { ...base, misclosure: 0, u: 0, w: 0, holds: false, problem }
    }
    const compared = (name: string): Uncertain =>
      assessment.dimensions.get(name)?.decision.compared as Uncertain
    const slack = slackOf(relation.u, job)
    const difference = subtract(left.value(compared), right.value(compared))
    const misclosure = propagate(difference.value, [difference, slack], [1, 1])
    const { u, U } = expand(misclosure)
    const rounding = 1e-9 * Math.max(Math.abs(left.value(compared).value), 1e-300)
    const m = Math.abs(misclosure.value) <= rounding ? 0 : misclosure.value
    const factor = displayFactor(kindOf(left, assessment), job.unit)
    return {
      ...base,
      misclosure: m * factor,
      u: u * factor,
      w:
        m === 0
          ? 0
          : u === 0
            ? Math.sign(m) * BEYOND_DOUBT
            : Math.max(-BEYOND_DOUBT, Math.min(m / u, BEYOND_DOUBT)),
      holds: Math.abs(m) <= U,
    }
  })
}

function slackOf(u: string | undefined, job: Job): Uncertain {
  const mm = u === undefined ? 0 : Number(parseLength(u, { unit: job.unit }).mm)
  return measured(0, mm, 'what the relation may miss by')
}

const UNITS = { length: LENGTH, area: AREA, angle: ANGLE, count: NUMBER } as const

function kindOf(side: Formula, { dimensions }: Assessment): keyof typeof UNITS {
  const units: Units = side.units((name) => UNITS[dimensions.get(name)?.dimension.kind ?? 'count'])
  if (units.length === 1) return 'length'
  if (units.length === 2) return 'area'
  return units.angle === 1 ? 'angle' : 'count'
}
