import type { Limits } from '../../contract/limits.ts'

interface LimitWords {
  key: keyof Limits
  label: string
  unit: string
  /** How many of the contract's own unit make one. */
  each: number
  least: number
  most: number
  /** What it protects from. */
  note: string
}

const MB = 1024 ** 2

/** How each limit is shown, and what it is for. */
export const LIMIT_WORDS: readonly LimitWords[] = [
  {
    key: 'pixels',
    label: 'Pixels of a page',
    unit: 'megapixels',
    each: 1e6,
    least: 1,
    most: 4000,
    note: 'Keeps out pages that would fill the disk with tiles. An E-size sheet at 600 dpi has some 540.',
  },
  {
    key: 'pages',
    label: 'Pages of a file',
    unit: 'pages',
    each: 1,
    least: 1,
    most: 10_000,
    note: 'So many are looked at; a damaged file may claim any number.',
  },
  {
    key: 'bytes',
    label: 'Size of a file',
    unit: 'MB',
    each: MB,
    least: 1,
    most: 65_536,
    note: 'A scan is copied into the job, so there must be room for it.',
  },
  {
    key: 'memory',
    label: 'Memory for reading a scan',
    unit: 'MB',
    each: MB,
    least: 256,
    most: 65_536,
    note: 'A scan that needs more is given up, and the rest of this machine goes on working.',
  },
  {
    key: 'seconds',
    label: 'Time for looking at a page',
    unit: 'seconds',
    each: 1,
    least: 5,
    most: 3600,
    note: 'A file that was made to be endless is given up after that.',
  },
]

/** A limit in the unit that it is shown in. */
export const shownLimit = (limits: Limits, { key, each }: LimitWords): number =>
  Number((limits[key] / each).toFixed(1))

/** The limits with one of them as it was written in its own unit, held between the least and the most. */
export function withLimit(limits: Limits, words: LimitWords, shown: number): Limits {
  if (!Number.isFinite(shown)) return limits
  const held = Math.min(words.most, Math.max(words.least, shown))
  return { ...limits, [words.key]: Math.round(held * words.each) }
}
