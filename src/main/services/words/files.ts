import type { Catalogue } from '../../../core/words/reason.ts'

/** By the system's own code of an error, as the end of a sentence: `… because the disk is full`. */
const SYSTEM: Readonly<Record<string, string>> = {
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

/** Why the system refused something: goes on from `because`, without a stop. */
export const FILE_WORDS = {
  'system.refused': (p: { error: string }) => SYSTEM[p.error] ?? `the system reports ${p.error}`,
  'system.failed': (p: { message: string }) => p.message,
} as const satisfies Catalogue
