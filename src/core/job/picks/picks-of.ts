import type { Pixel } from '../../geometry/frames.ts'
import type { Mark, MarkPick, PointPick, WholePick } from '../model/types.ts'

type Unnamed<M> = M extends Mark ? Omit<M, 'id' | 'sheet'> : never
/** A mark whether it has its id and its sheet yet or not. */
type Picked = Unnamed<Mark>
/** A pick of a mark of some kind. */
type PickOf<M extends Picked> = M extends { kind: 'point' } ? PointPick : WholePick

/** Fields of a mark that say of its first pick what a pick says of itself, but for where it is. */
export const OF_THE_FIRST = ['by', 'at', 'sitting', 'how', 'sigma'] as const
/** Of these only programs that know of picks speak, for repeated picks of `how` and `sigma` as well. */
const LATER: readonly string[] = ['sitting']
const LATER_OF_REPEATS: readonly string[] = ['sitting', 'how', 'sigma']

/** Where a pick is: one place of a point, all of anything else. Pixels. */
export const placesOf = (pick: MarkPick): readonly Pixel[] => ('pixel' in pick ? [pick.pixel] : pick.pixels)

/** The picks that the fields beside `picks` tell of. */
function fromFields(mark: Picked): MarkPick[] {
  const first: Record<string, unknown> = {}
  for (const field of OF_THE_FIRST) if (mark[field] !== undefined) first[field] = mark[field]
  const { repeatedBy = [] } = mark
  if (mark.kind === 'point') {
    const again = (mark.repeats ?? []).map((pixel, i): MarkPick => ({ ...repeatedBy[i], pixel }))
    return [{ ...first, pixel: mark.pixel }, ...again]
  }
  const again = (mark.repeats ?? []).map((pixels, i): MarkPick => ({ ...repeatedBy[i], pixels }))
  return [{ ...first, pixels: mark.pixels }, ...again]
}

const samePlace = (a: Pixel, b: Pixel): boolean => a === b || (a[0] === b[0] && a[1] === b[1])

function samePlaces(one: MarkPick, other: MarkPick): boolean {
  if ('pixel' in one || 'pixel' in other) {
    return 'pixel' in one && 'pixel' in other && samePlace(one.pixel, other.pixel)
  }
  const [a, b] = [one.pixels, other.pixels]
  return a === b || (a.length === b.length && a.every((place, i) => samePlace(place, b[i] as Pixel)))
}

/**
 * The field beside `picks` that does not say the same as they do; null where all do, or there are no picks. What a pick
 * leaves out is as the field says.
 */
function fieldAgainst(mark: Picked, told: readonly MarkPick[]): string | null {
  const { picks } = mark
  if (picks === undefined) return null
  if (picks.length !== told.length) return 'repeats'
  for (const [i, pick] of picks.entries()) {
    const other = told[i] as MarkPick
    if (!samePlaces(pick, other)) return i > 0 ? 'repeats' : mark.kind === 'point' ? 'pixel' : 'pixels'
    const later = i === 0 ? LATER : LATER_OF_REPEATS
    for (const field of OF_THE_FIRST) {
      if (pick[field] === undefined || pick[field] === other[field]) continue
      if (other[field] !== undefined || !later.includes(field)) return i === 0 ? field : 'repeatedBy'
    }
  }
  return null
}

/** The same, where a mark is as a document has it. */
export const fieldAgainstPicks = (mark: Picked): string | null => fieldAgainst(mark, fromFields(mark))

/** A pick with what it leaves out taken from the fields; itself where that is nothing. */
function filled(pick: MarkPick, told: MarkPick): MarkPick {
  return OF_THE_FIRST.some((field) => pick[field] === undefined && told[field] !== undefined)
    ? ({ ...told, ...pick } as MarkPick)
    : pick
}

/**
 * All picks of a mark, the first one first: the one reader of where a mark was picked. Of a mark without `picks` they
 * are made of `pixel` or `pixels`, `repeats` and `repeatedBy`. Where these say otherwise than `picks`, which a document
 * is refused for, they count: a program that does not know of `picks` has changed them.
 */
export function picksOf<M extends Picked>(mark: M): readonly PickOf<M>[] {
  const told = fromFields(mark)
  const picks: readonly MarkPick[] | undefined = mark.picks
  if (picks === undefined || fieldAgainst(mark, told) !== null) return told as PickOf<M>[]
  const whole = picks.map((pick, i) => filled(pick, told[i] as MarkPick))
  return (whole.every((pick, i) => pick === picks[i]) ? picks : whole) as PickOf<M>[]
}

/** Where a mark was picked the first time: one place of a point. Pixels. */
export const firstPlaces = (mark: Picked): readonly Pixel[] => placesOf(picksOf(mark)[0] as MarkPick)
