import type { CandidateMarks } from './figure-candidates.ts'

/** From so sure on, what was found is told as a figure of the sheet. */
export const IS_FIGURE = 0.5
/** Words so near in the row, in heights of digits, tell that a number goes with them; in a list they may be as far as that. */
const [NEAR, IN_LIST] = [6.5, 22]

/** One glyph so much lower than others are, in their heights, is hardly one: a short stroke looks like a 1. */
const [LOW, STROKE] = [0.7, 3]
/** How much it speaks against a figure that it is but a round. */
const ROUND = 3

/**
 * Chance that candidates with these marks are a figure, and neither other lettering nor lines that look like some. A
 * logistic regression: fitted on 15 drawn sheets, seeds 101 to 115, one of each lettering (`tests/bench/find-figures.ts`
 * measures it on others). What speaks against a short stroke and a round was added by hand.
 */
export function figureChance(marks: CandidateMarks): number {
  const { tall, sure, least, ofHeight, apart, round, bare, worded, toWords, inColumn, some } = marks
  const listed = bare && (toWords < NEAR || (toWords < IN_LIST && inColumn >= 2))
  const beside = !bare && toWords < NEAR
  const odds =
    -11.25 +
    10.15 * sure -
    1.32 * least +
    3.07 * apart -
    3.37 * Math.abs(Math.log(Math.max(0.2, ofHeight))) +
    4.62 * some -
    (tall <= 1 ? 1.34 : 0) -
    (listed ? 7.79 : 0) -
    (beside ? 3.86 : 0) -
    (worded ? 5.13 : 0) -
    (round ? ROUND : 0) -
    (tall <= 1 && ofHeight < LOW ? STROKE : 0)
  return 1 / (1 + Math.exp(-odds))
}
