import { stat } from 'node:fs/promises'
import { systemCode } from '../files/system-reason.ts'

/** Whether nothing at all stands where a folder was. */
export const isGone = (folder: string): Promise<boolean> =>
  stat(folder).then(
    () => false,
    (error: unknown) => systemCode(error) === 'ENOENT',
  )
