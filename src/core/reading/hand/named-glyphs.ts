import type { SeenGlyph } from '../glyphs/seen-glyph.ts'
import type { Lattice } from '../lattice.ts'
import { layOut } from '../layout/lay-out.ts'
import { type Alignment, alignText } from './align-text.ts'
import type { NamedGlyph } from './learn-hand.ts'
import { signsOf, waysToWrite } from './signs-of-text.ts'

/** A glyph less surely there than this teaches nothing. */
const THERE = 0.3
/** A text whose signs fit worse than this, as the mean of their logarithms, is not taken for what stands there. */
const WORST = -2.2

/**
 * The glyphs of a figure by their names, as its known text tells them: those alone that a sign of the text stands beside.
 * None where the text fits so badly that it may be that of another figure.
 * @param looks glyphs of the figure in any order, as they were seen in each way that it may run, before anything was known
 * of the hand
 * @param names glyphs by their channel
 */
export function namedGlyphs(
  text: string,
  looks: readonly (readonly SeenGlyph[])[],
  names: readonly string[],
): readonly NamedGlyph[] {
  const fitOf = fitBy(names)
  const ways = waysToWrite(text).map(signsOf)
  let best: { aligned: Alignment; worth: number } | null = null
  const orders = looks.flatMap((seen) => layOut(seen).map(({ lattice }) => inOrder(lattice, seen)))
  for (const glyphs of orders) {
    for (const signs of ways) {
      if (signs.length === 0) continue
      const aligned = alignText(signs, glyphs, fitOf)
      const worth = aligned.score / signs.length
      if (best === null || worth > best.worth) best = { aligned, worth }
    }
  }
  if (best === null || best.worth < WORST) return []
  return best.aligned.signs.flatMap(({ sign, glyph: { present, logs, traits } }) => {
    if (present < THERE || logs === undefined || traits === undefined) return []
    const glyph = channelOf(sign, names, logs)
    return glyph === null ? [] : [{ glyph, logs, traits }]
  })
}

/** Signs of a text that are more than one glyph on a sheet: a bar lies between or leans, a dash is like a bar. */
const AS_GLYPHS: Readonly<Record<string, readonly string[]>> = {
  '/': ['/', '_'],
  '-': ['-', '_'],
  '×': ['×', 'X'],
}

/** The channel of a sign; of several the one that the glyph is likelier. Null for a sign that has none. */
function channelOf(sign: string, names: readonly string[], logs: Float32Array): number | null {
  let best: number | null = null
  for (const name of AS_GLYPHS[sign] ?? [sign]) {
    const channel = names.indexOf(name)
    if (channel >= 0 && (best === null || (logs[channel] ?? 0) > (logs[best] ?? 0))) best = channel
  }
  return best
}

/** Natural logarithm of the probability that a glyph is a sign. */
function fitBy(names: readonly string[]): (glyph: SeenGlyph, sign: string) => number {
  const totals = new Map<SeenGlyph, number>()
  return (glyph, sign) => {
    const { logs } = glyph
    const channel = logs === undefined ? null : channelOf(sign, names, logs)
    if (logs === undefined || channel === null) return Number.NEGATIVE_INFINITY
    let total = totals.get(glyph)
    if (total === undefined) {
      const most = Math.max(...logs)
      total = most + Math.log(logs.reduce((sum, log) => sum + Math.exp(log - most), 0))
      totals.set(glyph, total)
    }
    return (logs[channel] ?? 0) - total
  }
}

/** The glyphs that the slots of a lattice were made of, in its order. */
function inOrder({ slots }: Lattice, seen: readonly SeenGlyph[]): SeenGlyph[] {
  const byPlace = new Map<string, SeenGlyph>()
  for (const glyph of [...seen].sort((a, b) => a.present - b.present)) {
    const [x, y] = glyph.centre
    byPlace.set(`${x - glyph.width / 2} ${y - glyph.height / 2}`, glyph)
  }
  return slots.flatMap(({ box }) => {
    const glyph = box === undefined ? undefined : byPlace.get(`${box[0]} ${box[1]}`)
    return glyph === undefined ? [] : [glyph]
  })
}
