import type { LengthContext } from '../../quantity/parse/parse-length.ts'
import { type Edges, glyphEdges } from '../glyphs/edges.ts'
import { heightOfMost } from '../glyphs/height-of-most.ts'
import { surenessOf } from '../glyphs/sureness.ts'
import { isTall } from '../layout/placed-glyph.ts'
import { slopeOfRows } from '../layout/slope-of-rows.ts'
import { areaOf, edgesInFrame, edgesOnPage, type Frame, sharedArea } from './frame.ts'
import { glyphGroups, hasWords, isBareNumber } from './glyph-groups.ts'
import type { GlyphGroup } from './group-worth.ts'
import type { SheetLettering } from './seen-lettering.ts'

/** Glyphs of a sheet that may be a figure, with what tells whether they are one. */
export interface FigureCandidate {
  readonly frame: Frame
  readonly group: GlyphGroup
  /** Round it on the page. */
  readonly onPage: Edges
  /** Height of its full digits, pixels. */
  readonly digitHeight: number
  /** Degrees by which its row goes down to the right in its frame. */
  readonly lean: number
  readonly marks: CandidateMarks
}

/** What tells a figure from words and from lines that look like one. */
export interface CandidateMarks {
  /** Digits and letters in it. */
  readonly tall: number
  /** How sure they are on the whole, and the least sure of them. */
  readonly sure: number
  readonly least: number
  /** Its digits' height against that of the sheet's figures. */
  readonly ofHeight: number
  /** Share of its glyphs that are spots of ink by themselves, as high and wide as they were seen. */
  readonly apart: number
  /** Nothing but a round: no size is nought, and holes look like it. Common practice, no source. */
  readonly round: boolean
  /** A whole number with nothing that says what it is of. */
  readonly bare: boolean
  /** Words with it are not of the notation. */
  readonly worded: boolean
  /** How far off words stand in its row, in heights of its digits; no more than so many. */
  readonly toWords: number
  /** Other whole numbers with nothing else that stand over and under it, as in a list. */
  readonly inColumn: number
  /** Probability that its glyphs make some figure of the notation. */
  readonly some: number
}

/** What is less likely a figure is not tried. */
const LEAST_SOME = 0.12
/** Of two that are read one way and share so much of the smaller one, one is not there. */
const SAME = 0.3
/** Of glyphs of which more than this share stand where others do that are read another way, none is there. */
const COVERED = 0.4
/** So sure, a glyph tells how high lettering is. */
const SURE = 0.8
/** What is seen in a glyph counts from here on. */
const COUNTS = 0.45
/** Words are looked for in a row as far as so many heights. */
const ROW_REACH = 25
/** Numbers of a list stand over one another to so many heights, and no further apart than so many. */
const [ALIGNED, LIST] = [0.8, 9]

/** What may be a figure on a sheet, of what shares its strokes only the one in which most was seen. */
export function figureCandidates(
  { ways, spots, ...sheet }: SheetLettering,
  context: LengthContext,
): FigureCandidate[] {
  const high = fullHeightOf(ways) ?? sheet.high
  const all = ways.flatMap(({ frame, glyphs }) =>
    glyphGroups(glyphs, high, context).map((group) => {
      const onPage = edgesOnPage(group.edges, frame)
      return { frame, group, onPage, mass: massOf(group) }
    }),
  )
  all.sort((a, b) => b.mass - a.mass)
  const kept: typeof all = []
  const strokes: { frame: Frame; edges: Edges }[] = []
  for (const one of all) {
    const own = kept.some(({ frame, onPage }) => {
      const shared = frame === one.frame ? sharedArea(one.onPage, onPage) : 0
      return shared > SAME * Math.min(areaOf(one.onPage), areaOf(onPage))
    })
    if (own || shareCovered(one, strokes) > COVERED) continue
    kept.push(one)
    for (const glyph of one.group.glyphs)
      strokes.push({ frame: one.frame, edges: edgesOnPage(glyphEdges(glyph), one.frame) })
  }
  const words = kept.filter(({ group }) => isWords(group))
  const numbers = kept.filter(({ group }) => isBareNumber(group))
  const heights = kept
    .filter(({ group }) => group.some > 0.6 && group.glyphs.length > 1)
    .map(({ group }) => digitHeightOf(group, high))
    .sort((a, b) => a - b)
  const usual = heights[heights.length >> 1] ?? high
  return kept
    .filter(({ group }) => group.some > LEAST_SOME)
    .map(({ frame, group, onPage }) => {
      const digitHeight = digitHeightOf(group, high)
      const tall = tallOf(group)
      const sure = tall.map(surenessOf)
      return {
        frame,
        group,
        onPage,
        digitHeight,
        lean: (Math.atan(slopeOfRows(group.glyphs)) * 180) / Math.PI,
        marks: {
          tall: tall.length,
          sure: sure.reduce((sum, one) => sum + one, 0) / Math.max(1, sure.length),
          least: Math.min(1, ...sure),
          ofHeight: digitHeight / usual,
          apart: shareApart(group, frame, spots),
          round: tall.length === 1 && '0OQ'.includes(tall[0]?.alternatives[0]?.text ?? ' '),
          bare: isBareNumber(group),
          worded: hasWords(group),
          toWords: Math.min(
            ROW_REACH,
            ...words
              .filter((word) => word.frame === frame)
              .map((word) => gapInRow(word.group, group) / digitHeight),
          ),
          inColumn: numbers.filter(
            (other) => other.frame === frame && areListed(other.group, group, digitHeight),
          ).length,
          some: group.some,
        },
      }
    })
}

