import { isScanName } from '../model/scan-name.ts'
import type { Job } from '../model/types.ts'
import { DEEPEST_ITEM, nestedAtMost } from '../text/plain-json.ts'
import { type CheckContext, refuse } from './check-context.ts'
import { checkWritten } from './check-written.ts'

const LISTS = [
  'people',
  'instruments',
  'sheets',
  'views',
  'marks',
  'dimensions',
  'relations',
  'notes',
] as const

function checkDepth(job: Job, path: readonly PropertyKey[], value: unknown): void {
  if (!nestedAtMost(value, DEEPEST_ITEM)) refuse(job, path, `is nested more than ${DEEPEST_ITEM} deep`)
}

/** Checks what each thing says by itself: the quantities it is written with, and that it can be kept in a file. */
export function checkOwn(context: CheckContext): void {
  const { job, known } = context
  for (const [key, value] of Object.entries(job)) {
    if (!(LISTS as readonly string[]).includes(key)) checkDepth(job, [key], value)
  }
  for (const list of LISTS) {
    job[list].forEach((item, i) => {
      if (!known(item)) checkDepth(job, [list, i], item)
    })
  }
  checkWritten(context, ['tolerance'], job.tolerance, 'tolerance')
  job.instruments.forEach((instrument, i) => {
    if (known(instrument)) return
    checkWritten(context, ['instruments', i, 'resolution'], instrument.resolution, 'length or angle')
    checkWritten(context, ['instruments', i, 'limit'], instrument.limit, 'length or angle')
  })
  job.sheets.forEach((sheet, i) => {
    if (known(sheet)) return
    if (!isScanName(sheet.scan.file)) {
      refuse(job, ['sheets', i, 'scan', 'file'], 'must be the plain name of a file below the folder "scans"')
    }
    checkWritten(context, ['sheets', i, 'draughting'], sheet.draughting, 'length')
  })
  job.relations.forEach((relation, i) => {
    if (!known(relation)) checkWritten(context, ['relations', i, 'u'], relation.u, 'length or angle')
  })
}
