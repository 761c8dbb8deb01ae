import { describe, expect, it } from 'vitest'
import { applyEdit, readEdit } from '../../../../src/core/job/edits/edit.ts'
import type { ItemKind } from '../../../../src/core/job/model/meaning.ts'
import { jobJsonSchema, jobSchema } from '../../../../src/core/job/model/schema.ts'
import { walkMeanings } from '../../../../src/core/job/model/walk-meanings.ts'
import { readJob } from '../../../../src/core/job/read-job.ts'
import { JobError } from '../../../../src/core/job/text/job-error.ts'
import { winchJob } from '../winch-job.ts'

const job = readJob(winchJob())

interface Found {
  text: string
  path: PropertyKey[]
}

const references: (Found & { to: ItemKind })[] = []
walkMeanings(jobSchema, 'reference').each(job, (text, { to }, { path }) => {
  references.push({ text, to, path: [...path] })
})

/** A copy of the winch job with another text at a place. */
function withText(path: readonly PropertyKey[], text: string): unknown {
  const copy: unknown = structuredClone(winchJob())
  let holder = copy as Record<PropertyKey, unknown>
  for (const key of path.slice(0, -1)) holder = holder[key] as Record<PropertyKey, unknown>
  holder[path.at(-1) ?? ''] = text
  return copy
}

describe('what the schema says of references', () => {
  it('is found in a job at every place that names something', () => {
    const kinds = new Set(references.map(({ to, path }) => `${path[0]?.toString()} to ${to}`))
    expect([...kinds].sort()).toEqual([
      'dimensions to instrument',
      'dimensions to mark',
      'dimensions to person',
      'dimensions to sheet',
      'dimensions to view',
      'marks to person',
      'marks to sheet',
      'notes to person',
      'notes to sheet',
      'views to mark',
      'views to sheet',
    ])
  })

  it.each(references)('$path can name nothing but one of its kind', ({ path, to }) => {
    const read = () => readJob(withText(path, 'gone'))
    expect(read).toThrow(JobError)
    expect(read).toThrow(/"gone"/)
    expect(read).toThrow(to === 'person' ? /not among the people/ : new RegExp(`no such ${to}`))
  })

  it.each(references)('$path keeps what it names from being removed', ({ text, to }) => {
    const remove = () => applyEdit(job, readEdit({ do: `remove-${to}`, id: text }))
    expect(remove).toThrow(/ is used by /)
  })
})

describe('what the schema says of texts', () => {
  it('stands in the JSON Schema for other programs', () => {
    const schema = JSON.stringify(jobJsonSchema())
    for (const keyword of ['"x-refersTo":"mark"', '"x-quantity":"size"', '"x-formula"']) {
      expect(schema).toContain(keyword)
    }
  })

  it('is put in place of itself, and what did not change is shared', () => {
    const walk = walkMeanings(jobSchema, 'reference')
    expect(walk.map(job, (text) => text)).toBe(job)
    const renamed = walk.map(job, (text, { to }) => (to === 'mark' && text === 'drum' ? 'roll' : text))
    expect(renamed.marks).toBe(job.marks)
    expect(renamed.views[1]).toBe(job.views[1])
    expect(renamed.views[0]?.references.some(({ marks }) => (marks as string[]).includes('roll'))).toBe(true)
  })
})
