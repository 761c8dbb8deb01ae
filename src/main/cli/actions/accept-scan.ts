import { called, itemCalled } from '../../../core/job/ids/label.ts'
import { capital } from '../../../core/words/capital.ts'
import type { AnyReason } from '../../../core/words/reason.ts'
import { openJob } from '../../services/job-folder/open-job.ts'
import { relinkSheet, relinkSheetToCopy } from '../../services/job-folder/relink-sheet.ts'
import { readPassword } from '../arguments/read-password.ts'
import { mustBeWritable } from './must-be-writable.ts'
import { settingsLimits } from './settings-limits.ts'

/**
 * Accepts a scan for a sheet of a job and closes the job.
 * @param sheet its id, or its label
 * @param scan a file to copy into the job; undefined: the sheet's own as it is now
 * @param how who says so; passwordFile: a file whose first line opens the scan, where it is locked; takeOver: the lock
 * that is to be taken over, as the refusal named it
 * @returns what a person should know of the opening, and what was done
 * @throws ServiceError when the job can't be edited or the scan does not suit
 */
export async function acceptScan(
  folder: string,
  sheet: string,
  scan: string | undefined,
  { by, passwordFile, takeOver }: { by: string; passwordFile?: string; takeOver?: string },
): Promise<{ notices: AnyReason[]; answer: string }> {
  const password = passwordFile === undefined ? undefined : await readPassword(passwordFile)
  const how = { limits: await settingsLimits().read(), password }
  const session = await openJob(folder, { mode: 'write', takeOver, person: by })
  try {
    mustBeWritable(session, folder)
    const named = itemCalled(session.job.sheets, sheet)
    const found = session.scans.find((one) => one.sheet === named?.id)
    const the = called('sheet', named ?? { id: sheet })
    const notices = session.notices.filter((notice) => notice !== found?.problem)
    if (scan === undefined && found?.state === 'ok') {
      return { notices, answer: `${capital(the)} has ${found.file} as it is: nothing to do.\n` }
    }
    const { n } = await (scan === undefined
      ? relinkSheet(session, sheet, by, undefined, how)
      : relinkSheetToCopy(session, sheet, by, scan, how))
    const file = session.job.sheets.find(({ id }) => id === named?.id)?.scan.file ?? ''
    return {
      notices,
      answer: `ok ${n}: accept ${file} for ${the}\nLook at the marks of the sheet: they lie at the same pixels as before.\n`,
    }
  } finally {
    await session.close()
  }
}
