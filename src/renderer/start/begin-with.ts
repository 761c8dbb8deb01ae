import type { RequestArguments } from '../../contract/requests.ts'
import { workAs } from '../bench/who-is-at-work.ts'
import { sendScan } from '../intake/bring-in.ts'
import type { ChosenPages } from '../intake/choose-pages.ts'
import { takePages } from '../intake/take-pages.ts'
import { openWith } from './open-with.ts'

/** What the host has already, so that a second try after a refusal sends nothing twice. */
const handedOver = new WeakMap<File, string>()
const chosenOf = new WeakMap<File, ChosenPages>()

type Upload = RequestArguments<'new-job'>['uploads'][number]

/** Hands a scan over and has its pages chosen; null when a person leaves it, undefined when it can't be taken. */
async function handOver(file: File): Promise<Upload | null | undefined> {
  const upload = handedOver.get(file) ?? (await sendScan(file))
  if (upload === undefined) return undefined
  handedOver.set(file, upload)
  const before = chosenOf.get(file)
  if (before !== undefined) return { upload, ...before }
  let chosen: ChosenPages = {}
  const taken = await takePages(upload, file.name, async (pages) => {
    chosen = pages
    return null
  })
  if (taken === 'taken') {
    chosenOf.set(file, chosen)
    return { upload, ...chosen }
  }
  handedOver.delete(file)
  return taken === 'left' ? null : undefined
}

/**
 * Begins a job with scans: hands them over one by one, with the pages that are wanted of each; where one is refused,
 * no job is begun.
 * @param left told of each scan that a person left out after all
 */
export async function beginWith(
  files: readonly File[],
  job: Omit<RequestArguments<'new-job'>, 'uploads'>,
  left: (file: File) => void,
): Promise<void> {
  const uploads: Upload[] = []
  for (const file of files) {
    const upload = await handOver(file)
    if (upload === undefined) return
    if (upload === null) left(file)
    else uploads.push(upload)
  }
  if (uploads.length === 0) return
  await workAs(job.by)
  if (await openWith('new-job', { ...job, uploads })) return
  // Another choice of pages may be what is needed.
  for (const file of files) chosenOf.delete(file)
}
