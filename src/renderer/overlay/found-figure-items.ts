import type { Selection } from '../bench/selection.ts'
import type { Station } from '../bench/stations.ts'
import type { FigureOnSheet } from '../reading/found-figures.ts'
import type { Item, LineType } from './items.ts'

/** What became of a figure that was found is told by its line alone. */
export function lineOfFigure({ state, reading }: Pick<FigureOnSheet, 'state' | 'reading'>): LineType {
  if (state === 'taken') return 'double'
  if (state === 'dismissed') return 'dotted'
  return reading.clear ? 'full' : 'dashed'
}

/** Boxes round what was found to be read, at the station where figures are read; dismissed ones while one is chosen. */
export function foundFigureItems(shown: {
  sheet: string
  station: Station
  selection: Selection | null
  figures?: readonly FigureOnSheet[]
}): Item[] {
  const { sheet, station, selection, figures = [] } = shown
  if (station !== 'read') return []
  return figures.flatMap((figure): Item[] => {
    const { id, reading, state } = figure
    const chosen = selection?.kind === 'found figure' && selection.sheet === sheet && selection.id === id
    if (state === 'dismissed' && !chosen) return []
    const about: Selection = { kind: 'found figure', sheet, id }
    return [{ kind: 'found figure', about, chosen, box: reading.box, line: lineOfFigure(figure) }]
  })
}
