import type { Job } from './model/types.ts'
import { readJob } from './read-job.ts'
import { JobError } from './text/job-error.ts'
import { findJsonFault } from './text/json-fault.ts'
import { quoted } from './text/quoted.ts'

function whereInText(text: string, at: number): string {
  const lines = text.slice(0, at).split(/\r\n|\r|\n/)
  return `line ${lines.length}, column ${(lines.at(-1) ?? '').length + 1}`
}

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
    const fault = findJsonFault(json)
    if (fault === null) throw new JobError(`This is not a job that can be read: ${String(error)}.`)
    const stands =
      fault.at < json.length ? quoted(String.fromCodePoint(json.codePointAt(fault.at) ?? 32)) : 'the end'
    throw new JobError(
      `This is not JSON: at ${whereInText(json, fault.at)} there should be ${fault.expected}, and there is ${stands}.`,
    )
  }
  return readJob(value)
}
