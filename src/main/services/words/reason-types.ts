/** Who holds a job folder open, as a part of a reason. */
export type HolderPart = {
  /** Who is at work, or the login where they have not said it. */
  readonly user: string
  readonly host: string
  readonly pid: number
  /** ISO 8601. */
  readonly since: string
}

/** A folder with what was kept of a job, the last edit in it, and the first that its history tells; null: all of them. */
export type RescuedPart = { readonly path: string; readonly n: number; readonly begins: number | null }

/** Acknowledged edits that something does not hold, and the names of those who made them as far as they are known. */
export type LeftPart = { readonly count: number; readonly by: readonly string[] }

/** What a job may go on from, and what that leaves behind. */
export type OfferPart = { readonly from: string; readonly leaves: LeftPart | null }
