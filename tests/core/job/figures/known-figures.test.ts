import { describe, expect, it } from 'vitest'
import { figuresKnownOn } from '../../../../src/core/job/figures/known-figures.ts'
import { boxesLookedAt } from '../../../../src/core/job/figures/looked-at.ts'
import { newJob } from '../../../../src/core/job/model/new-job.ts'
import type { Dimension, Evidence, Job } from '../../../../src/core/job/model/types.ts'

type Box = [number, number, number, number]
type Printed = Extract<Evidence, { basis: 'printed' }>

const printed = (id: string, text: string, x: number, more: Partial<Printed> = {}): Printed => {
  const box: Box = [x, 10, 40, 20]
  return { id, basis: 'printed', text, sheet: 'S1', box, ...more }
}

const dimension = (name: string, evidence: Evidence[], adopt?: string): Dimension => ({
  name,
  label: name,
  kind: 'length',
  evidence,
  ...(adopt === undefined ? {} : { adopt }),
})

const jobWith = (...dimensions: Dimension[]): Job => ({ ...newJob('Plate', 'in'), dimensions })

const textsOf = (job: Job, most = 60) => figuresKnownOn(job, 'S1', most).map(({ text }) => text)

describe('the figures of a sheet that are known', () => {
  it('are those that stand on it clearly, each once, and doubtful ones that a person adopted by name', () => {
    const doubtful = { legibility: 'doubtful' } as const
    const job = jobWith(
      dimension('clear', [printed('p1', '1"', 0), printed('p2', '2"', 100, { legibility: 'clear' })]),
      dimension('doubtful', [printed('p1', '3"', 200, doubtful), printed('p2', '4"', 300, doubtful)], 'p2'),
      dimension('by rule', [printed('p1', '5"', 400, doubtful)], 'printed'),
      dimension('elsewhere', [printed('p1', '6"', 500, { sheet: 'S2' })]),
      dimension('withdrawn', [printed('p1', '7"', 600, { withdrawn: 'misread' })]),
      dimension('the same', [printed('p1', '2"', 100)]),
      dimension('no box', [{ id: 'p1', basis: 'printed', text: '8"', sheet: 'S1' }]),
      dimension('derived', [{ id: 'd1', basis: 'derived', formula: 'clear' }]),
    )
    expect(textsOf(job).sort()).toEqual(['1"', '2"', '4"'])
  })

  it('come newest first, by when they were changed or entered, and those without a time by their place', () => {
    const job = jobWith(
      dimension('a', [
        printed('p1', '1"', 0),
        printed('p2', '2"', 100),
        printed('p3', '3"', 200, { at: '2026-03-01T10:00:00Z', changedAt: '2026-03-04T10:00:00Z' }),
      ]),
      dimension('b', [
        printed('p1', '4"', 300, { at: '2026-03-03T08:00:00Z' }),
        printed('p2', '5"', 400, { at: '2026-03-03T09:00:00Z' }),
      ]),
    )
    expect(textsOf(job)).toEqual(['3"', '5"', '4"', '2"', '1"'])
    expect(textsOf(job, 2)).toEqual(['3"', '5"'])
  })
})

describe('what somebody has looked at on a sheet', () => {
  it('is what was taken there, however doubtful, and what was dismissed', () => {
    const gone: Box = [700, 10, 40, 20]
    const job: Job = {
      ...jobWith(
        dimension('a', [
          printed('p1', '1"', 0, { legibility: 'doubtful' }),
          printed('p2', '2"', 100, { withdrawn: 'misread' }),
          printed('p3', '3"', 200, { sheet: 'S2' }),
        ]),
      ),
      sheets: [
        {
          id: 'S1',
          title: 'Plate',
          record: {},
          scan: { file: 'a.png', sha256: '', page: 1, width: 900, height: 900 },
          dismissed: [{ box: gone }],
        },
      ],
    }
    expect(boxesLookedAt(job, 'S1')).toEqual([[0, 10, 40, 20], gone])
  })
})
