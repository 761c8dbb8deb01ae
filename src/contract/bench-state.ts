import { z } from 'zod'
import { editSchema } from '../core/job/model/edit-schema.ts'
import { jobSchema } from '../core/job/model/schema.ts'
import type { Job } from '../core/job/model/types.ts'

/** A job that was open before. Its folder is known to the host alone; the window has an id. */
const recentJobSchema = z.strictObject({
  /** Holds for as long as the host runs. */
  id: z.string(),
  title: z.string(),
  /** Where it is, in words to show. */
  place: z.string(),
  /** ISO 8601. */
  openedAt: z.string(),
})

export type RecentJob = z.infer<typeof recentJobSchema>

/** How the scan of a sheet was found. */
const scanStateSchema = z.strictObject({
  sheet: z.string(),
  state: z.enum(['ok', 'missing', 'changed']),
  /** What is wrong and what to do; empty when nothing is. */
  sentence: z.string(),
})

export type ScanState = z.infer<typeof scanStateSchema>

/** What changes with every edit. */
/** Who made an edit, the id of a person of the job or a name, and when, ISO 8601. */
const madeSchema = z.strictObject({ by: z.string(), at: z.string() })

const historyShape = {
  /** The name of the edit that undo would take back. */
  undoName: z.string().optional(),
  /** The name of the edit that redo would make again. */
  redoName: z.string().optional(),
  /** Who made the edit that undo would take back: somebody else's is not taken back by accident. */
  undoBy: madeSchema.optional(),
  /** Who undid the edit that redo would make again. */
  redoBy: madeSchema.optional(),
  /** How each sheet's scan was found. */
  scans: z.array(scanStateSchema),
}

/** The job that is open. */
const openedJobSchema = z.strictObject({
  /** What it is told from another by; the same as in the list of recent jobs. */
  id: z.string(),
  /** The document. Its references were checked when it was opened. */
  job: jobSchema as unknown as z.ZodType<Job>,
  /** Number of the last edit in `job`. */
  n: z.int(),
  /** What tells this reading of the folder from another one: within one there are never fewer edits than before. */
  reading: z.string(),
  /** Where the job folder is, in words to show. */
  place: z.string(),
  /** True for a copy of the sample job, made to be practised on. */
  sample: z.boolean(),
  writable: z.boolean(),
  /** A sentence: why nothing can be edited, and who holds the job. */
  readOnlyBecause: z.string().optional(),
  /** The lock that keeps the job from being edited, where a person may have it taken over. */
  lock: z
    .strictObject({
      /** What tells this lock from another; given back with the request. */
      id: z.string(),
      /** Who holds it and since when, in words to show. */
      holder: z.string(),
    })
    .optional(),
  /** Whether it is its files that keep it from being edited, so that mending them may help. */
  damaged: z.literal(true).optional(),
  /** Whether nobody has the job any more that was opened to be looked at only. */
  free: z.literal(true).optional(),
  /** A sentence: the job went on in its folder since it was read. */
  wentOn: z.string().optional(),
  /** What a person should be told about this opening, one sentence each. */
  notices: z.array(z.string()),
  /** When the last edit came to disk, ISO 8601; null when none was made since the job was opened. */
  savedAt: z.string().nullable(),
  ...historyShape,
})

export type OpenedJob = z.infer<typeof openedJobSchema>

/** What a window is told of its host and of the job that is open. */
export const benchStateSchema = z.strictObject({
  version: z.string(),
  host: z.enum(['electron', 'local']),
  /** Who is at work at this machine, as they said; empty: nobody has said it yet. */
  person: z.string(),
  /** Whether the host can show the system's own dialog to choose a job folder. */
  choosesFolders: z.boolean(),
  recent: z.array(recentJobSchema),
  opened: openedJobSchema.nullable(),
})

export type BenchState = z.infer<typeof benchStateSchema>

/** Edits that are on disk now, in order, as the history has them. */
export const committedSchema = z.strictObject({
  edits: z.array(z.strictObject({ n: z.int(), edit: editSchema })),
  /** What was done, e.g. `add view V2`, `undo add view V2`. */
  name: z.string(),
  savedAt: z.string(),
  ...historyShape,
})

export type Committed = z.infer<typeof committedSchema>
