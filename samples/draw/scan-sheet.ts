import { type Blemishes, fieldAt } from './blemishes.ts'
import type { Chance } from './chance.ts'
import { DISTORTION, toPaper } from './sheet-distortion.ts'
import { valueNoise } from './value-noise.ts'

const { imageWidth: W, imageHeight: H, width: SHEET_W, height: SHEET_H } = DISTORTION

/** Cartridge paper of that age, and iron ink gone brown. */
const PAPER = [231, 217, 187] as const
const INK = [52, 43, 38] as const
/** Under the lid of the scanner, beyond the sheet. */
const LID = [196, 196, 192] as const
/** Where the sheet was folded, mm from its left edge and from its top. */
const FOLDS = { upright: 166.5, level: 212.3 }

/** The scan: three bytes a pixel, of the inked sheet with all that has happened to it. */
export function scanSheet(ink: Buffer, marks: Blemishes, chance: Chance): Buffer {
  const out = Buffer.alloc(3 * W * H)
  const broad = valueNoise(chance, W, H, 700)
  const cloud = valueNoise(chance, W, H, 120)
  const tooth = valueNoise(chance, W, H, 9)
  const fade = valueNoise(chance, W, H, 260)
  const worn = valueNoise(chance, W, H, 34)
  const grain = Float32Array.from({ length: 1 << 18 }, () => chance.normal())
  const reach = 3
  for (let y = 0; y < H; y++) {
    const roll = Math.floor(chance.uniform() * grain.length)
    for (let x = 0; x < W; x++) {
      const i = y * W + x
      const [px, py] = toPaper([x + 0.5, y + 0.5])
      const within = Math.min(px, py, SHEET_W - px, SHEET_H - py)
      const noise = grain[(roll + x) & (grain.length - 1)] ?? 0
      // The lamp is brighter on one side and the sheet does not lie quite flat.
      const lamp = 1.02 - 0.05 * (x / W) - 0.035 * (y / H) ** 2 + 0.012 * broad(x, y)
      if (within < 0) {
        const shadow = 1 - 0.3 * Math.exp(within / 1.1)
        for (let k = 0; k < 3; k++) out[3 * i + k] = clamp((LID[k] ?? 0) * shadow * lamp + 0.8 * noise)
        continue
      }
      const mark = fieldAt(marks.light, marks, x + 0.5, y + 0.5)
      const washed = fieldAt(marks.washed, marks, x + 0.5, y + 0.5)
      const edge = 1 - 0.13 * Math.exp(-within / 9) - 0.1 * Math.exp(-within / 1.6)
      const across = px - FOLDS.upright + 0.12 * worn(x, y)
      const down = py - FOLDS.level + 0.12 * worn(x, y)
      const fold = crease(across) * crease(down)
      const light = lamp * edge * fold * (1 + 0.022 * cloud(x, y) + 0.011 * tooth(x, y))
      const cracked =
        (Math.abs(across) < 0.16 || Math.abs(down) < 0.16) && worn(1.7 * (x % (W / 2)), y) > -0.1 ? 0.55 : 0
      const faded = 0.86 + 0.16 * fade(x, y)
      const full = ((ink[i] ?? 0) / 255) * Math.min(1, faded) * (1 - washed) * (1 - cracked)
      for (let k = 0; k < 3; k++) {
        // Brown stains take more of the blue than of the red.
        const paper = (PAPER[k] ?? 0) * light * mark ** (0.75 + 0.35 * k)
        out[3 * i + k] = clamp(
          paper + ((INK[k] ?? 0) * lamp * (0.6 + 0.4 * mark) - paper) * full + 1.5 * noise,
        )
      }
    }
  }
  return out

  function crease(off: number): number {
    const far = Math.abs(off)
    if (far > reach * 3) return 1
    return 1 - 0.16 * Math.exp(-((off / 0.13) ** 2)) - 0.035 * Math.exp(-far / reach) * Math.sign(off + 1e-9)
  }
}

const clamp = (v: number): number => (v < 0 ? 0 : v > 255 ? 255 : Math.round(v))
