import { z } from 'zod'
import type { Edit } from '../core/job/edits/edit.ts'
import { benchStateSchema, committedSchema } from './bench-state.ts'
import { subjectSchema, toldHistorySchema } from './history.ts'
import { damageSchema, foldersSeenSchema, glanceSchema, listedJobsSchema } from './jobs.ts'
import { limitsSchema } from './limits.ts'
import { sheetPicturesSchema } from './pictures.ts'
import {
  figureBoxSchema,
  figureReadingSchema,
  letteringAngleSchema,
  pagePlaceSchema,
  sheetReadingsSchema,
  titleLabelsSchema,
} from './readings.ts'
import { scanLookSchema } from './scan-look.ts'

const id = z.string().min(1).max(200)
const person = z.string().trim().min(1).max(200)
const title = z.string().trim().min(1).max(300)
const nothing = z.strictObject({})

/**
 * The job that a request is meant for, by its id: another window may have opened another job meanwhile, and then
 * nothing is done. Without it: whichever job is open.
 */
const job = id.optional()

const theirs = z.boolean().optional()

/** What opens a locked scan. Kept in memory only, for as long as the host runs. */
const password = z.string().min(1).max(1000)

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

/** A host has it unread: what is no edit is refused by `readEdit`, with the same words as in a file. */
const edit = z
  .custom<Edit>(
    (value) => typeof value === 'object' && value !== null && 'do' in value && typeof value.do === 'string',
    'An edit is an object with a field "do".',
  )
  .transform((value): unknown => value)

/**
 * What a window may ask of its host: the shape of what it gives with the request, and of the answer. A window never
 * names a path: jobs and scans that were handed over go by the ids that the host gave them.
 */
