import { describe, expect, it } from 'vitest'
import { newJob } from '../../../../src/core/job/model/new-job.ts'
import type { Job } from '../../../../src/core/job/model/types.ts'
import { readJob } from '../../../../src/core/job/read-job.ts'
import { readAs } from '../../../../src/renderer/desk/keeping/read-as.ts'

const job = (unit: 'in' | 'mm'): Job => readJob(newJob('Hood', unit))

describe('a figured size, as it was read', () => {
  it.each([
    ['in', `2'-0 5/8"`, 'distance', `Read as 2'-0 5/8", 24.625".`],
    ['in', '12" DIA.', 'diameter', 'Read as 12".'],
    ['in', '365 mm', 'distance', 'Read as 14.370079".'],
    ['mm', '12,5', 'distance', 'Read as 12.5 mm.'],
    ['mm', '10 m/m', 'distance', 'Read as 10 mm.'],
    // What can't be read, or is no size of it, the field says.
    ['in', '1 38', 'distance', ''],
    ['in', 'R 6"', 'diameter', ''],
    ['in', ' ', 'distance', ''],
  ] as const)('in %s, %s of a %s', (unit, text, of, said) => {
    expect(readAs(job(unit), text, of)).toBe(said)
  })
})
