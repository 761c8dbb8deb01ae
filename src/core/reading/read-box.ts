import type { GreyPicture } from '../imaging/window/grey-picture.ts'
import type { LengthContext } from '../quantity/parse/parse-length.ts'
import { bestLook } from './box/best-look.ts'
import type { BoxToRead } from './box/box-to-read.ts'
import type { GlyphReader } from './box/glyph-reader.ts'
import type { FigureReading } from './figure-reading.ts'
import type { Lattice } from './lattice.ts'
import { layOut } from './layout/lay-out.ts'
import { boxOnPage } from './patch/upright-places.ts'
import { type RankedFigure, rankFigures } from './ranking/rank-figures.ts'

/** So sure a figure is called clear. */
const CLEAR = 0.99
/** Alternatives at most. */
const MOST = 9
const TO_DEGREES = 180 / Math.PI

/** Reads the figure in a box of a page: what it is, how sure that is, and what else it could be. */
export function readBox(
  reader: GlyphReader,
  picture: GreyPicture,
  box: BoxToRead,
  context: LengthContext = {},
): FigureReading {
  const look = bestLook(reader, picture, box)
  if (look === null) return nothingIn(box)
  const ways = layOut(look.glyphs)
  const lattice = ways[0]?.lattice ?? { slots: [] }
  const place = onPage(lattice)
  const all = new Map<string, { ranked: RankedFigure; probability: number }>()
  for (const way of ways) {
    if (way.lattice.slots.length === 0) continue
    for (const ranked of rankFigures({ seen: way.lattice, context }).figures) {
      const probability = way.weight * ranked.withoutScale
      const before = all.get(ranked.text)
      all.set(ranked.text, { ranked, probability: probability + (before?.probability ?? 0) })
    }
  }
  const [first, ...others] = [...all.values()].sort((a, b) => b.probability - a.probability)
  const told = { box: place(look.box, look.scale), angle: look.box.angle, asRead: asRead(lattice), lattice }
  if (first === undefined)
    return { ...told, text: null, value: null, kind: null, clear: false, probability: 0, alternatives: [] }
  const { ranked, probability } = first
  const { text, value, kind } = ranked
  return {
    ...told,
    text,
    value: kind === 'angle' && value !== null ? value * TO_DEGREES : value,
    kind,
    clear: probability >= CLEAR,
    probability,
    alternatives: others
      .slice(0, MOST)
      .map((other) => ({ text: other.ranked.text, probability: other.probability })),
  }
}

const nothingIn = ({ x, y, width, height, angle = 0 }: BoxToRead): FigureReading => ({
  box: [x, y, width, height],
  angle,
  text: null,
  asRead: '',
  value: null,
  kind: null,
  clear: false,
  probability: 0,
  alternatives: [],
  lattice: { slots: [] },
})

/** The likeliest glyph of each place, one after another. */
const asRead = ({ slots }: Lattice): string =>
  slots.map(({ alternatives }) => alternatives[0]?.text ?? '�').join('')

const onPage =
  ({ slots }: Lattice) =>
  (...[box, scale]: [Parameters<typeof boxOnPage>[0], number]): FigureReading['box'] => {
    const boxes = slots.flatMap((slot) => (slot.box === undefined ? [] : [slot.box]))
    const left = Math.min(...boxes.map(([x]) => x))
    const top = Math.min(...boxes.map(([, y]) => y))
    const right = Math.max(...boxes.map(([x, , width]) => x + width))
    const bottom = Math.max(...boxes.map(([, y, , height]) => y + height))
    const whole = boxes.length > 0 ? ([left, top, right - left, bottom - top] as const) : ([0, 0, 0, 0] as const)
    return boxOnPage(box, scale, whole)
  }
