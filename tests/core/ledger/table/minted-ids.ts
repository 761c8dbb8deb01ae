import { mintIds } from '../../../../src/core/job/ids/mint-ids.ts'
import type { Job } from '../../../../src/core/job/model/types.ts'
import { readJob } from '../../../../src/core/job/read-job.ts'
import { randomStream } from '../../../../src/core/uncertainty/random.ts'

/** The same job with ids as they are minted, and without a number at first: they are called by the ends of their ids. */
export function withMintedIds(job: Job, seed: number): Job {
  const random = randomStream(seed)
  const mint = mintIds((count) =>
    Uint8Array.from({ length: count }, () => Math.floor(256 * random.uniform())),
  )
  const ids = new Map<string, string>()
  for (const { id } of job.marks) ids.set(id, mint('mark'))
  for (const { id } of job.instruments) ids.set(id, mint('instrument'))
  for (const { id } of job.relations) ids.set(id, mint('relation'))
  for (const { id } of job.sheets) ids.set(id, mint('sheet'))
  for (const { id, references } of job.views) {
    ids.set(id, mint('view'))
    for (const one of references) ids.set(one.id, mint('reference'))
  }
  for (const { evidence } of job.dimensions) for (const { id } of evidence) ids.set(id, mint('evidence'))
  return readJob(
    JSON.parse(JSON.stringify(job), (_, value: unknown) =>
      typeof value === 'string' ? (ids.get(value) ?? value) : value,
    ),
  )
}
