import stringWidth from 'string-width'
import type { FigureReading } from '../../../core/reading/figure-reading.ts'
import { plainText } from '../../../core/words/plain-text.ts'
import { wrapText } from './wrap-text.ts'

const GAP = '  '
const HEADINGS = ['figure', 'how sure', 'x,y,width,height'] as const
/** Narrower than this, what else a figure could be goes on lines of its own under it. */
const NARROWEST_REST = 28
const NARROWEST_PAGE = 40
/** What is less likely than this is left to --format json. */
const WORTH_SAYING = 0.001

/** A share in hundredths, and never all or none of them. */
function percent(share: number): string {
  const hundredths = Math.min(99.9, Math.max(0.1, share * 100))
  return `${hundredths >= 1 && hundredths < 99 ? Math.round(hundredths) : hundredths.toFixed(1)} %`
}

function howSure({ text, asRead, clear, probability }: FigureReading): string {
  if (text !== null) return `${clear ? 'clear' : 'doubtful'}, ${percent(probability)}`
  return asRead === '' ? 'nothing seen' : 'no figure'
}

function rest({ text, asRead, alternatives }: FigureReading): string {
  const seen = text === null && asRead !== '' ? [`the strokes say ${asRead}`] : []
  const others = alternatives
    .filter((one) => one.probability >= WORTH_SAYING)
    .map((one) => `${one.text} ${percent(one.probability)}`)
  return plainText([...seen, ...others].join('; '))
}

const padded = (text: string, width: number): string =>
  text + ' '.repeat(Math.max(0, width - stringWidth(text)))

/**
 * Figures for a terminal, one a row.
 * @param width columns of the terminal
 */
export function figuresText(readings: readonly FigureReading[], width: number): string {
  if (readings.length === 0) return 'No figure was found on the page.\n'
  const page = Math.max(NARROWEST_PAGE, Math.floor(width))
  const rows = readings.map((reading) => [
    plainText(reading.text ?? '—'),
    howSure(reading),
    reading.box.map((side) => String(Math.round(side))).join(','),
  ])
  const widths = HEADINGS.map((heading, column) =>
    Math.max(stringWidth(heading), ...rows.map((row) => stringWidth(row[column] ?? ''))),
  )
  const lay = (row: readonly string[]): string =>
    row.map((text, column) => padded(text, widths[column] ?? 0)).join(GAP)
  const left = widths.reduce((sum, column) => sum + column + GAP.length, 0)
  const beside = page - left >= NARROWEST_REST
  const indent = beside ? left : 4
  const lines = readings.flatMap((reading, i) => {
    const start = lay(rows[i] ?? [])
    const others = rest(reading)
    const wrapped = others === '' ? [] : wrapText(others, page - indent)
    if (!beside) return [start.trimEnd(), ...wrapped.map((line) => ' '.repeat(indent) + line)]
    const [first = '', ...more] = wrapped
    return [`${start}${GAP}${first}`.trimEnd(), ...more.map((line) => ' '.repeat(indent) + line)]
  })
  const heading = lay(HEADINGS)
  const longest = [heading, ...lines].reduce((most, line) => Math.max(most, stringWidth(line)), 0)
  return `${[
    beside ? `${heading}${GAP}could also be` : heading.trimEnd(),
    '─'.repeat(Math.min(page, longest)),
    ...lines,
  ].join('\n')}\n`
}
