import type { HardFigure } from '../../../src/core/reading/ranking/rank-figures.ts'
import { KNOWN, newSource } from '../../../src/core/uncertainty/source.ts'
import { fromTerms } from '../../../src/core/uncertainty/uncertain.ts'

/**
 * Sheets as they might be, each with figures and its own way of writing them, of which some glyphs are then lost. Shares
 * and sizes are common practice as far as there is one, no source; they were set down apart from what ranks figures.
 */

/** A figure of which something is hard to read, and the truth of it. */
export interface SimulatedFigure {
  readonly hard: HardFigure
  /** As it was written, and its value, mm. */
  readonly truth: string
  readonly mm: number
  /** Whether the scale, within 4 standard uncertainties, tells it from every other figure that the strokes leave. */
  readonly telling: boolean
}

/** Uniform in 0..1, seeded (mulberry32). */
export function randomOf(seed: number): () => number {
  let state = seed >>> 0
  return () => {
    state = (state + 0x6d2b79f5) >>> 0
    let t = Math.imul(state ^ (state >>> 15), 1 | state)
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296
  }
}

type Random = () => number

const normal = (random: Random): number =>
  Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random())

function oneOf<T>(random: Random, all: readonly (readonly [T, number])[]): T {
  let at = random() * all.reduce((sum, [, weight]) => sum + weight, 0)
  for (const [one, weight] of all) {
    at -= weight
    if (at < 0) return one
  }
  return (all[0] as readonly [T, number])[0]
}

interface Style {
  readonly kind: 'fractions' | 'feet' | 'decimals' | 'millimetres'
  readonly finest: 8 | 16 | 32
  readonly mark: boolean
  readonly joint: ' ' | '-'
  readonly places: number
  /** Shares of diameters and of radii. */
  readonly round: number
  readonly radii: number
}

const styleOf = (random: Random): Style => ({
  kind: oneOf(random, [
    ['fractions', 0.55],
    ['feet', 0.2],
    ['decimals', 0.1],
    ['millimetres', 0.15],
  ]),
  finest: oneOf(random, [
    [8, 0.3],
    [16, 0.5],
    [32, 0.2],
  ]),
  mark: random() < 0.5,
  joint: random() < 0.5 ? ' ' : '-',
  places: oneOf(random, [
    [2, 0.3],
    [3, 0.7],
  ]),
  round: 0.28 * random(),
  radii: 0.16 * random(),
})

function fraction(parts: number, of: number, joint: string): string {
  let [n, d] = [parts % of, of]
  const whole = Math.floor(parts / of)
  while (n > 0 && n % 2 === 0) {
    n /= 2
    d /= 2
  }
  if (n === 0) return `${whole}`
  return whole === 0 ? `${n}/${d}` : `${whole}${joint}${n}/${d}`
}

/** One figure of a sheet: as it is written, and mm. */
function writtenFigure(style: Style, random: Random): { text: string; mm: number } {
  const inches = Math.min(400, Math.max(0.25, 7 * Math.exp(1.2 * normal(random))))
  const what = oneOf(random, [
    ['', 1 - style.round - style.radii],
    ['Ø ', style.round],
    ['R ', style.radii],
  ])
  if (style.kind === 'millimetres') {
    const tenths = random() < 0.2
    const mm = tenths
      ? Math.round(inches * 254) / 10
      : Math.max(1, Math.round(inches * 25.4 * (random() < 0.3 ? 0.2 : 1)) * (random() < 0.3 ? 5 : 1))
    return { text: `${what}${tenths ? mm.toFixed(1) : mm}`, mm }
  }
  const mark = style.mark ? '"' : ''
  if (style.kind === 'decimals' && random() < 0.8) {
    const text = inches.toFixed(style.places).replace(/^0/, '')
    return { text: `${what}${text}${mark}`, mm: Number(text) * 25.4 }
  }
  // What is large is seldom given to a thirty-second.
  const coarser = inches > 24 ? 4 : inches > 6 ? 2 : 1
  const of = Math.max(
    1,
    style.finest /
      oneOf(random, [
        [1, 0.55],
        [2, 0.2],
        [4, 0.15],
        [8, 0.1],
      ] as const) /
      coarser,
  )
  const parts = Math.max(1, Math.round(inches * of))
  const mm = (parts / of) * 25.4
  const feet = style.kind === 'feet' && parts >= 12 * of
  if (!feet) return { text: `${what}${fraction(parts, of, style.joint)}${mark}`, mm }
  const over = fraction(parts % (12 * of), of, ' ')
  return {
    text: `${what}${Math.floor(parts / (12 * of))}'-${over.includes('/') && !over.includes(' ') ? `0 ${over}` : over}${mark}`,
    mm,
  }
}

/** What a poor print makes of some digits; one of the pairs at least. */
const LOOK_ALIKE: Readonly<Record<string, string>> = {
  '3': '8',
  '8': '36',
  '1': '7',
  '7': '1',
  '5': '6',
  '6': '50',
  '0': '69',
  '9': '0',
}

const GLYPHS = [...'0123456789/.-\'"ØR']

