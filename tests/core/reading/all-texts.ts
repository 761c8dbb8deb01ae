import fc from 'fast-check'
import { formatFigure } from '../../../src/core/quantity/format/format-figure.ts'
import { NotationError } from '../../../src/core/quantity/notation/notation-error.ts'
import { parseFigure } from '../../../src/core/quantity/parse/parse-figure.ts'
import type { Lattice } from '../../../src/core/reading/lattice.ts'

const GLYPHS = [...'0123456789 /-.\'"Ø', '', 'R', 'O', 'X']

/** Lattices of up to five slots with up to four alternatives, some with probability over. */
export const lattices = fc
  .array(
    fc.record({
      glyphs: fc.uniqueArray(fc.constantFrom(...GLYPHS), { minLength: 1, maxLength: 4 }),
      weights: fc.array(fc.integer({ min: 1, max: 20 }), { minLength: 4, maxLength: 4 }),
      over: fc.integer({ min: 0, max: 5 }),
    }),
    { minLength: 1, maxLength: 5 },
  )
  .map(
    (slots): Lattice => ({
      slots: slots.map(({ glyphs, weights, over }) => {
        const sum = glyphs.reduce((total, _, i) => total + (weights[i] ?? 0), over)
        return {
          alternatives: glyphs.map((text, i) => ({ text, probability: (weights[i] ?? 0) / sum })),
        }
      }),
    }),
  )

/** A text in the one notation of figures; null where it is none. */
export const isFigure = (text: string): string | null => {
  try {
    return formatFigure(parseFigure(text, { unit: 'in' }))
  } catch (error) {
    if (error instanceof NotationError) return null
    throw error
  }
}

/** All texts there are, one after another. */
export function bruteForce({ slots }: Lattice): {
  figures: Map<string, number>
  unparsed: number
  named: number
} {
  let texts: [string, number][] = [['', 1]]
  for (const { alternatives } of slots) {
    texts = texts.flatMap(([text, p]) =>
      alternatives.map((one): [string, number] => [text + one.text, p * one.probability]),
    )
  }
  const figures = new Map<string, number>()
  let [unparsed, named] = [0, 0]
  for (const [text, p] of texts) {
    const figure = isFigure(text)
    named += p
    if (figure === null) unparsed += p
    else figures.set(figure, (figures.get(figure) ?? 0) + p)
  }
  return { figures, unparsed, named }
}