/** Height of full digits, which those of fractions are lower than: that which three quarters of what is surely seen do not exceed. */
function fullHeightOf(ways: SheetLettering['ways']): number | null {
  const heights = ways
    .slice(0, 2)
    .flatMap(({ glyphs }) => glyphs)
    .filter((glyph) => isTall(glyph.alternatives[0]?.text ?? '') && surenessOf(glyph) > SURE)
    .map(({ height }) => height)
  return heightOfMost(heights) ?? null
}

const tallOf = ({ glyphs }: GlyphGroup) =>
  glyphs.filter((glyph) => isTall(glyph.alternatives[0]?.text ?? '') && surenessOf(glyph) > 0.25)

/** How much is seen, and how surely; what makes a figure counts for more. */
function massOf({ glyphs, some }: GlyphGroup): number {
  const seen = glyphs.reduce((sum, glyph) => sum + Math.max(0, surenessOf(glyph) - COUNTS), 0)
  return seen * (0.6 + 0.4 * some)
}

/** The share of a group's glyphs that stand where glyphs do that are read another way. */
function shareCovered(
  { frame, group }: { frame: Frame; group: GlyphGroup },
  strokes: readonly { frame: Frame; edges: Edges }[],
): number {
  const others = strokes.filter((other) => other.frame !== frame)
  const covered = group.glyphs.filter((glyph) => {
    const edges = edgesOnPage(glyphEdges(glyph), frame)
    return others.some(
      (there) => sharedArea(edges, there.edges) > 0.3 * Math.min(areaOf(edges), areaOf(there.edges)),
    )
  })
  return covered.length / group.glyphs.length
}

/** Letters that make no figure. */
function isWords(group: GlyphGroup): boolean {
  const letters = tallOf(group).filter(({ alternatives }) => /^[A-Z]$/.test(alternatives[0]?.text ?? ''))
  return letters.length >= 2 && (group.some < 0.3 || hasWords(group))
}

/** How far apart two groups are along their row; of two that are in none, without end. */
function gapInRow(word: GlyphGroup, group: GlyphGroup): number {
  const [a, b] = [word.edges, group.edges]
  const down = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top)
  if (word === group || down < 0.5 * Math.min(a.bottom - a.top, b.bottom - b.top))
    return Number.POSITIVE_INFINITY
  return Math.max(0, Math.max(a.left, b.left) - Math.min(a.right, b.right))
}

function areListed(one: GlyphGroup, other: GlyphGroup, high: number): boolean {
  if (one === other) return false
  const [a, b] = [one.edges, other.edges]
  const across = Math.abs(a.left + a.right - b.left - b.right) / 2
  return across < ALIGNED * high && Math.abs(a.top + a.bottom - b.top - b.bottom) / 2 < LIST * high
}

/** Of digits and letters, the height that three quarters of them do not exceed. */
function digitHeightOf(group: GlyphGroup, high: number): number {
  return heightOfMost(tallOf(group).map(({ height }) => height)) ?? high
}

function shareApart(group: GlyphGroup, frame: Frame, spots: readonly Edges[]): number {
  const round = edgesOnPage(group.edges, frame)
  const near = spots.filter((spot) => sharedArea(spot, round) > 0).map((spot) => edgesInFrame(spot, frame))
  const tall = tallOf(group)
  const apart = tall.filter((glyph) => {
    const edges = glyphEdges(glyph)
    return near.some((spot) => {
      const shared = sharedArea(spot, edges)
      return shared > 0.6 * areaOf(spot) && shared > 0.6 * areaOf(edges)
    })
  })
  return apart.length / Math.max(1, tall.length)
}