/** The pattern of what is left of a text, and what each of its glyphs could be. */
function lose(text: string, random: Random, most: number): { pattern: string; could: string[][] } {
  const glyphs = [...text]
  const places = glyphs.flatMap((glyph, i) => (glyph === ' ' ? [] : [i]))
  const howMany = Math.min(
    oneOf(random, [
      [1, 0.62],
      [2, 0.29],
      [3, 0.09],
    ] as const),
    Math.max(1, places.length - 2),
    most,
  )
  const lost = new Set<number>()
  while (lost.size < howMany) lost.add(places[Math.floor(random() * places.length)] as number)
  // Now and then something that looks clear is not what it seems.
  const mistaken = random() < 0.004 ? places[Math.floor(random() * places.length)] : undefined
  const could: string[][] = []
  const pattern = glyphs.map((glyph, i) => {
    const alike = [...(LOOK_ALIKE[glyph] ?? '')]
    if (!lost.has(i)) {
      const seen = i === mistaken ? (alike[0] ?? glyph) : glyph
      could.push([seen])
      return seen
    }
    if (alike.length === 0 || random() < 0.6) {
      could.push(GLYPHS)
      return '?'
    }
    const other = alike[Math.floor(random() * alike.length)] as string
    if (random() < 0.5) {
      could.push([glyph, other])
      return `[${[glyph, other].sort().join('')}]`
    }
    const seen = random() < 0.62 ? glyph : other
    could.push([seen, ...(LOOK_ALIKE[seen] ?? '')])
    return `[${seen}]`
  })
  return { pattern: pattern.join(''), could }
}

const SIZE =
  /^(?:[ØR] ?)?(?:(\d+)'(?:-| |- )?)?(?:(?:(\d+)(?:[ -](\d+)\/(\d+))?)|(\d+)\/(\d+)|(\d*\.\d+))?("?)$/

/** The size that a text says, mm, by a reader of its own: plain sizes and fractions of a rule in lowest terms, no more. */
export function plainSize(text: string, unit: 'in' | 'mm'): number | null {
  const found = SIZE.exec(text)
  if (found === null || text === '') return null
  const [, feet, whole, n1, d1, n2, d2, decimal, mark] = found
  if (feet === undefined && whole === undefined && n2 === undefined && decimal === undefined) return null
  if (whole !== undefined && /^0./.test(whole)) return null
  const [n, d] = [Number(n1 ?? n2 ?? 0), Number(d1 ?? d2 ?? 1)]
  const isOfRule = [1, 2, 4, 8, 16, 32, 64].includes(d) && n < d && (n % 2 === 1 || d === 1)
  if (!isOfRule) return null
  const inches = Number(whole ?? 0) + n / d + Number(decimal ?? 0)
  if (feet !== undefined && inches >= 12) return null
  const bare = unit === 'mm' && feet === undefined && mark === ''
  return bare ? (d > 1 ? null : inches) : (inches + 12 * Number(feet ?? 0)) * 25.4
}

/** Whether no other size lies within a distance of the truth, of all that each glyph could be. */
function isAlone(
  could: readonly (readonly string[])[],
  mm: number,
  within: number,
  unit: 'in' | 'mm',
): boolean {
  const from = (i: number, begun: string): boolean => {
    const glyphs = could[i]
    if (glyphs !== undefined) return glyphs.every((glyph) => from(i + 1, begun + glyph))
    const size = plainSize(begun, unit)
    return size === null || Math.abs(size - mm) < 1e-6 || Math.abs(size - mm) > within
  }
  return from(0, '')
}

/** What a measurement on the sheet gives: one value, or two that share their scale. */
function scaledValue(mm: number, random: Random): { scaled: HardFigure['scaled']; u: number } {
  // Small things are drawn full size, large ones to a smaller scale; picks and pen lie within a tenth of a mm on paper.
  const scale = mm < 250 ? 1 : mm < 1000 ? 4 : 12
  const own = (0.05 + 0.07 * random()) * scale
  const shared = mm * (0.0004 + 0.0008 * random())
  const u = Math.hypot(own, shared)
  // Altered, and the drawing left as it was.
  const drawn = random() < 0.015 ? mm * (0.75 + 0.55 * random()) : mm
  if (random() < 0.25) {
    const source = newSource('scale')
    const byScale = normal(random) * shared
    const two = [1, 1.5].map((rougher) => {
      const value = drawn + byScale + normal(random) * own * rougher
      return fromTerms(value, [source, newSource('picking')], [shared, own * rougher])
    })
    return { scaled: two, u }
  }
  const value = drawn + normal(random) * u
  if (random() < 0.7) return { scaled: [{ value, u }], u }
  // u itself is estimated from six readings.
  let chi2 = 0
  for (let i = 0; i < 5; i++) chi2 += normal(random) ** 2
  return {
    scaled: [fromTerms(value, [newSource('scatter', { ...KNOWN, dof: 5 })], [u * Math.sqrt(chi2 / 5)])],
    u,
  }
}

/**
 * So many figures that are hard to read, ten of a sheet.
 * @param mostLost glyphs of one figure
 */
export function simulateHardFigures(howMany: number, seed: number, mostLost = 3): SimulatedFigure[] {
  const random = randomOf(seed)
  const all: SimulatedFigure[] = []
  while (all.length < howMany) {
    const style = styleOf(random)
    const unit = style.kind === 'millimetres' ? 'mm' : 'in'
    const figures = Array.from(
      { length: 8 + Math.floor(random() * 17) },
      () => writtenFigure(style, random).text,
    )
    for (let i = 0; i < 10; i++) {
      const { text: truth, mm } = writtenFigure(style, random)
      const { pattern: seen, could } = lose(truth, random, mostLost)
      const { scaled, u } = scaledValue(mm, random)
      // Some have nothing to scale by.
      const without = random() < 0.03
      all.push({
        hard: { seen, figures, context: { unit }, ...(without || scaled === undefined ? {} : { scaled }) },
        truth,
        mm,
        telling: !without && isAlone(could, mm, 4 * u, unit),
      })
    }
  }
  return all.slice(0, howMany)
}
