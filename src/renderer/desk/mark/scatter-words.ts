import type { PeopleScatter } from '../../../core/measuring/features/people.ts'
import type { RepeatScatter } from '../../../core/measuring/features/repeat-scatter.ts'
import { differ } from '../../../core/uncertainty/analysis-of-variance.ts'
import { pixelsInWords } from '../../strokes/uncertainty-words.ts'

const OF: Readonly<Record<RepeatScatter['of'], string>> = {
  point: 'in x and in y',
  across: 'across the stroke',
  line: 'across the line',
  radius: 'of the radius',
  corner: 'in x and in y of each corner',
}

/** What the scatter of repeated picks says, in a sentence or two. */
export function scatterInWords({ n, of, s, alone, together }: RepeatScatter): string {
  const picked = `Picked ${n === 2 ? 'twice' : `${n} times`}`
  if (s === 0)
    return `${picked}, each time in the same place to the last digit: σ ${pixelsInWords(together)} ${OF[of]}.`
  const change =
    together < alone * 0.995
      ? `surer than the ${pixelsInWords(alone)} of the first pick alone`
      : together > alone * 1.005
        ? `less sure than the ${pixelsInWords(alone)} that the first pick was taken for`
        : `as sure as the first pick was taken for`
  return `${picked}, scattered by a standard deviation of ${pixelsInWords(s)} ${OF[of]}: σ ${pixelsInWords(together)}, ${change}.`
}

/** How the people who picked a mark differ, beside how one of them scatters. */
export function peopleInWords(people: PeopleScatter): string {
  const { n, within, between, by } = people
  if (within === null || between === null)
    return `By ${n} people, once each: whether they pick it alike can be told when one of them picks it again.`
  const own = `By ${n} people: within one person's hand by ${pixelsInWords(within)}`
  const counts = by === 'groups' ? ' How far the people agree says how sure their mean is.' : ''
  if (differ(people))
    return `${own}, between people by ${pixelsInWords(between)}. They do not pick it alike.${counts}`
  if (between === 0) return `${own}, between people by no more than that explains.`
  return `${own}, between people by ${pixelsInWords(between)}, which may be chance.${counts}`
}
