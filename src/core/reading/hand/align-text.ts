import { element } from '../../linear-algebra/element.ts'
import type { SeenGlyph } from '../glyphs/seen-glyph.ts'

/** A sign of a known text and the glyph that it is on the sheet. */
export interface AlignedSign {
  readonly sign: string
  readonly glyph: SeenGlyph
  /** Natural logarithm of the probability that the glyph alone would have had for this sign. */
  readonly fit: number
}

/** How a known text and what was seen belong together. */
export interface Alignment {
  readonly signs: readonly AlignedSign[]
  /** Sum of the logarithms of all that fits and all that is left over on either side; 0 where nothing is amiss. */
  readonly score: number
}

/** However unlike its sign a glyph is, it may be that sign one time in so many: what is to be learned is unlike. */
const UNLIKE = Math.log(0.002)
/** A digit or letter on the sheet was not seen, or a glyph that was surely seen is none of the figure: one time in so many. */
const [UNSEEN, NO_SIGN] = [Math.log(0.004), Math.log(0.02)]
/** Marks and dashes are set or left out by whoever writes the text. Common practice, no source. */
const LEFT_OUT = Math.log(0.2)

/**
 * Puts a known text beside the glyphs of a figure, both in reading order: of all ways the likeliest, in which signs may
 * have no glyph and glyphs no sign.
 * @param fitOf natural logarithm of the probability that a glyph is a sign
 */
export function alignText(
  signs: readonly string[],
  glyphs: readonly SeenGlyph[],
  fitOf: (glyph: SeenGlyph, sign: string) => number,
): Alignment {
  const wide = glyphs.length + 1
  const unseen = signs.map((sign) => (/[\p{L}\d]/u.test(sign) ? UNSEEN : LEFT_OUT))
  const noSign = glyphs.map(({ present }) => Math.max(NO_SIGN, Math.log(1 - present + 1e-9)))
  const best = new Float64Array((signs.length + 1) * wide)
  const from = new Uint8Array(best.length)
  for (let s = 0; s <= signs.length; s++)
    for (let g = 0; g < wide; g++) {
      if (s === 0 && g === 0) continue
      const at = s * wide + g
      const ways = [
        s > 0 && g > 0
          ? element(best, at - wide - 1) +
            Math.max(UNLIKE, fitOf(element(glyphs, g - 1), element(signs, s - 1)))
          : Number.NEGATIVE_INFINITY,
        s > 0 ? element(best, at - wide) + element(unseen, s - 1) : Number.NEGATIVE_INFINITY,
        g > 0 ? element(best, at - 1) + element(noSign, g - 1) : Number.NEGATIVE_INFINITY,
      ]
      best[at] = Math.max(...ways)
      from[at] = ways.indexOf(element(best, at))
    }
  const aligned: AlignedSign[] = []
  let [s, g] = [signs.length, glyphs.length]
  while (s > 0 || g > 0) {
    const way = element(from, s * wide + g)
    if (way === 0) {
      const [sign, glyph] = [element(signs, s - 1), element(glyphs, g - 1)]
      aligned.unshift({ sign, glyph, fit: fitOf(glyph, sign) })
    }
    if (way !== 2) s--
    if (way !== 1) g--
  }
  return { signs: aligned, score: element(best, best.length - 1) }
}
