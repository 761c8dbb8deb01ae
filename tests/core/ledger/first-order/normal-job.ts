import type { Dimension, Job, Relation } from '../../../../src/core/job/model/types.ts'
import { readJob } from '../../../../src/core/job/read-job.ts'
import type { Input } from './edge-cases.ts'

/** A dimension that is worked out. */
export const worked = (name: string, formula: string, kind: Dimension['kind'] = 'length'): Dimension => ({
  name,
  label: name,
  kind,
  evidence: [{ id: 'd', basis: 'derived', formula }],
})

/**
 * A job in mm whose dimensions were measured on the original, each normal with u known: an allowance for wear of nothing
 * carries it, and the readings themselves are as good as exact. `x` is an angle in degrees.
 */
export function normalJob(
  inputs: Readonly<Record<string, Input>>,
  more: readonly Dimension[],
  relations: readonly Relation[] = [],
): Job {
  const measured = Object.entries(inputs).map(([name, [value, u]]) => {
    const unit = name === 'x' ? '°' : ' mm'
    return {
      name,
      label: name,
      kind: name === 'x' ? 'angle' : 'length',
      evidence: [
        {
          id: 'f',
          basis: 'found',
          readings: [`${value}${unit}`],
          instrument: name === 'x' ? 'protractor' : 'rule',
          worn: { loss: `0${unit}`, u: `${u}${unit}` },
        },
      ],
    }
  })
  return readJob({
    format: 'scantling-job',
    version: 1,
    title: 'Test job',
    unit: 'mm',
    people: [],
    instruments: [
      { id: 'rule', name: 'rule', resolution: '0.000001 mm' },
      { id: 'protractor', name: 'protractor', resolution: '0.000001°' },
    ],
    sheets: [],
    views: [],
    marks: [],
    dimensions: [...measured, ...more],
    relations,
    notes: [],
  })
}
