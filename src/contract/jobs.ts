import { z } from 'zod'

/** A job that can be opened. Its folder is known to the host alone; the window has an id. */
const listedJobSchema = z.strictObject({
  /** Holds for as long as the host runs. */
  id: z.string(),
  /** Of one that was not open here before: the name of its folder. */
  title: z.string(),
  /** Where it is, in words to show. */
  place: z.string(),
  /** When it was last open from here, ISO 8601; left out where it never was. */
  openedAt: z.string().optional(),
  /** Whether it is not there any more where it was. */
  isGone: z.literal(true).optional(),
})

export type ListedJob = z.infer<typeof listedJobSchema>

/** Every job in the folder where jobs are made, and those that were open before, the last one first. */
export const listedJobsSchema = z.strictObject({
  /** Where jobs are made, in words to show. */
  shelf: z.string(),
  jobs: z.array(listedJobSchema),
})

export type ListedJobs = z.infer<typeof listedJobsSchema>

const count = z.int().min(0)

/** How a job stands, as its folder holds it. */
export const glanceSchema = z.strictObject({
  title: z.string(),
  sheets: count,
  dimensions: count,
  /** Dimensions whose evidence does not agree. */
  disputed: count,
  /** Dimensions that have no value. */
  noValue: count,
  /** Address of a small picture of its first sheet; null where it has none. */
  front: z.string().nullable(),
  /** Why it can't be read, a sentence; left out where it can. */
  problem: z.string().optional(),
})

export type Glance = z.infer<typeof glanceSchema>

/** A folder below the home folder, and the folders in it. */
export const foldersSeenSchema = z.strictObject({
  /** In words to show. */
  place: z.string(),
  /** The folder that it is in; null: it is the home folder. */
  up: z.string().nullable(),
  folders: z.array(z.strictObject({ id: z.string(), name: z.string(), isJob: z.boolean() })),
  /** How many more there are that are not told. */
  more: count,
})

export type FoldersSeen = z.infer<typeof foldersSeenSchema>

/** What is wrong with the files of a job, and what it can be gone on from. */
export const damageSchema = z.strictObject({
  /** A sentence; null: nothing is wrong. */
  trouble: z.string().nullable(),
  /** from: what the request to mend it is given. holds: what that holds, a sentence. */
  offers: z.array(z.strictObject({ from: z.string(), holds: z.string() })),
})

export type Damage = z.infer<typeof damageSchema>
