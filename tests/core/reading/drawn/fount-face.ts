import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { createCanvas, GlobalFonts, type SKRSContext2D } from '@napi-rs/canvas'
import type { Dice } from './dice.ts'
import type { Face, GlyphRoom } from './face.ts'
import { fountGlyphs } from './fount-glyphs.ts'
import { penFace } from './pen/pen-face.ts'
import { PEN_HANDS } from './pen/pen-hands.ts'

/** A fount of a package, and how it is set here. */
export interface Fount {
  /** The package by its name, or the folder it is in. */
  readonly from: string
  /** Degrees by which it is sheared to the right. */
  readonly sheared?: readonly [number, number]
  /** How far its glyphs stand off the line, in heights of a digit. */
  readonly unsteady: number
  /** How far its ink spreads, widening every stroke, in heights of a digit; 0 to 0.02 unless said otherwise. */
  readonly spread?: readonly [number, number]
}

interface Loaded {
  readonly family: string
  readonly has: ReadonlySet<number>
  /** Pixels of the fount's size to one pixel of a full digit's height. */
  readonly perHeight: number
  readonly rooms: Map<string, GlyphRoom>
}

const LOADED = new Map<string, Loaded>()
const MEASURED_AT = 400

const pen = (): SKRSContext2D => createCanvas(4, 4).getContext('2d')

/** The file of a package of founts, Latin, of ordinary weight. */
function load(from: string): Loaded {
  const kept = LOADED.get(from)
  if (kept) return kept
  const name = from.slice(from.lastIndexOf('/') + 1)
  const file = createRequire(import.meta.url).resolve(`${from}/files/${name}-latin-400-normal.woff`)
  const family = `drawn ${name}`
  if (!GlobalFonts.registerFromPath(file, family)) throw new Error(`The fount ${file} could not be taken in.`)
  const context = pen()
  context.font = `${MEASURED_AT}px "${family}"`
  // An 8 is as high as any digit also where digits are old-style, of several heights.
  const height = context.measureText('8').actualBoundingBoxAscent
  const made: Loaded = {
    family,
    has: fountGlyphs(readFileSync(file)),
    perHeight: MEASURED_AT / height,
    rooms: new Map(),
  }
  LOADED.set(from, made)
  return made
}

/** Whether the fount itself has a shape for this glyph. */
export const fountHas = (from: string, glyph: string): boolean =>
  load(from).has.has(glyph.codePointAt(0) ?? 0)

function roomIn(fount: Loaded, glyph: string): GlyphRoom {
  const kept = fount.rooms.get(glyph)
  if (kept) return kept
  const context = pen()
  context.font = `${MEASURED_AT}px "${fount.family}"`
  const m = context.measureText(glyph)
  const per = fount.perHeight / MEASURED_AT
  const made = {
    advance: m.width * per,
    left: -m.actualBoundingBoxLeft * per,
    right: m.actualBoundingBoxRight * per,
    top: -m.actualBoundingBoxAscent * per,
    bottom: m.actualBoundingBoxDescent * per,
  }
  fount.rooms.set(glyph, made)
  return made
}

/** A fount at work on one figure; what it has no shape for is drawn with a pen. */
export function fountFace({ from, sheared, unsteady, spread }: Fount, d: Dice): Face {
  const fount = load(from)
  const slant = sheared ? d.between(...sheared) : 0
  const lean = Math.tan((slant * Math.PI) / 180)
  const spaced = d.between(0, 0.06)
  const widened = d.between(...(spread ?? [0, 0.02]))
  const byPen = penFace({ ...PEN_HANDS['pen, upright'], slant: [slant, slant] }, d)
  const has = (glyph: string) => fount.has.has(glyph.codePointAt(0) ?? 0)
  return {
    stroke: d.between(0.06, 0.1),
    slant,
    unsteady,
    room: (glyph) => {
      if (!has(glyph)) return byPen.room(glyph)
      const room = roomIn(fount, glyph)
      return {
        ...room,
        advance: room.advance + spaced,
        left: room.left - Math.max(0, room.bottom * lean),
        right: room.right + Math.max(0, -room.top * lean),
      }
    },
    draw: (context, glyph, x, y, size) => {
      if (!has(glyph)) {
        byPen.draw(context, glyph, x, y, size)
        return
      }
      context.save()
      context.transform(1, 0, -lean, 1, x, y)
      context.font = `${size * fount.perHeight}px "${fount.family}"`
      context.fillText(glyph, 0, 0)
      context.lineWidth = widened * size
      context.lineJoin = 'round'
      context.strokeText(glyph, 0, 0)
      context.restore()
    },
  }
}
