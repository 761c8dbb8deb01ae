import { z } from 'zod'
import { benchStateSchema, committedSchema } from './bench-state.ts'
import { pictureProgressSchema } from './pictures.ts'
import { readingsNewsSchema } from './readings.ts'

/** Something that a host's own menu asks the window to do. */
const windowCommandSchema = z.enum([
  'undo',
  'redo',
  'bring-in-scan',
  'close-job',
  'zoom-in',
  'zoom-out',
  'whole-sheet',
])

export type WindowCommand = z.infer<typeof windowCommandSchema>

/** What a host tells its windows without being asked. */
export const hostEventSchema = z.discriminatedUnion('kind', [
  /** Another job is open, or none. */
  z.strictObject({ kind: z.literal('bench'), state: benchStateSchema }),
  /** Edits came to disk, from whichever window. */
  z.strictObject({ kind: z.literal('committed'), committed: committedSchema }),
  z.strictObject({ kind: z.literal('pictures'), progress: pictureProgressSchema }),
  /** A sheet is being read: how far that is, and what is new of it. job: its id */
  z.strictObject({ kind: z.literal('readings'), job: z.string(), news: readingsNewsSchema }),
  z.strictObject({ kind: z.literal('command'), command: windowCommandSchema }),
])

export type HostEvent = z.infer<typeof hostEventSchema>
