import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Job } from '../../../src/core/job/model/types.ts'
import { parseJobText } from '../../../src/core/job/parse-job-text.ts'
import { readJob } from '../../../src/core/job/read-job.ts'
import { JobError } from '../../../src/core/job/text/job-error.ts'
import { writeJob } from '../../../src/core/job/write-job.ts'
import { anyJob } from './arbitrary-job.ts'
import { nodes, withNode } from './edits/edited-json.ts'
import { expectSame } from './expect-same.ts'
import { winchJob } from './winch-job.ts'

type Path = (string | number)[]

const ODD = [
  null,
  true,
  '',
  '__proto__',
  'constructor',
  'toString',
  0,
  -1,
  -0,
  1.5,
  1e308,
  -1e308,
  2 ** 53,
  5e-324,
  Number.NaN,
  Number.POSITIVE_INFINITY,
  Number.NEGATIVE_INFINITY,
  [],
  {},
  [[]],
  [null],
  JSON.parse('{"__proto__": {"polluted": 1}}'),
  'pi',
  'mean',
  'x'.repeat(10_000),
  '('.repeat(3000),
  'drum_od '.repeat(400),
  '\u0000',
  '\ud800',
]

function at(json: unknown, path: Path): unknown {
  let value = json
  for (const key of path) value = (value as Record<string | number, unknown> | undefined)?.[key]
  return value
}

/** One node of a job taken away, replaced, given a new neighbour, or exchanged for another node. */
function mutated(draw: fc.GeneratorValue, json: unknown): unknown {
  const paths = nodes(json) as Path[]
  const path = paths[draw(fc.nat, paths.length - 1)] ?? []
  const other = paths[draw(fc.nat, paths.length - 1)] ?? []
  switch (draw(fc.nat, 5)) {
    case 0:
      return path.length === 0 ? undefined : withNode(json, path, undefined)
    case 1:
      return withNode(json, path, ODD[draw(fc.nat, ODD.length - 1)])
    case 2:
      return withNode(
        json,
        path,
        draw(() => fc.anything()),
      )
    case 3:
      return withNode(json, path, at(json, other))
    case 4: {
      const value = at(json, path)
      return Array.isArray(value)
        ? withNode(json, path, [...value, ...value])
        : withNode(json, path, [value, value])
    }
    default: {
      const value = at(json, path)
      const name = draw(fc.constantFrom, '__proto__', 'constructor', 'id', 'kind', 'withdrawn', 'adopt', 'u')
      if (typeof value !== 'object' || value === null || Array.isArray(value))
        return withNode(json, path, name)
      return withNode(json, [...path, name], ODD[draw(fc.nat, ODD.length - 1)])
    }
  }
}

/** Reads a job; true when it was sound. Fails when it is refused in any other way than by the job's own error. */
function isRead(json: unknown): boolean {
  let job: Job
  try {
    job = readJob(json)
  } catch (error) {
    expect(error).toBeInstanceOf(JobError)
    expect((error as JobError).message).toMatch(/^.+\.$/su)
    expect((error as JobError).message.length).toBeLessThan(6000)
    return false
  }
  expectSame(parseJobText(writeJob(job)), job)
  return true
}

describe('a damaged job', () => {
  it('is refused in words, or is a job that reads back as it was read', () => {
    const counts = { read: 0, refused: 0 }
    fc.assert(
      fc.property(fc.gen(), (draw) => {
        let json: unknown = draw(fc.boolean) ? winchJob() : anyJob(draw)
        // Mostly once: a job that is damaged again is hardly ever read.
        for (let i = draw(fc.constantFrom, 1, 1, 1, 2, 3); i > 0; i--) json = mutated(draw, json)
        counts[isRead(json) ? 'read' : 'refused']++
      }),
      { numRuns: 1000 },
    )
    // Both must happen, or the damage is of the wrong sort.
    expect(counts.read).toBeGreaterThan(50)
    expect(counts.refused).toBeGreaterThan(500)
    expect(({} as Record<string, unknown>)['polluted']).toBeUndefined()
  })

  it('is refused in words when any one node is taken away or replaced', () => {
    for (const path of nodes(winchJob()) as Path[]) {
      if (path.length === 0) continue
      isRead(withNode(winchJob(), path, undefined))
      for (const odd of [null, 7, 'x', [], {}]) isRead(withNode(winchJob(), path, odd))
    }
  })
})

describe('anything at all', () => {
  it('is a job or refused in words', () => {
    fc.assert(
      fc.property(fc.anything(), (json) => void isRead(json)),
      { numRuns: 500 },
    )
  })

  it('is refused in words when it is text', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.json()), (text) => {
        expect(() => parseJobText(text)).toThrow(JobError)
      }),
    )
  })
})
