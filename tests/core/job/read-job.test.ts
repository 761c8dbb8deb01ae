import { describe, expect, it } from 'vitest'
import { newJob } from '../../../src/core/job/model/new-job.ts'
import { readJob } from '../../../src/core/job/read-job.ts'
import { JobError } from '../../../src/core/job/text/job-error.ts'
import { withNode } from './edits/edited-json.ts'
import { winchJob } from './winch-job.ts'

function refusal(json: unknown): string {
  try {
    readJob(json)
  } catch (error) {
    expect(error).toBeInstanceOf(JobError)
    return (error as JobError).message
  }
  throw new Error('the job was read, and should have been refused')
}

/** The refusal of the winch job with one node set, or taken away. */
const refusalOf = (path: (string | number)[], value?: unknown): string =>
  refusal(withNode(winchJob(), path, value))

describe('a sound job', () => {
  it('is read as it is written', () => {
    expect(readJob(winchJob())).toEqual(winchJob())
  })

  it('may be empty', () => {
    expect(readJob(newJob('Bilge pump', 'mm'))).toEqual(newJob('Bilge pump', 'mm'))
  })

  it('shares nothing with what it was read from, and leaves that as it was', () => {
    const json = winchJob()
    const job = readJob(json)
    expect(json).toEqual(winchJob())
    job.marks.length = 0
    const view = job.views[0]
    if (view?.outline?.[0]) (view.outline[0] as unknown as number[])[0] = 77
    expect(json).toEqual(winchJob())
  })

  it('may be done by anybody when no people are listed', () => {
    expect(readJob(withNode(winchJob(), ['people'], [])).people).toEqual([])
  })

  it('may hold a figure that nobody can read, for that is evidence too', () => {
    const job = withNode(winchJob(), ['dimensions', 0, 'evidence', 0, 'text'], '?? illegible')
    expect(readJob(job)).toEqual(job)
  })

  it('may hold a figure that looks like a formula with unknown names once it is withdrawn', () => {
    const job = withNode(
      withNode(winchJob(), ['dimensions', 2, 'evidence', 0, 'formula'], 'nobody_knows + 1 in'),
      ['dimensions', 2, 'evidence', 0, 'withdrawn'],
      'misread',
    )
    expect(readJob(job)).toEqual(job)
  })
})

describe('what is no job of this version is refused', () => {
  it.each([null, undefined, 7, 'job', [], true])('%j is not a job', (json) => {
    expect(refusal(json)).toBe(
      'This is not a Scantling job: a job is a JSON object with "format": "scantling-job".',
    )
  })

  it.each([
    [{}, 'This is not a Scantling job: its "format" is missing, not "scantling-job".'],
    [{ format: 'plan' }, 'This is not a Scantling job: its "format" is "plan", not "scantling-job".'],
  ])('%j', (json, message) => {
    expect(refusal(json)).toBe(message)
  })

  it('naming both versions when it is newer', () => {
    expect(refusalOf(['version'], 3)).toBe(
      'The job was written by a newer Scantling (format version 3; this one reads up to 2): open it with that, nothing was changed.',
    )
  })

  it.each([0, 1.5, '1', null])('when its version is %j', (version) => {
    expect(refusalOf(['version'], version)).toBe(
      `version must be a whole number of 1 or more, and is ${JSON.stringify(version)}.`,
    )
  })
})

