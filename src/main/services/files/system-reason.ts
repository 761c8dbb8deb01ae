const REASONS: Record<string, string> = {
  ENOSPC: 'the disk is full',
  EDQUOT: 'the disk quota is used up',
  EACCES: 'permission is refused',
  EPERM: 'permission is refused',
  EROFS: 'the disk is read-only',
  ENOENT: 'it does not exist',
  ENOTDIR: 'part of its path is not a folder',
  EISDIR: 'it is a folder',
  ELOOP: 'its symbolic links run in a circle',
  ENAMETOOLONG: 'its name is too long',
  EIO: 'the disk reports an error',
  EMFILE: 'too many files are open',
  ENFILE: 'too many files are open',
  EBUSY: 'another program is using it',
}

/** The system's error code, e.g. `ENOENT`, or undefined when the error does not come from the system. */
export function systemCode(error: unknown): string | undefined {
  if (!(error instanceof Error) || !('code' in error)) return undefined
  return typeof error.code === 'string' ? error.code : undefined
}

/** Why the system refused, in words that end a sentence: `… because the disk is full`. */
export function systemReason(error: unknown): string {
  const code = systemCode(error)
  if (code !== undefined) return REASONS[code] ?? `the system reports ${code}`
  return error instanceof Error ? error.message : String(error)
}
