import type { GreyWindow } from '../../imaging/index.ts'
import type { LengthContext } from '../../quantity/parse/parse-length.ts'
import type { BoxToRead } from '../box/box-to-read.ts'
import type { GlyphReader } from '../box/glyph-reader.ts'
import { edgesRound, glyphEdges } from '../glyphs/edges.ts'
import { type FigureCandidate, figureCandidates } from './figure-candidates.ts'
import { figureChance } from './figure-chance.ts'
import { frameAt } from './frame.ts'
import type { FindingOptions } from './lettering-spots.ts'
import { seenLettering } from './seen-lettering.ts'

/** Where a figure may stand on a page: its box along its lettering, turned about its centre, in pixels of the page. */
export interface FigurePlace extends Required<BoxToRead> {
  /** That it is a figure, and no other lettering; told as one from `IS_FIGURE` on, where `readBox` makes one of it. */
  readonly chance: number
}

/** Room round a figure's glyphs, in heights of its digits. */
const ROOM = 0.22
/** A row that leans by more than this in the frame it was seen in is read as it leans, degrees. */
const LEANS = 2

/**
 * Finds the figures of a picture by looking for glyphs wherever its ink is as large as they are; numbers among other
 * lettering come as well, with little chance. `readBox` reads each.
 * @param context what a bare number means
 */
export function findFigures(
  reader: GlyphReader,
  picture: GreyWindow,
  options: FindingOptions & { readonly context?: LengthContext } = {},
): FigurePlace[] {
  const { context = {} } = options
  return figureCandidates(seenLettering(reader, picture, options), context).map(boxOfCandidate)
}

/** The box of a candidate as it is to be read. */
export function boxOfCandidate({ frame, group, lean, digitHeight, marks }: FigureCandidate): FigurePlace {
  const angle = Math.abs(lean) > LEANS ? frame.angle + lean : frame.angle
  const turned = frameAt(angle)
  const edges = edgesRound(
    group.glyphs.map((glyph) => {
      const [x, y] = turned.fromPage(frame.toPage(glyph.centre))
      return glyphEdges({ ...glyph, centre: [x, y] })
    }),
  )
  const room = ROOM * digitHeight
  const [width, height] = [edges.right - edges.left + 2 * room, edges.bottom - edges.top + 2 * room]
  const [cx, cy] = turned.toPage([(edges.left + edges.right) / 2, (edges.top + edges.bottom) / 2])
  return {
    x: cx - width / 2,
    y: cy - height / 2,
    width,
    height,
    angle,
    digitHeight,
    chance: figureChance(marks),
  }
}
