import type { LengthContext } from '../../quantity/parse/parse-length.ts'
import { type Edges, edgesRound } from '../glyphs/edges.ts'
import type { SeenGlyph } from '../glyphs/seen-glyph.ts'
import { glyphAtoms } from './glyph-atoms.ts'
import { type GlyphGroup, groupOf } from './group-worth.ts'

/** Words of one figure stand no further apart along the row, and its lines down the page, in heights of digits. */
const [WORDS, LINES] = [1.7, 1.5]
/** Two that are figures each stand in one only when they are nearer than this. */
const BOTH = 1
/** A gap within a word that it may be parted at is wider than this. */
const PARTED = 0.3
/** So sure, glyphs are a figure. */
const IS = 0.4
/** Together they need not be as sure as apart: more could go wrong. */
const TOGETHER = 0.55
/** The same of how many there are and how large they are. */
const COUNTED = 0.2

/** Groups of glyphs, each a figure where they can be: words and lines that make one figure only together are together. */
export function glyphGroups(seen: readonly SeenGlyph[], high: number, context: LengthContext): GlyphGroup[] {
  const atoms = glyphAtoms(seen, high).flatMap((atom) => parted(groupOf(atom, context), high, context))
  return joinedByWords(joined(atoms, high, context), high, context)
}

/** A group that is no figure, in two where they are figures rather. */
function parted(group: GlyphGroup, high: number, context: LengthContext): GlyphGroup[] {
  if (group.some > IS || group.glyphs.length < 2) return [group]
  const byWay = [alongRow(group.glyphs), downPage(group.glyphs)]
  const cuts = byWay
    .flatMap((sorted) => cutsOf(sorted))
    .filter(({ gap }) => gap > PARTED * high)
    .sort((a, b) => b.gap - a.gap)
    .slice(0, 3)
  let best: { parts: GlyphGroup[]; worth: number } | undefined
  for (const { before, after } of cuts) {
    const parts = [groupOf(before, context), groupOf(after, context)]
    const worth = parts.reduce((sum, { some, glyphs }) => sum + some * glyphs.length, 0)
    if (worth > IS * 1.2 && worth > (best?.worth ?? 0)) best = { parts, worth }
  }
  return best === undefined ? [group] : best.parts.flatMap((part) => parted(part, high, context))
}

interface Cut {
  readonly before: readonly SeenGlyph[]
  readonly after: readonly SeenGlyph[]
  readonly gap: number
}

interface Sorted {
  readonly glyphs: readonly SeenGlyph[]
  readonly from: (glyph: SeenGlyph) => number
  readonly to: (glyph: SeenGlyph) => number
}

function alongRow(glyphs: readonly SeenGlyph[]): Sorted {
  const from = ({ centre, width }: SeenGlyph): number => centre[0] - width / 2
  const to = ({ centre, width }: SeenGlyph): number => centre[0] + width / 2
  return { glyphs: [...glyphs].sort((a, b) => from(a) - from(b)), from, to }
}

function downPage(glyphs: readonly SeenGlyph[]): Sorted {
  const from = ({ centre, height }: SeenGlyph): number => centre[1] - height / 2
  const to = ({ centre, height }: SeenGlyph): number => centre[1] + height / 2
  return { glyphs: [...glyphs].sort((a, b) => from(a) - from(b)), from, to }
}

function cutsOf({ glyphs, from, to }: Sorted): Cut[] {
  const cuts: Cut[] = []
  let reach = Number.NEGATIVE_INFINITY
  for (const [i, glyph] of glyphs.entries()) {
    const last = glyphs[i - 1]
    // A point goes with what stands before it and after it, as those of a date.
    if (last !== undefined && !isPoint(last) && !isPoint(glyph))
      cuts.push({ before: glyphs.slice(0, i), after: glyphs.slice(i), gap: from(glyph) - reach })
    reach = Math.max(reach, to(glyph))
  }
  return cuts
}

const isPoint = ({ alternatives }: SeenGlyph): boolean => '.,'.includes(alternatives[0]?.text ?? ' ')

