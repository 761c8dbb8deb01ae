import type { GreyPicture } from '../../imaging/index.ts'
import type { GlyphReader } from '../box/glyph-reader.ts'
import type { Edges } from '../glyphs/edges.ts'
import type { SeenGlyph } from '../glyphs/seen-glyph.ts'
import { glyphsOf } from '../network/peaks.ts'
import { inkOf } from '../patch/ink-of.ts'
import { sampleUpright } from '../patch/sample-upright.ts'
import type { Frame } from './frame.ts'

/** So near the edge of a window, pixels of the network's field, a glyph is not seen whole. */
const RIM = 3
/** Glyphs nearer than this, in two windows, are one. */
const SAME = 5

/**
 * Looks for glyphs in windows of a page that is seen in a frame.
 * @param scale pixels of the network's field to a pixel of the page
 * @returns places and sizes in pixels of the page, as the frame has it
 */
export function sweep(
  { network, weights, hand }: GlyphReader,
  picture: GreyPicture,
  { angle, toPage }: Frame,
  windows: readonly Edges[],
  scale: number,
): SeenGlyph[] {
  const all: { glyph: SeenGlyph; window: number }[] = []
  for (const [window, { left, top, right, bottom }] of windows.entries()) {
    const centre = toPage([(left + right) / 2, (top + bottom) / 2])
    const upright = sampleUpright(
      picture,
      { centre, width: right - left, height: bottom - top, angle },
      scale,
    )
    const { width, height } = upright
    for (const glyph of glyphsOf(network.look(inkOf(upright)), weights, hand)) {
      const [x, y] = glyph.centre
      if (x < RIM || y < RIM || x > width - RIM || y > height - RIM) continue
      const place = [
        (left + right) / 2 + (x - width / 2) / scale,
        (top + bottom) / 2 + (y - height / 2) / scale,
      ] as const
      const [wide, high] = [glyph.width / scale, glyph.height / scale]
      all.push({ glyph: { ...glyph, centre: place, width: wide, height: high }, window })
    }
  }
  return seenOnce(all, SAME / scale)
}

/** Of what was seen in two windows that overlap, what was seen more surely. */
function seenOnce(
  all: readonly { readonly glyph: SeenGlyph; readonly window: number }[],
  near: number,
): SeenGlyph[] {
  const sorted = [...all].sort((a, b) => a.glyph.centre[0] - b.glyph.centre[0])
  const dropped = new Set<SeenGlyph>()
  for (const [i, a] of sorted.entries()) {
    for (let k = i + 1; k < sorted.length; k++) {
      const b = sorted[k]
      if (b === undefined || b.glyph.centre[0] - a.glyph.centre[0] > near) break
      if (a.window === b.window || Math.abs(b.glyph.centre[1] - a.glyph.centre[1]) > near) continue
      dropped.add(a.glyph.present < b.glyph.present ? a.glyph : b.glyph)
    }
  }
  return sorted.flatMap(({ glyph }) => (dropped.has(glyph) ? [] : [glyph]))
}