describe('a job of the wrong form is refused, saying where', () => {
  it.each<[(string | number)[], unknown, string]>([
    [['title'], undefined, 'title is missing.'],
    [['unit'], 'cm', 'unit must be "in" or "mm".'],
    [['marks'], {}, 'marks must be a list.'],
    [['marks', 3], 'D', 'the 4th mark must be an object with named fields.'],
    [['marks', 3, 'sigma'], 0, 'mark "D": sigma must be a number greater than 0.'],
    [
      ['marks', 3, 'sigma'],
      Number.NaN,
      'The job: mark "D": sigma is NaN, and must be a number that JSON can hold.',
    ],
    [['marks', 3, 'sigma'], '1', 'mark "D": sigma must be a number.'],
    [
      ['marks', 3, 'pixel', 1],
      Number.POSITIVE_INFINITY,
      'The job: mark "D": the 2nd entry of pixel is Infinity, and must be a number that JSON can hold.',
    ],
    [['marks', 3, 'pixel'], [1], 'mark "D": pixel must have 2 entries.'],
    [['marks', 3, 'kind'], 'arc', 'mark "D": kind must be "point", "line", "circle" or "path".'],
    [['marks', 3, 'kind'], undefined, 'mark "D": kind is missing.'],
    [['marks', 3, 'id'], '', 'id of the 4th mark must not be empty.'],
    [['sheets', 0, 'scan', 'dpi'], 0, 'sheet "s1": dpi of the scan must be a number greater than 0.'],
    [['sheets', 0, 'scan', 'page'], 0, 'sheet "s1": page of the scan must be a number of 1 or more.'],
    [['sheets', 0, 'scan', 'width'], 10.5, 'sheet "s1": width of the scan must be a whole number.'],
    [['sheets', 0, 'scan', 'height'], -3, 'sheet "s1": height of the scan must be a number of 1 or more.'],
    [['views', 0, 'drawnScale'], 0, 'view "v1": drawnScale must be a number greater than 0.'],
    [
      ['views', 0, 'references', 0, 'marks'],
      ['A'],
      'figured size "R1" of view "v1": marks must have 2 entries.',
    ],
    [
      ['views', 0, 'references', 1, 'marks'],
      ['drum', 'pinion'],
      'figured size "R2" of view "v1": marks must have a single entry.',
    ],
    [
      ['dimensions', 0, 'evidence', 0, 'candidates', 0, 'probability'],
      1.5,
      'evidence "P1" of dimension "drum_length": probability of the 1st candidate must be a number of 1 or less.',
    ],
    [
      ['dimensions', 0, 'evidence', 4, 'readings'],
      [],
      'evidence "F1" of dimension "drum_length": readings must not be an empty list.',
    ],
    [['dimensions', 0, 'count'], 0, 'dimension "drum_length": count must be a number of 1 or more.'],
  ])('%j set to %j', (path, value, message) => {
    expect(refusalOf(path, value)).toBe(message)
  })

  it('when it holds what JSON cannot hold', () => {
    expect(refusalOf(['sheets', 0, 'record', 'date'], new Date(0))).toBe(
      'The job: sheet "s1": date of the record holds a Date, which JSON cannot hold.',
    )
  })

  it('when a field is named __proto__, and no other object is touched', () => {
    const text = '{"format":"scantling-job","version":1,"__proto__":{"polluted":true}}'
    expect(refusal(JSON.parse(text))).toBe(
      'The job has a field named "__proto__", which no job may have: take it out.',
    )
    expect(({} as Record<string, unknown>)['polluted']).toBeUndefined()
  })

  it('when it is nested without end', () => {
    const circle: Record<string, unknown> = { ...winchJob() }
    circle['more'] = circle
    expect(refusal(circle)).toMatch(/^The job is nested too deep inside "more": no sound file is\.$/)
  })

  it('when it is nested a hundred thousand deep', () => {
    let deep: unknown = 1
    for (let i = 0; i < 100_000; i++) deep = [deep]
    expect(refusalOf(['more'], deep)).toMatch(/^The job is nested too deep/)
  })

  it('when one item is nested deeper than its edits could be journalled', () => {
    let deep: unknown = 1
    for (let i = 0; i < 70; i++) deep = { deep }
    expect(refusalOf(['marks', 3, 'more'], deep)).toBe('mark "D" is nested more than 60 deep.')
    expect(refusalOf(['more'], deep)).toBe('more is nested more than 60 deep.')
  })
})
