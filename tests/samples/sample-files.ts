import { readFile } from 'node:fs/promises'
import { fileURLToPath } from 'node:url'
import type { Truth } from '../../samples/draw/make-job.ts'
import type { Job } from '../../src/core/job/model/types.ts'
import { readJob } from '../../src/core/job/read-job.ts'

const pathOf = (name: string): string => fileURLToPath(new URL(name, import.meta.url))

export const SCAN = pathOf('../../samples/deck-ventilator/scans/sheet-1.jpg')
export const JOB = pathOf('../../samples/deck-ventilator/job.json')
export const TRUTH = pathOf('deck-ventilator.truth.json')

export const sampleJob = async (): Promise<Job> => readJob(JSON.parse(await readFile(JOB, 'utf8')))
export const sampleTruth = async (): Promise<Truth> => JSON.parse(await readFile(TRUTH, 'utf8'))
