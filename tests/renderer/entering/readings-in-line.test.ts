import { describe, expect, it } from 'vitest'
import { applyEdit } from '../../../src/core/job/edits/edit.ts'
import type { Dimension, Evidence, Job } from '../../../src/core/job/model/types.ts'
import { draftedLine, lineOf, readingsInLine } from '../../../src/renderer/entering/readings-in-line.ts'
import { sentenceOf } from '../../../src/renderer/words/window-words.ts'
import { seededMint } from '../../core/job/ids/seeded-mint.ts'
import { sampleDimension, sampleJob } from '../sample-job.ts'

const mint = seededMint(3)

const ruled: Job = {
  ...sampleJob,
  instruments: [...sampleJob.instruments, { id: 'rule', name: 'Steel rule', resolution: '1/64 in' }],
  dimensions: [],
  relations: [],
}
const line = (
  text: string,
  dimension: Dimension,
  job: Job = sampleJob,
  instrument: string | undefined = 'caliper',
) => draftedLine(text, dimension, job, { unit: 'in', mint, instrument })

const withFound = (...pieces: Partial<Evidence>[]): Dimension => ({
  name: 'drum_width',
  label: 'Drum, width',
  kind: 'length',
  evidence: pieces.map(
    (piece, i) => ({ id: `f${i}`, basis: 'found', readings: ['5"'], ...piece }) as Evidence,
  ),
})
const jobWith = (dimension: Dimension): Job => ({ ...ruled, dimensions: [dimension] })

describe('readings in one line', () => {
  it('are one piece of evidence by the instrument at hand, with their mean and its ±', () => {
    const drafted = line('5 1/2 5 17/32 5 1/2', sampleDimension('neck_od'))
    expect(drafted).toMatchObject({
      edit: {
        do: 'add-evidence',
        dimension: 'neck_od',
        item: { basis: 'found', readings: ['5 1/2', '5 17/32', '5 1/2'], instrument: 'caliper' },
      },
      understood: expect.stringMatching(/^3 readings, mean 5\.51\d* *" ± .*, by Vernier caliper, 12 inch$/),
    })
  })

  it('replace those that stand there, and keep what they were taken with', () => {
    const dimension = withFound({ instrument: 'rule' } as Partial<Evidence>)
    expect(line('5 5 1/16', dimension, jobWith(dimension))).toMatchObject({
      edit: { do: 'change-evidence', dimension: 'drum_width', id: 'f0', set: { readings: ['5', '5 1/16'] } },
    })
  })

  it('are withdrawn by an emptied line, and counted anew when they are written again', () => {
    const dimension = withFound({})
    const job = jobWith(dimension)
    const drafted = line('  ', dimension, job)
    expect(drafted).toMatchObject({ edit: { do: 'withdraw-evidence', id: 'f0' } })
    if (drafted === null || !('edit' in drafted)) throw new Error('nothing was withdrawn')
    const { job: after } = applyEdit(job, drafted.edit)
    const [emptied] = after.dimensions
    if (emptied === undefined) throw new Error('the dimension is gone')
    expect(readingsInLine(emptied, 'caliper')).toBeUndefined()
    expect(line('5 1/8', emptied, after)).toMatchObject({ edit: { do: 'add-evidence' } })
  })

  it('change nothing where they stand as they were, or were never there', () => {
    const dimension = withFound({ readings: ['5 1/2', '1/2'] } as Partial<Evidence>)
    expect(line(lineOf(dimension.evidence[0] as never, dimension), dimension, jobWith(dimension))).toBeNull()
    expect(line(' ', sampleDimension('neck_od'))).toBeNull()
  })

  it('are by the newest of the instrument at hand, or else by the newest', () => {
    const dimension = withFound(
      { instrument: 'caliper' } as Partial<Evidence>,
      { instrument: 'rule' } as Partial<Evidence>,
      { instrument: 'rule', withdrawn: 'a slip' } as Partial<Evidence>,
    )
    expect(readingsInLine(dimension, 'caliper')?.id).toBe('f0')
    expect(readingsInLine(dimension, 'rule')?.id).toBe('f1')
    expect(readingsInLine(dimension, undefined)?.id).toBe('f1')
  })

  it('say which can not be read, and where', () => {
    expect(line('5 1/2 5 x', sampleDimension('neck_od'))).toMatchObject({ stopped: { text: '5 x' } })
  })

  it('say what can not be of one size', () => {
    const drafted = line('5.5 55', sampleDimension('neck_od'))
    expect(drafted).toMatchObject({ understood: expect.stringMatching(/no value/) })
    if (drafted === null || !('also' in drafted)) throw new Error('nothing was said')
    expect(drafted.also.map(sentenceOf).join(' ')).toMatch(/can't both be readings of one size/)
  })

  it('read a comma before three digits as decimals in a job that writes decimals so', () => {
    const dimension = withFound({ readings: ['140,2 mm'] } as Partial<Evidence>)
    expect(line('140,225 mm 140.2 mm', dimension, jobWith(dimension))).toMatchObject({
      edit: { set: { readings: ['140.225 mm', '140.2 mm'] } },
    })
  })
})