export const REQUESTS = {
  /** How things stand. */
  look: { args: nothing, answer: benchStateSchema },
  /** Opens a copy of the sample job, made the first time. */
  'open-sample': { args: nothing, answer: benchStateSchema },
  /** Every job where jobs are made, and those that were open before. */
  jobs: { args: nothing, answer: listedJobsSchema },
  /** How a job stands that a window was told of; it need not be open. */
  glance: { args: z.strictObject({ job: id }), answer: glanceSchema },
  /** Takes a job off the list of those that were open before; its folder stays as it is. */
  'forget-job': { args: z.strictObject({ job: id }), answer: listedJobsSchema },
  /** What is wrong with the files of a job that does not open for writing. Changes nothing. */
  'look-at-damage': { args: z.strictObject({ job: id }), answer: damageSchema },
  /** Lets such a job go on from one of its files, or from what was rescued of it, and opens it; what its files were is kept. */
  mend: { args: z.strictObject({ job: id, from: id, by: person }), answer: benchStateSchema },
  /** The folders in a folder below the home folder, by the id that it was told by. Without `folder`: in the home folder. */
  'look-in-folder': { args: z.strictObject({ folder: id.optional() }), answer: foldersSeenSchema },
  /** Opens a job that a window was told of; one that was moved is looked for. */
  'open-recent': { args: z.strictObject({ recent: id }), answer: benchStateSchema },
  /** Lets a person choose a job folder with the system's own dialog; nothing happens when they choose none. */
  'choose-job': { args: nothing, answer: benchStateSchema },
  /** Makes a job of scans that were handed over, and opens it. */
  'new-job': {
    args: z.strictObject({
      title,
      unit: z.enum(['in', 'mm']),
      by: person,
      /** Without `pages`: the first page. */
      uploads: z
        .array(z.strictObject({ upload: id, pages: pages.optional(), password: password.optional() }))
        .min(1)
        .max(100),
    }),
    answer: benchStateSchema,
  },
  /**
   * Takes the lock over that keeps the job from being edited, and opens the job for writing. A person has said so, knowing
   * whose it is. Nothing happens when it is another lock by now.
   */
  'take-over': {
    args: z.strictObject({ job: id, lock: z.string().min(1).max(1000) }),
    answer: benchStateSchema,
  },
  /** Reads a job anew that can only be looked at, and opens it for writing where nobody has it by now. */
  'look-again': { args: z.strictObject({ job: id }), answer: benchStateSchema },
  /** Says who is at work from now on, in whichever job; kept with the program's own settings. */
  'work-as': { args: z.strictObject({ name: person }), answer: benchStateSchema },
  'close-job': { args: nothing, answer: benchStateSchema },
  edit: { args: z.strictObject({ edit, by: person, job }), answer: committedSchema },
  /** theirs: also where somebody else made that edit. */
  undo: { args: z.strictObject({ by: person, theirs, job }), answer: committedSchema },
  redo: { args: z.strictObject({ by: person, theirs, job }), answer: committedSchema },
  /** What was done to one thing of the job, the newest first, so many entries at most. */
  history: {
    args: z.strictObject({ of: subjectSchema, limit: z.int().min(1).max(10_000), job }),
    answer: toldHistorySchema,
  },
  /** What a scan that was handed over holds: its pages, from `from` on, as many as are looked at in one go. */
  'look-into': {
    args: z.strictObject({ upload: id, password: password.optional(), from: z.int().min(1).optional() }),
    answer: scanLookSchema,
  },
  /** Gives back a scan that was handed over and is not wanted. */
  'drop-upload': { args: z.strictObject({ upload: id }), answer: z.null() },
  /** Makes sheets of pages of a scan that was handed over: all of them or none. Without `pages`: of the first. */
  'add-sheets': {
    args: z.strictObject({
      upload: id,
      pages: pages.optional(),
      password: password.optional(),
      by: person,
      job,
    }),
    answer: committedSchema.extend({
      /** Ids of the new sheets. */
      sheets: z.array(z.string()),
      /** What a person should know of their pages, one sentence each. */
      remarks: z.array(z.string()),
    }),
  },
  /** Opens the locked scan of a sheet, so that its pictures can be made. */
  unlock: { args: z.strictObject({ sheet: id, password }), answer: sheetPicturesSchema },
  /** How much is taken in. */
  limits: { args: nothing, answer: limitsSchema },
  'set-limits': { args: z.strictObject({ limits: limitsSchema }), answer: limitsSchema },
  /** Begins the pictures of a sheet where they are not there, and says what can be shown. */
  'show-sheet': { args: z.strictObject({ sheet: id }), answer: sheetPicturesSchema },
  /** Stops making the pictures of a sheet; what is there stays. */
  'stop-pictures': { args: z.strictObject({ sheet: id }), answer: z.null() },
  /** Reads the figure in a box of a sheet. */
  'read-figure': {
    args: z.strictObject({ job, sheet: id, box: figureBoxSchema, angle: letteringAngleSchema.optional() }),
    answer: figureReadingSchema,
  },
  /**
   * Begins to find and read all figures of a sheet, or goes on with it; what was read before is kept. near: what is looked
   * at, so that the figures round it come first; while it is read already, from now on
   */
  'read-sheet': {
    args: z.strictObject({ job, sheet: id, near: pagePlaceSchema.optional() }),
    answer: sheetReadingsSchema,
  },
  /** Has figures of a sheet read with its hand, or without, from now on and until the job is closed. */
  'read-with-hand': {
    args: z.strictObject({ job, sheet: id, on: z.boolean() }),
    answer: sheetReadingsSchema,
  },
  /** Stops the reading of a sheet; what was read stays. */
  'stop-reading': { args: z.strictObject({ job, sheet: id }), answer: sheetReadingsSchema },
  /** What was read of a sheet so far, now or another time. */
  readings: { args: z.strictObject({ job, sheet: id }), answer: sheetReadingsSchema },
  /** Reads what the title block of a sheet says of its drawing: proposals, of which nothing is taken over. */
  'read-labels': { args: z.strictObject({ job, sheet: id }), answer: titleLabelsSchema },
} as const

export type RequestName = keyof typeof REQUESTS

/** What a window gives with each request. */
export type RequestArguments<N extends RequestName> = z.input<(typeof REQUESTS)[N]['args']>

/** What a host has of it, once it was read. */
export type RequestRead = { [N in RequestName]: z.output<(typeof REQUESTS)[N]['args']> }

/** What each request is answered with. */
export type RequestAnswers = { [N in RequestName]: z.output<(typeof REQUESTS)[N]['answer']> }

export type RequestAnswer<N extends RequestName> = RequestAnswers[N]

export const isRequestName = (name: string): name is RequestName => Object.hasOwn(REQUESTS, name)

/** The largest message a host takes, in bytes; scans go another way. */
export const MESSAGE_BYTES = 4 * 1024 * 1024
