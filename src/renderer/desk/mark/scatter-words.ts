import type { RepeatScatter } from '../../../core/measuring/features/repeat-scatter.ts'
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
