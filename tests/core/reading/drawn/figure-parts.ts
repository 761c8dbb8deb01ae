import type { LengthUnit } from '../../../../src/core/quantity/length.ts'

/** What a figure is set of, in reading order. */
export type FigurePart =
  | { readonly kind: 'text'; readonly text: string }
  | { readonly kind: 'fraction'; readonly over: string; readonly under: string }
  /** Two limits one over the other: `+.002` over `-.001`. */
  | { readonly kind: 'limits'; readonly upper: string; readonly lower: string }

/** A figure as a draughtsman means it: its parts, in one line or two. */
export interface PlannedFigure {
  readonly lines: readonly (readonly FigurePart[])[]
  /** The unit of the sheet, which bare numbers have. */
  readonly unit: LengthUnit
}

export const text = (of: string): FigurePart => ({ kind: 'text', text: of })
export const fraction = (over: number, under: number): FigurePart => ({
  kind: 'fraction',
  over: String(over),
  under: String(under),
})

/** The figure in one line of signs, as `parseFigure` reads it. */
export const linear = ({ lines }: PlannedFigure): string => lines.map(linearParts).join(' ')

function linearParts(parts: readonly FigurePart[]): string {
  let all = ''
  for (const part of parts) {
    if (part.kind === 'text') all += part.text
    else if (part.kind === 'limits') all += ` ${part.upper} ${part.lower}`
    else all += `${/\d$/.test(all) ? ' ' : ''}${part.over}/${part.under}`
  }
  return all.trim()
}

const INLINE = /(\d+)\/(\d+)/g

/** A figure written in one line, with its fractions taken as fractions: `1 3/8` is a 1 and three eighths. */
export function planned(written: string, unit: LengthUnit): PlannedFigure {
  const lines = written.split('\n').map((line) => {
    const parts: FigurePart[] = []
    let from = 0
    for (const match of line.matchAll(INLINE)) {
      const before = line.slice(from, match.index).replace(/(\d) $/, '$1')
      if (before !== '') parts.push(text(before))
      parts.push({ kind: 'fraction', over: match[1] ?? '', under: match[2] ?? '' })
      from = match.index + match[0].length
    }
    if (from < line.length) parts.push(text(line.slice(from)))
    return parts
  })
  return { lines, unit }
}
