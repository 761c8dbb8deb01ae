import { inWords, reason, type ServiceReason } from '../words/services-words.ts'

/** The system's error code, e.g. `ENOENT`, or undefined when the error does not come from the system. */
export function systemCode(error: unknown): string | undefined {
  if (!(error instanceof Error) || !('code' in error)) return undefined
  return typeof error.code === 'string' ? error.code : undefined
}

/** Why the system refused, as a part of a reason: `… because the disk is full`. */
export function systemCause(error: unknown): ServiceReason {
  const code = systemCode(error)
  if (code !== undefined) return reason('system.refused', { error: code })
  return reason('system.failed', { message: error instanceof Error ? error.message : String(error) })
}

/** The same in words. */
export const systemReason = (error: unknown): string => inWords(systemCause(error))
