import type { Mark, MarkPick, RepeatedBy } from '../model/types.ts'
import { fieldAgainstPicks, OF_THE_FIRST, picksOf } from './picks-of.ts'

/** The fields that say again what `picks` says, for programs that do not know of it. */
export const MIRRORS = ['pixel', 'pixels', ...OF_THE_FIRST, 'repeats', 'repeatedBy'] as const

/** A pick but for where it is. */
function signatureOf(pick: MarkPick): RepeatedBy {
  const { pixel: _, pixels: __, ...made } = pick as Partial<Record<'pixel' | 'pixels', unknown>> & RepeatedBy
  return made
}

const isEmpty = (made: object): boolean => Object.keys(made).length === 0

/** What these picks come to in the fields that say the same; the first of them may leave some out. */
export function mirrorsOf(picks: readonly MarkPick[]): Partial<Record<(typeof MIRRORS)[number], unknown>> {
  const [first, ...again] = picks
  const made: Partial<Record<(typeof MIRRORS)[number], unknown>> = {}
  if (first === undefined) return made
  for (const field of OF_THE_FIRST) if (first[field] !== undefined) made[field] = first[field]
  if ('pixel' in first) made.pixel = first.pixel
  else made.pixels = first.pixels
  if (again.length === 0) return made
  made.repeats = again.map((pick) => ('pixel' in pick ? pick.pixel : pick.pixels))
  const repeatedBy = again.map(signatureOf)
  if (!repeatedBy.every(isEmpty)) made.repeatedBy = repeatedBy
  return made
}

/**
 * A mark with these picks: the one writer of them. The first stands in `pixel` or `pixels`, `by`, `at`, `sitting`, `how`
 * and `sigma` as well, the others in `repeats` and `repeatedBy`. What the first leaves out stays as the mark says it.
 * @param picks one or more, of the mark's kind
 */
export function withPicks<M extends Mark>(mark: M, picks: readonly MarkPick[]): M {
  if (picks.length === 0) throw new RangeError(`Mark ${mark.id} can't be without a pick.`)
  const { repeats: _, repeatedBy: __, ...bare } = mark as Mark
  return listed({ ...bare, ...mirrorsOf(picks), picks } as unknown as M)
}

/** A mark whose picks were left behind by a change to the fields beside them, with picks that say the same again. */
export const relisted = <M extends Mark>(mark: M): M =>
  fieldAgainstPicks(mark) === null ? mark : { ...mark, picks: picksOf(mark) }

/**
 * A mark that lists its picks whole, the mark itself where it does already or where its fields say otherwise than they
 * do.
 */
export function listed<M extends Mark>(mark: M): M {
  if (fieldAgainstPicks(mark) !== null) return mark
  const picks: readonly MarkPick[] = picksOf<Mark>(mark)
  return picks === mark.picks ? mark : { ...mark, picks }
}
