const WHO_AND_WHEN = ['by', 'at', 'changedBy', 'changedAt'] as const

/** Fields that say who made or changed a thing, and when. */
export const MADE_BY: ReadonlySet<string> = new Set(WHO_AND_WHEN)

/** The same with the sitting: all that goes along with whatever else is changed. */
export const SIGNATURE: ReadonlySet<string> = new Set([...WHO_AND_WHEN, 'sitting'])
