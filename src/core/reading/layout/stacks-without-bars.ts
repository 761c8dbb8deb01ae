import { type Edges, edgesRound } from '../glyphs/edges.ts'
import type { ProposedStack } from './item.ts'
import { isTall, likelihoodOf, type PlacedGlyph } from './placed-glyph.ts'
import { slotOfSpace } from './slot-of-glyph.ts'

const DIGITS = '0123456789'
const SIGNS = '+-±_'
/** Digits closer than this, in heights, are of one number. */
const OF_ONE_NUMBER = 0.4
/** How often one number right over another is a fraction, by what stands beside the two. */
const BESIDE_WHOLE = 0.9
const ALONE = 0.7
const IN_ROWS = 0.04
/** Two that begin with a sign, beside what they limit. */
const LIMITS = 0.96
const LIMITS_ALONE = 0.5

/**
 * Numbers one right over the other: a fraction whose bar was not seen, or the two limits of a tolerance, which begin with
 * signs. The bar may be faint, and limits have none; how often which is meant: common practice, no source.
 * @param free what is in no stack yet
 * @param all every glyph
 * @param stacks those that were found by their bars, which a limit may hold
 * @param high height of a full digit
 */
export function stacksWithoutBars(
  free: readonly PlacedGlyph[],
  all: readonly PlacedGlyph[],
  stacks: readonly ProposedStack[],
  high: number,
): ProposedStack[] {
  const numbers = numbersIn(free, high)
  const found: ProposedStack[] = []
  for (const over of numbers)
    for (const under of numbers) {
      if (over === under || !isRightOver(edgesRound(over), edgesRound(under), high)) continue
      const glyphs = [...over, ...under]
      const [first, second] = [over[0], under[0]]
      if (first === undefined || second === undefined) continue
      const signed = likelihoodOf(first.seen, SIGNS) > 0.5 || likelihoodOf(second.seen, SIGNS) > 0.5
      const others = all.filter((glyph) => !glyphs.includes(glyph) && isTall(glyph.name))
      const where = standing(edgesRound(over), edgesRound(under), others, stacks, high)
      if (signed) {
        const probability = where === 'beside' ? LIMITS : where === 'alone' ? LIMITS_ALONE : IN_ROWS
        found.push({
          item: { kind: 'stack', over, under, between: slotOfSpace(1), sort: 'limits' },
          glyphs,
          probability,
        })
      } else if (glyphs.every(({ seen }) => likelihoodOf(seen, DIGITS) > 0.3)) {
        const probability = where === 'beside' ? BESIDE_WHOLE : where === 'alone' ? ALONE : IN_ROWS
        const between = { alternatives: [{ text: '/', probability: 1 }] }
        found.push({ item: { kind: 'stack', over, under, between, sort: 'fraction' }, glyphs, probability })
      }
    }
  return found
}

/** Runs of digits, points and signs that stand close in one row. */
function numbersIn(free: readonly PlacedGlyph[], high: number): PlacedGlyph[][] {
  const numbers: PlacedGlyph[][] = []
  for (const glyph of [...free].sort((a, b) => a.left - b.left)) {
    if (likelihoodOf(glyph.seen, `${DIGITS}${SIGNS}.,/`) < 0.3) continue
    const runs = numbers.filter((one) => goesOn(one, glyph, high))
    const run = runs.sort((a, b) => (b.at(-1)?.right ?? 0) - (a.at(-1)?.right ?? 0))[0]
    if (run === undefined) numbers.push([glyph])
    else run.push(glyph)
  }
  return numbers.filter((run) => run.some(({ seen }) => likelihoodOf(seen, DIGITS) > 0.3))
}

/** Whether a glyph goes on a number: close behind it, in its row and, where it is a digit, as high as its digits. */
function goesOn(number: readonly PlacedGlyph[], glyph: PlacedGlyph, high: number): boolean {
  const last = number.at(-1)
  if (last === undefined || glyph.left - last.right > OF_ONE_NUMBER * high) return false
  const digit = number.findLast(({ name }) => isTall(name))
  if (digit !== undefined && isTall(glyph.name)) {
    const alike = Math.min(digit.height, glyph.height) > 0.8 * Math.max(digit.height, glyph.height)
    return alike && Math.abs(digit.middle - glyph.middle) < 0.3 * digit.height
  }
  // A sign begins a number.
  if (digit !== undefined && SIGNS.includes(glyph.name)) return false
  const { top, bottom } = edgesRound(number)
  const [upper, lower] = [Math.min(top, glyph.top), Math.max(bottom, glyph.bottom)]
  const hold = lower - upper
  // After a sign comes a point, and then the digit whose row holds both.
  if (digit === undefined) return hold < (isTall(glyph.name) ? 1.4 * glyph.height : 0.7 * high)
  return glyph.middle > top - 0.1 * high && glyph.middle < bottom + 0.1 * high
}

function isRightOver(over: Edges, under: Edges, high: number): boolean {
  const shared = Math.min(over.right, under.right) - Math.max(over.left, under.left)
  const gap = under.top - over.bottom
  const narrow = Math.min(over.right - over.left, under.right - under.left)
  return shared > 0.5 * narrow && gap > -0.15 * high && gap < 0.75 * high
}

/** Whether other glyphs go on beside the middle of two numbers, in their rows, or there are none. */
function standing(
  over: Edges,
  under: Edges,
  others: readonly PlacedGlyph[],
  stacks: readonly ProposedStack[],
  high: number,
): 'beside' | 'rows' | 'alone' {
  const [left, right] = [Math.min(over.left, under.left), Math.max(over.right, under.right)]
  const near = others.filter((one) => one.left < right + 2 * high && one.right > left - 2 * high)
  if (near.length === 0) return 'alone'
  const middle = (over.bottom + under.top) / 2
  const inStack = new Set(stacks.flatMap(({ glyphs }) => glyphs))
  const loose = near.filter((one) => !inStack.has(one))
  const rowHigh = Math.max(over.bottom - over.top, under.bottom - under.top)
  const centred = loose.filter((one) => Math.abs(one.middle - middle) < 0.3 * Math.max(one.height, rowHigh))
  return centred.length > 0.6 * loose.length || loose.length === 0 ? 'beside' : 'rows'
}
