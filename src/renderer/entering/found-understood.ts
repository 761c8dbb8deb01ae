import type { Dimension, Evidence, Job, Unit } from '../../core/job/model/types.ts'
import { foundEvidence, limitOfError } from '../../core/ledger/evidence/found-evidence.ts'
import { readReading } from '../../core/ledger/evidence/found-reading.ts'
import { foundSpreads } from '../../core/ledger/evidence/found-spread.ts'
import { instrumentLimits } from '../../core/ledger/evidence/instrument-limits.ts'
import { scatterPools } from '../../core/ledger/evidence/scatter-pools.ts'
import { displayFactor, writeMeasured } from '../../core/ledger/units/display-units.ts'
import { plusMinus } from '../../core/ledger/units/plus-minus.ts'
import type { QuantityKind } from '../../core/quantity/quantity-kind.ts'
import { expand } from '../../core/uncertainty/coverage.ts'
import type { Uncertain } from '../../core/uncertainty/uncertain.ts'
import type { AnyReason } from '../../core/words/reason.ts'

/** How evidence is understood, and what else a person should know of that or is asked. */
export interface UnderstoodAs {
  understood: string
  also?: readonly AnyReason[]
  /** Whether it comes to nothing. */
  isWithout?: true
}

/**
 * How readings on the original are understood: their mean with its ±, by how readings of the whole job scatter. They
 * stand in place of those of the same id, where the dimension has such.
 * @throws NotationError for the first that can't be read
 */
export function foundUnderstood(
  item: Extract<Evidence, { basis: 'found' }>,
  dimension: Dimension,
  job: Job,
  unit: Unit,
): UnderstoodAs {
  // Each by itself first, so that the one which can't be read is the one that is named.
  for (const reading of item.readings) readReading(reading, dimension.kind, job)
  const others = dimension.evidence.filter(({ id }) => id !== item.id)
  const whole = { ...dimension, evidence: [...others, item] }
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
  if (problem !== undefined) return { understood: 'They give no value', also: [problem], isWithout: true }
  const mean = adopted === null ? '' : measuredWithU(adopted, dimension.kind, unit)
  return {
    understood:
      item.readings.length === 1 ? `Read as ${mean}` : `${item.readings.length} readings, mean ${mean}`,
    also: remarks,
  }
}

/** As the table will have it: never a measured value without its ±. */
function measuredWithU(x: Uncertain, kind: QuantityKind, unit: Unit): string {
  const { U } = expand(x)
  const style = { kind, unit, figuresAs: 'fractions', finest: null, feetFrom: null } as const
  return `${writeMeasured(x.value, U, style)}${plusMinus(U * displayFactor(kind, unit), kind, unit)}`
}
