import type { GreyWindow } from '../../../../src/core/imaging/window/grey-window.ts'
import type { LengthUnit } from '../../../../src/core/quantity/length.ts'
import type { GlyphReader } from '../../../../src/core/reading/box/glyph-reader.ts'
import { readBox } from '../../../../src/core/reading/box/read-box.ts'
import { IS_FIGURE } from '../../../../src/core/reading/finding/figure-chance.ts'
import { type FigurePlace, findFigures } from '../../../../src/core/reading/finding/find-figures.ts'
import { frameAt } from '../../../../src/core/reading/finding/frame.ts'

/** What truly stands on a sheet. */
export interface TrueLettering {
  readonly text: string
  readonly frame: {
    readonly centre: readonly [number, number]
    readonly width: number
    readonly height: number
    /** Left out where it is not known: width and height are then those of an upright box. */
    readonly angle?: number
  }
}

/** What was found on a sheet, and the figure that was read there. */
export interface SheetFound {
  readonly place: FigurePlace
  readonly text: string | null
}

/** The middle of what was found lies so near that of a figure, in its widths and heights, and leans as it does to so many degrees. */
const [NEAR, LEAN] = [0.4, 15]

/** Finds what there is on a sheet, and reads it at full size. @param between called when all was found */
export function lookForAll(
  reader: GlyphReader,
  small: GreyWindow,
  full: GreyWindow,
  unit: LengthUnit,
  between: () => void = () => undefined,
): SheetFound[] {
  const side = full.width / small.width
  const places = findFigures(reader, small, { context: { unit } })
  between()
  return places.map((place) => {
    const { x, y, width, height, digitHeight } = place
    const box = {
      ...place,
      x: x * side,
      y: y * side,
      width: width * side,
      height: height * side,
      digitHeight: digitHeight * side,
    }
    return { place: box, text: readBox(reader, full, box, { unit }).text }
  })
}

/**
 * Judges what is shown of a sheet: found where a figure stands, exact where it is that figure; invented where no figure
 * and no other lettering stands; `words` where other lettering does; `parts` where a figure does that has another.
 */
export function scoreSheet(
  found: readonly SheetFound[],
  figures: readonly TrueLettering[],
  words: readonly TrueLettering[],
) {
  const shown = found.filter(({ place, text }) => place.chance >= IS_FIGURE && text !== null)
  const taken = new Set<SheetFound>()
  const missed: string[] = []
  const wrong: string[] = []
  for (const figure of figures) {
    const there = shown
      .filter((one) => !taken.has(one) && isAt(one, figure, NEAR) && leansAs(one, figure))
      .sort((a, b) => b.place.width - a.place.width)[0]
    if (there === undefined) missed.push(figure.text)
    else {
      taken.add(there)
      if (there.text !== figure.text) wrong.push(`${figure.text} → ${there.text}`)
    }
  }
  const others = shown.filter((one) => !taken.has(one))
  const parts = others.filter((one) => figures.some((figure) => isAt(one, figure, 0.6))).length
  const ofWords = others.filter(
    (one) => words.some((word) => isAt(one, word, 0.7)) && !figures.some((figure) => isAt(one, figure, 0.6)),
  ).length
  return {
    figures: figures.length,
    found: figures.length - missed.length,
    exact: figures.length - missed.length - wrong.length,
    shown: shown.length,
    invented: others.length - parts - ofWords,
    words: ofWords,
    parts,
    missed,
    wrong,
  }
}

function isAt({ place }: SheetFound, { frame }: TrueLettering, near: number): boolean {
  const { fromPage } = frameAt(frame.angle ?? 0)
  const [x, y] = fromPage([place.x + place.width / 2, place.y + place.height / 2])
  const [u, v] = fromPage(frame.centre)
  return Math.abs(x - u) < near * frame.width && Math.abs(y - v) < near * frame.height
}

const leansAs = ({ place }: SheetFound, { frame }: TrueLettering): boolean =>
  frame.angle === undefined || Math.abs(place.angle - frame.angle) < LEAN
