import type { GreyPicture } from '../../imaging/index.ts'
import type { LengthContext } from '../../quantity/parse/parse-length.ts'
import type { FigureReading } from '../figure-reading.ts'
import { surenessOf } from '../glyphs/sureness.ts'
import type { Lattice } from '../lattice.ts'
import { boxOnPage } from '../patch/upright-places.ts'
import { bestLook } from './best-look.ts'
import type { BoxToRead } from './box-to-read.ts'
import type { GlyphReader } from './glyph-reader.ts'
import { inTheLongRun } from './in-the-long-run.ts'
import type { BoxLook } from './look.ts'

/** So sure a figure is called clear. */
const CLEAR = 0.997
/** Where no glyph is so surely seen, there is none: the grain of bare paper looks a little like any. */
const SEEN = 0.5
/** A glyph by itself may be an arrow's head or another part of the drawing: no surer than this. */
const SINGLE = 0.95
/** Alternatives at most, and how likely at least. */
const [MOST, LEAST] = [9, 0.001]
const TO_DEGREES = 180 / Math.PI

/**
 * Reads the figure in a box of a page: what it is, how sure that is, and what else it could be.
 * @param picture what of the page holds the box, and some room round it
 * @param context what a bare number and a gauge number mean
 */
export function readBox(
  reader: GlyphReader,
  picture: GreyPicture,
  box: BoxToRead,
  context: LengthContext = {},
): FigureReading {
  const read = bestLook(reader, picture, box, context)
  const lattice = read?.ways[0]?.lattice
  if (read === null || lattice === undefined || lattice.slots.length === 0) return nothingIn(box)
  const [first, ...others] = read.likely.figures
  const told = {
    box: boxOfSlots(lattice, read.look),
    angle: read.look.box.angle,
    asRead: asRead(lattice),
    lattice,
  }
  if (first === undefined || surest(read.look) < SEEN)
    return { ...told, text: null, value: null, kind: null, clear: false, probability: 0, alternatives: [] }
  const { text, value, kind } = first
  const single =
    lattice.slots.filter(({ alternatives }) => (alternatives[0]?.text ?? '').trim() !== '').length < 2
  const probability = Math.min(inTheLongRun(first.probability), single ? SINGLE : 1)
  const rest = (1 - probability) / Math.max(1 - first.probability, Number.EPSILON)
  return {
    ...told,
    text,
    value: kind === 'angle' && value !== null ? value * TO_DEGREES : value,
    kind,
    clear: probability >= CLEAR,
    probability,
    alternatives: others
      .map((other) => ({ text: other.text, probability: other.probability * rest }))
      .filter((other) => other.probability >= LEAST)
      .slice(0, MOST),
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

/** How sure the glyph is that is seen most surely. */
const surest = ({ glyphs }: BoxLook): number => Math.max(0, ...glyphs.map(surenessOf))

/** The likeliest glyph of each place, one after another. */
const asRead = ({ slots }: Lattice): string =>
  slots
    .map(({ alternatives }) => alternatives[0]?.text ?? '�')
    .join('')
    .trim()

/** Round all glyphs, on the page. */
function boxOfSlots({ slots }: Lattice, { box, scale }: BoxLook): FigureReading['box'] {
  const boxes = slots.flatMap((slot) => (slot.box === undefined ? [] : [slot.box]))
  const left = Math.min(...boxes.map(([x]) => x))
  const top = Math.min(...boxes.map(([, y]) => y))
  const right = Math.max(...boxes.map(([x, , width]) => x + width))
  const bottom = Math.max(...boxes.map(([, y, , height]) => y + height))
  return boxOnPage(box, scale, [left, top, right - left, bottom - top])
}
