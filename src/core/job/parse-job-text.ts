import { reason } from '../words/core-words.ts'
import type { Job } from './model/types.ts'
import { readParsedJob } from './read-job.ts'
import { JobError } from './text/job-error.ts'
import { findJsonFault } from './text/json-fault.ts'

/**
 * The job in the text of a job.json.
 *
 * @throws JobError when the text is not JSON (with line and column) or not a sound job; never anything else
 */
export function parseJobText(text: string): Job {
  const json = text.startsWith('\uFEFF') ? text.slice(1) : text
  let value: unknown
  try {
    value = JSON.parse(json)
  } catch (error) {
    throw new JobError(whyNotJson(json, error))
  }
  return readParsedJob(value)
}

function whyNotJson(json: string, error: unknown) {
  try {
    const fault = findJsonFault(json)
    if (fault === null) return reason('json.unreadable', { error: String(error) })
    const { at, expected } = fault
    const lines = json.slice(0, at).split(/\r\n|\r|\n/)
    return reason('json.broken', {
      line: lines.length,
      column: (lines.at(-1) ?? '').length + 1,
      expected,
      found: at < json.length ? String.fromCodePoint(json.codePointAt(at) ?? 32) : null,
    })
  } catch (failure) {
    if (failure instanceof RangeError) return reason('json.too-deep', { what: 'The job', inside: null })
    throw failure
  }
}
