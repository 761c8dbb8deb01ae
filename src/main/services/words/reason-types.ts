/** Who holds a job folder open, as a part of a reason. */
export type HolderPart = {
  readonly user: string
  readonly host: string
  readonly pid: number
  /** ISO 8601. */
  readonly since: string
}
