import type { LatticeSlot } from '../lattice.ts'
import type { PlacedGlyph } from './placed-glyph.ts'

type Alternative = LatticeSlot['alternatives'][number]

/** Less than this is not worth trying. */
const LEAST = 1e-4

/** Box round a glyph where it was seen, [x, y, width, height]. */
export function boxOfGlyph({ seen: { centre, width, height } }: PlacedGlyph): LatticeSlot['box'] & object {
  return [centre[0] - width / 2, centre[1] - height / 2, width, height]
}

/** What a glyph could be that is no bar of a fraction; '' where it may not be there at all. */
export function slotOfGlyph(glyph: PlacedGlyph): LatticeSlot {
  const sums = new Map<string, number>()
  const add = (text: string, probability: number): void => {
    sums.set(text, (sums.get(text) ?? 0) + probability)
  }
  // A bar with no fraction to it is a dash.
  for (const { text, probability } of glyph.seen.alternatives)
    add(text === '_' ? '-' : text, probability * glyph.present)
  add('', 1 - glyph.present)
  return { alternatives: sorted(sums), box: boxOfGlyph(glyph) }
}

/** A space, or nothing. */
export function slotOfSpace(probability: number): LatticeSlot {
  return {
    alternatives: sorted(
      new Map([
        [' ', probability],
        ['', 1 - probability],
      ]),
    ),
  }
}

const sorted = (sums: ReadonlyMap<string, number>): Alternative[] =>
  [...sums]
    .filter(([, probability]) => probability > LEAST)
    .map(([text, probability]) => ({ text, probability }))
    .sort((a, b) => b.probability - a.probability)
