import { resolve } from 'node:path'
import { z } from 'zod'

const GIVEN = z.strictObject({ folder: z.string().min(1).max(4096).optional(), sample: z.boolean() })

/** What the program was told to open: a job folder, the sample, or nothing. */
export type Given = z.infer<typeof GIVEN>

/**
 * Reads what stands behind the program's name: `[FOLDER] [--sample]`; Chromium's own switches are passed over.
 * @param from the folder that a relative one is meant from
 */
export function readGiven(args: readonly string[], from: string): Given {
  const folder = args.find((arg) => !arg.startsWith('-'))
  const sample = args.includes('--sample')
  return folder === undefined ? { sample } : { folder: resolve(from, folder), sample }
}

/** What a second instance hands over; nothing to open when it can't be understood. */
export function givenFrom(data: unknown): Given {
  const read = GIVEN.safeParse(data)
  return read.success ? read.data : { sample: false }
}
