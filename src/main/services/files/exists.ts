import { stat } from 'node:fs/promises'

/** Whether there is something at a path that this process can see. */
export const exists = (path: string): Promise<boolean> =>
  stat(path).then(
    () => true,
    () => false,
  )
