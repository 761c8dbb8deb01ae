import type { SeenGlyph } from '../glyphs/seen-glyph.ts'
import type { Lattice, LatticeSlot } from '../lattice.ts'
import { fullHeight } from './full-height.ts'
import type { ProposedStack, RowItem } from './item.ts'
import { type PlacedGlyph, placeGlyph } from './placed-glyph.ts'
import { proposeStacks } from './propose-stacks.ts'
import { rowsOf } from './rows.ts'
import { slopeOfRows } from './slope-of-rows.ts'
import { slotOfGlyph, slotOfSpace } from './slot-of-glyph.ts'
import { raisedNumerators, spaceBetween, spaceOfRow } from './spaces.ts'
import { withoutStrays } from './strays.ts'
import { withoutDuplicates } from './without-duplicates.ts'

/** One way in which glyphs may belong together. */
export interface WeightedLattice {
  readonly lattice: Lattice
  /** Its probability among those that are given, which add up to 1. */
  readonly weight: number
}

/** Fewer than one time in so many, another structure is not given. */
const LEAST = 0.02
/** Small digits raised before a slash have a whole number before them. */
const RAISED = 0.97

/**
 * Puts glyphs, seen in any order, in reading order: rows from above, stacked fractions as numerator, '/' and denominator,
 * spaces between words, rows and a whole number and its fraction.
 * @returns one to three ways to read them, the likeliest first; without glyphs one lattice without slots. Boxes of slots
 * are in the pixels that the glyphs' places are in.
 */
export function layOut(seen: readonly SeenGlyph[]): WeightedLattice[] {
  const slope = slopeOfRows(seen)
  const glyphs = withoutDuplicates(seen).map((glyph) => placeGlyph(glyph, slope))
  const high = fullHeight(glyphs)
  const stacks = proposeStacks(glyphs, high)
  const ways = structures(stacks)
  const whole = ways.reduce((sum, { weight }) => sum + weight, 0)
  return ways.map(({ taken, weight }) => ({
    lattice: { slots: slotsOf(itemsOf(glyphs, taken), high) },
    weight: weight / whole,
  }))
}

/** Which of the proposed stacks there are: the likeliest choice, and those that differ in the one that is least sure. */
function structures(stacks: readonly ProposedStack[]): { taken: ProposedStack[]; weight: number }[] {
  const best = stacks.filter(({ probability }) => probability >= 0.5)
  const ways = [{ taken: best, weight: 1 }]
  for (const stack of stacks) {
    const { probability } = stack
    const odds = probability >= 0.5 ? (1 - probability) / probability : probability / (1 - probability)
    const taken = best.includes(stack) ? best.filter((one) => one !== stack) : [...best, stack]
    if (odds > LEAST) ways.push({ taken, weight: odds })
  }
  return ways.sort((a, b) => b.weight - a.weight).slice(0, 3)
}

function itemsOf(glyphs: readonly PlacedGlyph[], stacks: readonly ProposedStack[]): RowItem[] {
  const stacked = new Set(stacks.flatMap((stack) => stack.glyphs))
  const loose = glyphs.filter((glyph) => !stacked.has(glyph))
  return [...stacks.map(({ item }) => item), ...loose.map((glyph): RowItem => ({ kind: 'glyph', glyph }))]
}

function slotsOf(items: readonly RowItem[], high: number): LatticeSlot[] {
  if (items.length === 0) return []
  const slots: LatticeSlot[] = []
  for (const row of withoutStrays(rowsOf(items, high), high)) {
    if (slots.length > 0) slots.push(slotOfSpace(1))
    slots.push(...slotsOfRow(row, high))
  }
  return slots
}

function slotsOfRow(row: readonly RowItem[], high: number): LatticeSlot[] {
  const slots: LatticeSlot[] = []
  const space = spaceOfRow(row, high)
  const raised = raisedNumerators(row)
  for (const [i, item] of row.entries()) {
    const before = row[i - 1]
    if (before !== undefined) {
      const parted = Math.max(spaceBetween(before, item, space, high), raised.includes(i) ? RAISED : 0)
      if (parted > LEAST) slots.push(slotOfSpace(parted > 1 - LEAST ? 1 : parted))
    }
    slots.push(...slotsOfItem(item))
  }
  return slots
}

function slotsOfItem(item: RowItem): LatticeSlot[] {
  if (item.kind === 'glyph') return [slotOfGlyph(item.glyph)]
  return [...sideOf(item.over), item.between, ...sideOf(item.under)]
}

/** Where nothing was seen on one side of a bar, what stood there has no name. */
const sideOf = (glyphs: readonly PlacedGlyph[]): LatticeSlot[] =>
  glyphs.length === 0 ? [{ alternatives: [] }] : glyphs.map(slotOfGlyph)
