import { join } from 'node:path'

/** Where things are in a job folder. */
export const jobFile = (folder: string): string => join(folder, 'job.json')
export const historyFile = (folder: string): string => join(folder, 'history.ndjson')
/** What jobs had before their history was kept whole. */
export const journalFile = (folder: string): string => join(folder, 'journal.ndjson')
export const scansFolder = (folder: string): string => join(folder, 'scans')
export const cacheFolder = (folder: string): string => join(folder, '.cache')
export const issuedFolder = (folder: string): string => join(folder, 'issued')
export const lockFile = (folder: string): string => join(folder, '.lock')
/** The files of a job of the form before, as they were when its history began. */
export const beforeHistoryFolder = (folder: string): string => join(folder, 'before-history')
/** What could not be read, or was not gone on from. */
export const setAsideFolder = (folder: string): string => join(folder, 'set-aside')
