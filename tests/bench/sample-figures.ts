import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { formatFigure } from '../../src/core/quantity/format/format-figure.ts'
import { parseFigure } from '../../src/core/quantity/parse/parse-figure.ts'
import type { TrueLettering } from '../core/reading/judge/score-sheet.ts'

const FOLDER = 'samples/deck-ventilator'

interface Printed {
  readonly sheet: string
  readonly text: string
  readonly box: readonly [number, number, number, number]
}

/** The figures of the sample's first sheet that its job has boxes of: not all that stand on it. */
export function sampleFigures(): { scan: string; width: number; height: number; figures: TrueLettering[] } {
  const job = JSON.parse(readFileSync(join(FOLDER, 'job.json'), 'utf8')) as unknown
  const figures = printedIn(job)
    .filter(({ sheet }) => sheet === 'sheet-1')
    .map(({ text, box: [x, y, width, height] }): TrueLettering => {
      const centre = [x + width / 2, y + height / 2] as const
      return {
        text: formatFigure(parseFigure(text, { unit: 'in' })),
        frame: { centre, width, height },
      }
    })
  return { scan: join(FOLDER, 'scans', 'sheet-1.jpg'), width: 5200, height: 3420, figures }
}

function printedIn(value: unknown): Printed[] {
  if (typeof value !== 'object' || value === null) return []
  const one = value as Partial<Printed>
  const here =
    Array.isArray(one.box) && typeof one.text === 'string' && typeof one.sheet === 'string'
      ? [one as Printed]
      : []
  return [...here, ...Object.values(value).flatMap(printedIn)]
}
