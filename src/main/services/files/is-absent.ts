import { stat } from 'node:fs/promises'
import { systemCode } from './system-reason.ts'

/** Whether nothing at all stands at a path; false as well where that can't be seen. */
export const isAbsent = (path: string): Promise<boolean> =>
  stat(path).then(
    () => false,
    (error: unknown) => systemCode(error) === 'ENOENT',
  )
