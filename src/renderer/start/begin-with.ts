import type { AskArguments } from '../../contract/asks.ts'
import { sendScan } from '../bench/bring-in.ts'
import { workAs } from '../bench/settings.ts'
import { openWith } from './open-with.ts'

/** What the host has already, so that a second try after a refusal sends nothing twice. */
const handedOver = new WeakMap<File, string>()

/** Begins a job with scans: hands them over one by one; where one is refused, no job is begun. */
export async function beginWith(
  files: readonly File[],
  job: Omit<AskArguments<'new-job'>, 'uploads'>,
): Promise<void> {
  const uploads: string[] = []
  for (const file of files) {
    const upload = handedOver.get(file) ?? (await sendScan(file))
    if (upload === undefined) return
    handedOver.set(file, upload)
    uploads.push(upload)
  }
  workAs(job.by)
  await openWith('new-job', { ...job, uploads })
}
