import { join } from 'node:path'

/** Where things are in a job folder. */
export const jobFile = (folder: string): string => join(folder, 'job.json')
export const journalFile = (folder: string): string => join(folder, 'journal.ndjson')
export const scansFolder = (folder: string): string => join(folder, 'scans')
export const cacheFolder = (folder: string): string => join(folder, '.cache')
export const issuedFolder = (folder: string): string => join(folder, 'issued')
export const lockFile = (folder: string): string => join(folder, '.lock')
