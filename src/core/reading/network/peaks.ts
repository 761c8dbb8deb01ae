import type { SeenGlyph } from '../glyphs/seen-glyph.ts'
import { type Hand, likelierBy } from '../hand/hand.ts'
import { CELL_HEIGHT, CELL_WIDTH, type CellMap, SIZE_UNIT } from './cell-map.ts'
import type { NetworkWeights } from './weights-form.ts'

/** Less probable than this, a glyph is not spoken of. */
const LEAST_PRESENT = 0.06
/** Alternatives less probable than this are left out. */
const LEAST_ALTERNATIVE = 0.001

/**
 * The glyphs that a map of cells tells of: cells where one is likelier than in those around.
 * @param hand whose lettering it is, as far as it was learned
 * @returns places and sizes in pixels of the field
 */
export function glyphsOf(map: CellMap, weights: NetworkWeights, hand?: Hand): SeenGlyph[] {
  const { rows, columns, channels, numbers, features } = map
  const [slope, shift] = weights.present
  const found: SeenGlyph[] = []
  const odds = (y: number, x: number): number =>
    y < 0 || x < 0 || y >= rows || x >= columns
      ? Number.NEGATIVE_INFINITY
      : (numbers[(y * columns + x) * channels] ?? Number.NEGATIVE_INFINITY)
  for (let y = 0; y < rows; y++)
    for (let x = 0; x < columns; x++) {
      const here = odds(y, x)
      const present = 1 / (1 + Math.exp(-(slope * here + shift)))
      if (present < LEAST_PRESENT || !isPeak(odds, y, x, here)) continue
      const at = (y * columns + x) * channels
      const place = at + 1 + weights.glyphs.length
      const number = (i: number): number => numbers[i] ?? 0
      const from = ((y * columns + x) >> 1) * features
      const traits = map.traits.slice(from, from + features)
      const logs = numbers.subarray(at + 1, place).map((log) => log / weights.temperature)
      found.push({
        centre: [(x + 0.5 + number(place)) * CELL_WIDTH, (y + 0.5 + number(place + 1)) * CELL_HEIGHT],
        width: SIZE_UNIT * Math.exp(number(place + 2)),
        height: SIZE_UNIT * Math.exp(number(place + 3)),
        present,
        alternatives: alternativesAt(likelierBy(hand, logs, traits), weights.glyphs),
        traits,
        logs,
      })
    }
  return found
}

/** No neighbour is likelier; of two alike the first one counts. */
function isPeak(odds: (y: number, x: number) => number, y: number, x: number, here: number): boolean {
  for (let dy = -1; dy <= 1; dy++)
    for (let dx = -1; dx <= 1; dx++) {
      const before = dy < 0 || (dy === 0 && dx < 0)
      if ((dy !== 0 || dx !== 0) && (before ? odds(y + dy, x + dx) >= here : odds(y + dy, x + dx) > here))
        return false
    }
  return true
}

function alternativesAt(logs: Float32Array, glyphs: readonly string[]): SeenGlyph['alternatives'] {
  const most = logs.reduce((max, v) => Math.max(max, v), Number.NEGATIVE_INFINITY)
  const shares = Array.from(logs, (v) => Math.exp(v - most))
  const sum = shares.reduce((total, v) => total + v, 0)
  return glyphs
    .map((text, i) => ({ text, probability: (shares[i] ?? 0) / sum }))
    .filter(({ probability }) => probability >= LEAST_ALTERNATIVE)
    .sort((a, b) => b.probability - a.probability)
}
