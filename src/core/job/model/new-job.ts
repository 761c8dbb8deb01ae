import type { Job, Unit } from './types.ts'

/** An empty job. */
export function newJob(title: string, unit: Unit): Job {
  return {
    format: 'scantling-job',
    version: 2,
    title,
    unit,
    people: [],
    instruments: [],
    sheets: [],
    views: [],
    marks: [],
    dimensions: [],
    relations: [],
    notes: [],
  }
}
