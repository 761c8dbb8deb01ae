import { ServiceError } from '../services/service-error.ts'
import { reason } from '../services/words/services-words.ts'
import type { LaunchSurroundings } from './surroundings.ts'

/** A window program that ends badly within this time has not come up. */
const AT_ONCE = 5000

/**
 * Opens the desktop window and waits until it is closed.
 * @param runtime the program of the Electron runtime
 * @param args the built desktop host, and what it opens
 * @returns undefined when it was closed; else why it did not come up, as a part of a sentence
 * @throws ServiceError when it ended badly later
 */
export async function openDesktopWindow(
  runtime: string,
  args: readonly string[],
  surroundings: LaunchSurroundings,
): Promise<string | undefined> {
  const started = surroundings.start(runtime, args, true)
  const goOn = (): void => undefined
  const stop = (): void => started.stop()
  // The window gets the terminal's interrupt itself and saves; a signal to this process alone is passed on.
  process.on('SIGINT', goOn)
  process.on('SIGTERM', stop)
  try {
    const early = await Promise.race([started.ended, surroundings.wait(AT_ONCE)])
    const { code, problem } = early ?? (await started.ended)
    if (code === 0) return undefined
    const how = problem ?? `exit code ${code}`
    if (early !== undefined) return `the desktop window ended at once (${how})`
    throw new ServiceError(reason('program.window-failed', { how }))
  } finally {
    process.off('SIGINT', goOn)
    process.off('SIGTERM', stop)
  }
}
