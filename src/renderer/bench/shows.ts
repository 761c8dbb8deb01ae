/** What is drawn over a sheet, from least to most. */
export const SHOWS = ['none', 'chosen', 'view', 'all'] as const

export type Shows = (typeof SHOWS)[number]

/** The next one round. */
export const nextShows = (now: Shows): Shows => SHOWS[(SHOWS.indexOf(now) + 1) % SHOWS.length] ?? 'all'
