import { type BenchContents, useBench } from '../../bench/bench-store.ts'
import { choose, takeUp } from '../../bench/choose.ts'
import { toTheSheet } from '../../focus/to-the-sheet.ts'
import { MEASURE_WORDS } from '../../guide/pick-sentences.ts'
import type { ReferenceKind, Tool, ToolMeasure } from '../../picking/tool.ts'
import { useLastUsed } from './last-used.ts'
import { viewAtWork } from './view-at-work.ts'

/** The tools of a station that have a key, in the order that they lie there: the digit is their place. */
export const MEASURES = Object.keys(MEASURE_WORDS) as readonly ToolMeasure[]
export const REFERENCES: readonly ReferenceKind[] = ['distance', 'diameter', 'rectangle']
/** Keys of tools that lie elsewhere. */
export const OUTLINE_KEY = '4'
export const HOLES_KEY = '0'
/** All digits are taken. */
export const SLOT_KEY = 'S'
export const NOTE_KEY = '9'
export const SQUARE_UP_KEY = '1'
export const FIGURE_KEY = '1'

/** The digit of a tool, by its place from 0. */
export const keyOf = (place: number): string => String(place + 1)

/** The tool that a digit or letter takes up where one works; null where it takes up none. */
function toolOf(digit: string, bench: BenchContents): Tool | null {
  if (bench.sheet === null) return null
  if (digit === NOTE_KEY) return { kind: 'note' }
  const view = viewAtWork(bench, useLastUsed.getState().view)
  const place = Number(digit) - 1
  switch (bench.station) {
    case 'sheet':
      return digit === SQUARE_UP_KEY ? { kind: 'straighten' } : null
    case 'read':
      return digit === FIGURE_KEY ? { kind: 'figure' } : null
    case 'scale': {
      const reference = REFERENCES[place]
      if (digit === OUTLINE_KEY) return { kind: 'outline' }
      return reference === undefined || view === undefined
        ? null
        : { kind: 'reference', view: view.id, reference }
    }
    case 'pick': {
      const measure = MEASURES[place]
      if (digit === SLOT_KEY && view !== undefined) return slotIn(view.id)
      if (digit === HOLES_KEY && view !== undefined) return throughHoles(view.id)
      return measure === undefined || view === undefined ? null : { kind: 'measure', view: view.id, measure }
    }
    default:
      return null
  }
}

/** The tool for the circle through holes of a view. */
export const throughHoles = (view: string): Tool => ({
  kind: 'measure',
  view,
  measure: 'diameter',
  through: 'holes',
})

/** The tool for a slot of a view. */
export const slotIn = (view: string): Tool => ({ kind: 'measure', view, measure: 'centres', of: 'slot' })

/** Takes up the tool that lies under a digit or letter; false where none does. */
export function takeUpByKey(digit: string): boolean {
  const bench = useBench.getState()
  const tool = bench.opened?.writable === true ? toolOf(digit, bench) : null
  if (tool === null) return false
  takeUpToWork(tool)
  return true
}

/** Takes a tool up and gives the keyboard to the sheet. */
export function takeUpToWork(tool: Tool): void {
  if (tool.kind === 'measure') {
    choose(null)
    useLastUsed.setState({ measure: tool.measure, view: tool.view })
  }
  if (tool.kind === 'reference') useLastUsed.setState({ reference: tool.reference, view: tool.view })
  takeUp(tool)
  toTheSheet()
}
