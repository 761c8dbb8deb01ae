import type { OnSheet } from '../../../core/job/sheets/on-sheet.ts'

/** How many names stand in one line. */
const MOST = 12

const listed = (names: readonly string[]): string => {
  const shown = names.slice(0, MOST).join(', ')
  return names.length > MOST ? `${shown} and ${names.length - MOST} more` : shown
}

const counted = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`

/** What goes with a sheet, by name and number, one line for each kind. */
export function goesInWords({ views, marks, notes, evidence }: OnSheet): string[] {
  const dimensions = [...new Set(evidence.map(({ dimension }) => dimension))]
  const figured = views.flatMap(({ references }) => references)
  const lines: [number, string][] = [
    [views.length, `${counted(views.length, 'view', 'views')}: ${listed(views.map(({ name }) => name))}`],
    [figured.length, counted(figured.length, 'figured size', 'figured sizes')],
    [marks.length, counted(marks.length, 'mark', 'marks')],
    [
      evidence.length,
      `${counted(evidence.length, 'piece', 'pieces')} of evidence of ${counted(dimensions.length, 'dimension', 'dimensions')}: ${listed(dimensions)}`,
    ],
    [
      notes.length,
      `${counted(notes.length, 'note', 'notes')}: ${listed(notes.map(({ text }) => `“${brief(text)}”`))}`,
    ],
  ]
  return lines.flatMap(([count, line]) => (count === 0 ? [] : [line]))
}

const brief = (text: string): string => (text.length > 40 ? `${text.slice(0, 39)}…` : text)
