import type { ServiceReason } from '../words/services-words.ts'
import { rescuesOf } from './history/rescues.ts'

/** Reasons that say what a job whose files do not belong together can be gone on from. */
const WITH_A_WAY_OUT: ReadonlySet<ServiceReason['code']> = new Set<ServiceReason['code']>([
  'history.missing',
  'history.broken',
  'history.ends-early',
  'history.goes-another-way',
  'history.of-another-job',
  'history.edit-not-applied',
  'history.no-beginning',
  'job-file.changed-outside',
  'job-file.changed-at-the-end',
  'job-file.without-history',
  'job-file.in-history',
  'job-folder.no-job',
])

/** The reason why a job is not opened, with what was rescued of it where there is any. */
export async function nameRescue(why: ServiceReason, folder: string): Promise<ServiceReason> {
  if (!WITH_A_WAY_OUT.has(why.code)) return why
  const [most] = await rescuesOf(folder, undefined)
  return most === undefined ? why : ({ ...why, parts: { ...why.parts, rescued: most.path } } as ServiceReason)
}