/** Joins near groups, the nearest first, as long as together they are a figure that they are not apart. */
function joined(groups: readonly GlyphGroup[], high: number, context: LengthContext): GlyphGroup[] {
  const all = new Set(groups)
  let fresh: GlyphGroup[] = [...groups]
  for (let round = 0; round < 6 && fresh.length > 0; round++) {
    const pairs = [...all]
      .flatMap((a) => fresh.map((b) => ({ a, b, apart: apartness(a, b, high) })))
      .filter(({ a, b, apart }) => a !== b && apart < 1)
      .sort((one, other) => one.apart - other.apart)
    fresh = []
    const tried = new Set<string>()
    for (const { a, b } of pairs) {
      if (!all.has(a) || !all.has(b)) continue
      const key = [a, b]
        .map(({ edges }) => `${edges.left} ${edges.top}`)
        .sort()
        .join()
      if (tried.has(key)) continue
      tried.add(key)
      const together = tryJoined(a, b, high, context)
      if (together === null) continue
      all.delete(a)
      all.delete(b)
      all.add(together)
      fresh.push(together)
    }
  }
  return [...all]
}

/** How far two groups are apart: from 1 they are not of one figure. */
function apartness(a: GlyphGroup, b: GlyphGroup, high: number): number {
  const across = gapBetween(a.edges.left, a.edges.right, b.edges.left, b.edges.right)
  const down = gapBetween(a.edges.top, a.edges.bottom, b.edges.top, b.edges.bottom)
  if (down < -0.3 * Math.min(heightOf(a), heightOf(b))) return across / (WORDS * high)
  if (across < -0.3 * Math.min(widthOf(a), widthOf(b))) return 0.5 + down / (LINES * high) / 2
  return 1
}

const gapBetween = (from: number, to: number, otherFrom: number, otherTo: number): number =>
  Math.max(from, otherFrom) - Math.min(to, otherTo)

const heightOf = ({ edges }: GlyphGroup): number => edges.bottom - edges.top
const widthOf = ({ edges }: GlyphGroup): number => edges.right - edges.left

function tryJoined(a: GlyphGroup, b: GlyphGroup, high: number, context: LengthContext): GlyphGroup | null {
  if (a.glyphs.length + b.glyphs.length > 30) return null
  const one: Edges = edgesRound([a.edges, b.edges])
  const across = gapBetween(a.edges.left, a.edges.right, b.edges.left, b.edges.right)
  const lines = across < -0.3 * Math.min(widthOf(a), widthOf(b))
  if (one.bottom - one.top > 7 * high) return null
  // Plain numbers right under one another are two sizes, or a list.
  const lettered = [...a.glyphs, ...b.glyphs].some(({ alternatives }) =>
    /^[A-Z]$/.test(alternatives[0]?.text ?? ''),
  )
  if (lines && (!lettered || isBareNumber(a) || isBareNumber(b))) return null
  const both = a.some > IS && b.some > IS
  if (both && !lines && !lettered && across > BOTH * high) return null
  const together = groupOf([...a.glyphs, ...b.glyphs], context)
  // How many and how large belong together, however hard the words between them are to read.
  const counts = a.figure?.of === 'count' || b.figure?.of === 'count'
  if (together.some < (counts ? COUNTED : Math.max(IS, TOGETHER * Math.max(a.some, b.some)))) return null
  // What is not of the notation must not stick to a figure that stands without it.
  if ((a.some > IS || b.some > IS) && hasWords(together) && !(hasWords(a) && hasWords(b))) return null
  return together
}

/** Joins how many there are and how large they are by the words between them, which by themselves go with neither. */
function joinedByWords(groups: readonly GlyphGroup[], high: number, context: LengthContext): GlyphGroup[] {
  const all = new Set(groups)
  for (const word of groups) {
    if (word.some > IS || !isLettered(word)) continue
    const near = [...all].filter((one) => one.some > IS && apartness(one, word, high) < 1)
    for (const count of near.filter(({ figure }) => figure?.of === 'count')) {
      for (const size of near.filter(({ figure }) => figure?.length !== undefined && !isOfCount(figure))) {
        if (!all.has(count) || !all.has(size) || !all.has(word)) continue
        const together = groupOf([...count.glyphs, ...word.glyphs, ...size.glyphs], context)
        if (together.some < COUNTED || hasWords(together)) continue
        for (const one of [count, word, size]) all.delete(one)
        all.add(together)
      }
    }
  }
  return [...all]
}

const isOfCount = ({ count }: { readonly count?: number }): boolean => count !== undefined

const isLettered = ({ glyphs }: GlyphGroup): boolean =>
  glyphs.some(({ alternatives }) => /^[A-Z]$/.test(alternatives[0]?.text ?? ''))

/** A whole number with nothing beside it. */
export const isBareNumber = ({ figure }: GlyphGroup): boolean =>
  figure !== null && /^\d+$/.test(figure.text.trim())

/** Whether words stand with the figure that say nothing of the size. */
export const hasWords = ({ figure }: GlyphGroup): boolean => figure?.notes !== undefined
