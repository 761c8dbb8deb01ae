import { z } from 'zod'
import type { Edit } from '../core/job/edits/edit.ts'
import type { BenchState, Kept } from './bench-state.ts'
import { type Limits, limitsSchema } from './limits.ts'
import type { SheetPictures } from './pictures.ts'
import type { ScanLook } from './scan-look.ts'

const id = z.string().min(1).max(200)
const person = z.string().trim().min(1).max(200)
const title = z.string().trim().min(1).max(300)
const nothing = z.strictObject({})

/**
 * Where the job is that an ask is meant for, as `OpenedJob.place` has it: another window may have opened another job
 * meanwhile, and then nothing is done. Without it: whichever job is open.
 */
const place = z.string().min(1).max(10_000).optional()

/** What opens a locked scan. Kept in memory only, for as long as the host runs. */
const password = z.string().min(1).max(1000).optional()

/**
 * Pages of a scan that was handed over, each to become a sheet. drawnAt: dots per inch for a page that is drawn and
 * not scanned. dpi: what the person says the scan's resolution is, where the file is wrong or says nothing.
 */
const pages = z
  .array(
    z.strictObject({
      page: z.int().min(1),
      drawnAt: z.number().gt(0).optional(),
      dpi: z.number().gt(0).optional(),
    }),
  )
  .min(1)
  .max(10_000)

/** Checked in full, with words for a person, when it is applied (`readEdit`). */
const edit = z.custom<Edit>(
  (value) => typeof value === 'object' && value !== null && 'do' in value && typeof value.do === 'string',
  'An edit is an object with a field "do".',
)

/**
 * What a window may ask of its host, and the shape of what it gives with it. A window never names a path: jobs go by
 * the id the host gave them, scans by the id of what a person handed over.
 */
export const ASKS = {
  /** How things stand. */
  look: nothing,
  /** Opens a copy of the sample job, made the first time. */
  'open-sample': nothing,
  /** Opens a job that was open before. */
  'open-recent': z.strictObject({ recent: id }),
  /** Lets a person choose a job folder with the system's own dialog; nothing happens when they choose none. */
  'choose-job': nothing,
  /** Makes a job of scans that were handed over, and opens it. */
  'new-job': z.strictObject({
    title,
    unit: z.enum(['in', 'mm']),
    by: person,
    /** Without `pages`: the first page. */
    uploads: z
      .array(z.strictObject({ upload: id, pages: pages.optional(), password }))
      .min(1)
      .max(100),
  }),
  'close-job': nothing,
  edit: z.strictObject({ edit, by: person, place }),
  undo: z.strictObject({ by: person, place }),
  redo: z.strictObject({ by: person, place }),
  /** What a scan that was handed over holds: its pages, from `from` on, as many as are looked at in one go. */
  'look-into': z.strictObject({ upload: id, password, from: z.int().min(1).optional() }),
  /** Gives back a scan that was handed over and is not wanted. */
  'drop-upload': z.strictObject({ upload: id }),
  /** Makes sheets of pages of a scan that was handed over: all of them or none. Without `pages`: of the first. */
  'add-sheets': z.strictObject({ upload: id, pages: pages.optional(), password, by: person, place }),
  /** Opens the locked scan of a sheet, so that its pictures can be made. */
  unlock: z.strictObject({ sheet: id, password: z.string().min(1).max(1000) }),
  /** How much is taken in. */
  limits: nothing,
  'set-limits': z.strictObject({ limits: limitsSchema }),
  /** Begins the pictures of a sheet where they are not there, and says what can be shown. */
  'show-sheet': z.strictObject({ sheet: id }),
  /** Stops making the pictures of a sheet; what is there stays. */
  'stop-pictures': z.strictObject({ sheet: id }),
} as const

export type AskName = keyof typeof ASKS
export type AskArguments<N extends AskName> = z.input<(typeof ASKS)[N]>

interface Answers {
  look: BenchState
  'open-sample': BenchState
  'open-recent': BenchState
  'choose-job': BenchState
  'new-job': BenchState
  'close-job': BenchState
  edit: Kept
  undo: Kept
  redo: Kept
  'look-into': ScanLook
  'drop-upload': null
  'add-sheets': Kept & { sheets: string[]; remarks: string[] }
  unlock: SheetPictures
  limits: Limits
  'set-limits': Limits
  'show-sheet': SheetPictures
  'stop-pictures': null
}

export type AskAnswer<N extends AskName> = Answers[N]

/** What comes back: an answer, or a sentence that says what happened, what was kept and what to do. */
export type Reply<N extends AskName = AskName> =
  | { ok: true; answer: AskAnswer<N> }
  | { ok: false; sentence: string }

export const isAskName = (name: string): name is AskName => Object.hasOwn(ASKS, name)

/** The largest message a host takes, in bytes; scans go another way. */
export const MESSAGE_BYTES = 4 * 1024 * 1024
