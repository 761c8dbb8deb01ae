/** Who makes an edit, and when. */
export interface Stamp {
  /** The id of a person of the job; undefined when nobody is to be named. */
  by: string | undefined
  /** ISO 8601 date and time. */
  at: string
  /** In which sitting: one opening of the job by one person; undefined when nobody tells sittings apart. */
  sitting?: string
}
