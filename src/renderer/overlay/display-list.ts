import type { Pixel } from '../../core/geometry/frames.ts'
import { FROM_FIGURES, spreadOf, statedValue } from '../../core/handoff/table/stated-value.ts'
import type { Dimension, FoundOn, Job, Mark, Reference, View } from '../../core/job/model/types.ts'
import { firstPlaces, picksOf, placesOf } from '../../core/job/picks/picks-of.ts'
import type { Table, TableRow } from '../../core/ledger/table/table.ts'
import { plainText } from '../../core/words/plain-text.ts'
import type { Selection } from '../bench/selection.ts'
import type { Shows } from '../bench/shows.ts'
import type { Station } from '../bench/stations.ts'
import { roundWords } from '../picking/round-words.ts'
import type { FigureOnSheet } from '../reading/found-figures.ts'
import { foundFigureItems } from './found-figure-items.ts'
import type { Item, LineType } from './items.ts'
import { lanesOf } from './lanes.ts'
import { noteItems } from './notes-items.ts'
import { onlyShown } from './only-shown.ts'
import { givesAway } from './out-of-sight.ts'
import { enlarged, enlargement, isSeen, type Residual, residualsOf } from './residuals.ts'
import { type MarkShape, mean, shapeOf } from './shape.ts'
import { type SizeSpan, spanOf } from './span.ts'
import { linesUnderTitle } from './view-title.ts'

const LINE_TYPES: Record<NonNullable<TableRow['basis']>, LineType> = {
  printed: 'full',
  scaled: 'dashed',
  found: 'double',
  derived: 'dotted',
  mean: 'full and dashed',
}

interface Shown {
  job: Job
  table: Table | null
  sheet: string
  station: Station
  selection: Selection | null
  /** A mark that is being picked again, without sight of it; null when none is. */
  hidden?: string | null
  /** How much of it a person wants to see; all unless said otherwise. */
  shows?: Shows
  /** What was read on the sheet; nothing unless said otherwise. */
  figures?: readonly FigureOnSheet[]
  /** The view at work, by its id; null when there is none. */
  view?: string | null
}

/** Everything that is drawn over a sheet at a station, what is chosen last and so on top. */
export function displayList(shown: Shown): Item[] {
  const { job, sheet, station } = shown
  const shapes = new Map<string, MarkShape>()
  for (const mark of job.marks) {
    const shape = mark.sheet === sheet ? shapeOf(mark) : null
    if (shape !== null) shapes.set(mark.id, shape)
  }
  const views = job.views.filter((view) => view.sheet === sheet)
  const items = [
    ...views.flatMap((view) => viewItems(view, shapes, shown)),
    ...withLanes([
      ...views.flatMap((view) => referenceSizes(view, shapes, shown)),
      ...job.dimensions.flatMap((dimension) => dimensionItems(dimension, shapes, shown)),
    ]),
    ...markItems(shapes, shown),
  ]
  const wanted = station === 'sheet' ? items.filter((item) => item.kind === 'view' || item.chosen) : items
  const { hidden = null } = shown
  const { shows = 'all', view = null } = shown
  const all = onlyShown([...wanted, ...foundFigureItems(shown), ...noteItems(shown)], {
    job,
    shows,
    view,
  }).filter((item) => hidden === null || !givesAway(item, hidden, job))
  return [...all.filter(({ chosen }) => !chosen), ...all.filter(({ chosen }) => chosen)]
}

function withLanes(items: Item[]): Item[] {
  const sizes = items.filter((item) => item.kind === 'size')
  const lanes = lanesOf(sizes.map(({ span }) => span))
  const laneOf = new Map<Item, number>(sizes.map((size, i) => [size, lanes[i] ?? 0]))
  return items.map((item) => (item.kind === 'size' ? { ...item, lane: laneOf.get(item) ?? 0 } : item))
}

const shapesOf = (ids: readonly string[], shapes: ReadonlyMap<string, MarkShape>): MarkShape[] | null => {
  const found = ids.map((id) => shapes.get(id))
  return found.every((shape) => shape !== undefined) ? found : null
}

function viewItems(view: View, shapes: ReadonlyMap<string, MarkShape>, shown: Shown): Item[] {
  const { selection, station, table } = shown
  const found = table?.views.find(({ id }) => id === view.id)
  const chosen = selection?.kind === 'view' && selection.id === view.id
  const residuals: (Residual & { about: Selection; chosen: boolean })[] = []
  if (station === 'scale') {
    for (const reference of view.references) {
      const ends = shapesOf(reference.marks, shapes)
      const rows = found?.references.filter(({ id }) => id === reference.id) ?? []
      if (ends === null) continue
      const about: Selection = { kind: 'reference', view: view.id, id: reference.id }
      for (const residual of residualsOf(reference, ends, rows)) {
        residuals.push({ ...residual, about, chosen: isChosen(about, selection) })
      }
    }
  }
  const larger = enlargement(residuals)
  const title: Item[] =
    view.outline === undefined
      ? []
      : [
          {
            kind: 'view',
            about: { kind: 'view', id: view.id },
            chosen,
            outline: view.outline,
            title: plainText(view.name),
            lines: linesUnderTitle({
              view,
              found,
              factor: residuals.some(isSeen) ? larger.factor : null,
              unit: shown.job.unit,
              chosen,
            }),
          },
        ]
  return [
    ...title,
    ...residuals.map((residual): Item => {
      const { at, wrong, about, chosen } = residual
      const { vector, cut } = enlarged(residual, larger)
      return {
        kind: 'residual',
        at,
        vector,
        wrong: wrong !== '',
        word: cut ? 'longer than shown' : '',
        about,
        chosen,
      }
    }),
  ]
}

/** Whether there is anything of a residual to be seen, however it is enlarged. */
function isChosen(about: Selection, selection: Selection | null): boolean {
  if (selection?.kind !== about.kind) return false
  if (about.kind === 'dimension') return selection.kind === 'dimension' && selection.name === about.name
  if (about.kind === 'reference') {
    return selection.kind === 'reference' && selection.view === about.view && selection.id === about.id
  }
  return selection.kind === about.kind && selection.id === about.id
}

const insideOf = (view: View | undefined): Pixel | null =>
  view?.outline === undefined || view.outline.length === 0 ? null : mean(view.outline)

function referenceSizes(view: View, shapes: ReadonlyMap<string, MarkShape>, shown: Shown): Item[] {
  const rows = shown.table?.views.find(({ id }) => id === view.id)?.references ?? []
  return view.references.flatMap((reference) => {
    const about: Selection = { kind: 'reference', view: view.id, id: reference.id }
    const chosen = isChosen(about, shown.selection)
    const marks = shapesOf(reference.marks, shapes)
    if (marks === null || !(chosen || shown.station === 'scale' || shown.station === 'pick')) return []
    const own = rows.filter(({ id }) => id === reference.id)
    const wrong = own.some((row) => row.setAside === true)
      ? 'set aside'
      : own.some((row) => row.suspect)
        ? 'suspect'
        : ''
    return sizesOf(reference, marks).map(
      ({ span, text }): Item => ({
        kind: 'size',
        about,
        chosen,
        span,
        text: plainText(text),
        line: 'full',
        known: true,
        wrong,
        lane: 0,
        view: view.id,
        inside: insideOf(view),
      }),
    )
  })
}

function sizesOf(reference: Reference, marks: readonly MarkShape[]): { span: SizeSpan; text: string }[] {
  const some = (span: SizeSpan | null, text: string) => (span === null ? [] : [{ span, text }])
  const [a, b, c] = marks
  switch (reference.kind) {
    case 'distance':
      return some(spanOf('distance', marks), reference.size)
    case 'diameter':
      return some(spanOf('diameter', marks), reference.size)
    case 'rectangle':
      if (a === undefined || b === undefined || c === undefined) return []
      return [
        ...some(spanOf('distance', [a, b]), reference.width),
        ...some(spanOf('distance', [b, c]), reference.height),
      ]
  }
}

function dimensionItems(dimension: Dimension, shapes: ReadonlyMap<string, MarkShape>, shown: Shown): Item[] {
  const { job, table, station, selection, sheet } = shown
  const about: Selection = { kind: 'dimension', name: dimension.name }
  const chosen = isChosen(about, selection)
  if (!chosen && station !== 'pick') return []
  const row = table?.rows.find(({ name }) => name === dimension.name)
  const usable = dimension.evidence.filter(({ withdrawn }) => withdrawn === undefined)
  const scaled = usable
    .filter((piece) => piece.basis === 'scaled')
    .flatMap((piece): Item[] => {
      const marks = shapesOf(piece.marks, shapes)
      const span = marks === null ? null : spanOf(piece.measure, marks)
      if (span === null) return []
      return [
        {
          kind: 'size',
          about,
          chosen,
          span,
          text: figureText(row, chosen, table),
          line: row?.basis ? LINE_TYPES[row.basis] : 'dashed',
          known: false,
          wrong: row?.status === 'disputed' ? 'disputed' : '',
          lane: 0,
          view: piece.view,
          inside: insideOf(job.views.find(({ id }) => id === piece.view)),
        },
      ]
    })
  const boxes = chosen
    ? usable.flatMap((piece): Item[] =>
        piece.basis === 'printed' && piece.sheet === sheet && piece.box !== undefined
          ? [{ kind: 'figure box', about, chosen, box: piece.box }]
          : [],
      )
    : []
  return [...(chosen ? scaled : scaled.slice(0, 1)), ...boxes]
}

function figureText(row: TableRow | undefined, chosen: boolean, table: Table | null): string {
  if (row === undefined || table === null) return ''
  if (row.value === null) return ''
  // Nothing that was measured stands on the sheet without its ±.
  return chosen
    ? statedValue(row, table.unit)
    : `${plainText(row.written)}${spreadOf(row, row.kind, table.unit)}${row.figured === true ? FROM_FIGURES : ''}`
}

function markItems(shapes: ReadonlyMap<string, MarkShape>, { job, station, selection }: Shown): Item[] {
  const ofSelection = new Set(chosenMarks(job, selection))
  const ofReferences = new Set(
    job.views.flatMap(({ references }) => references.flatMap(({ marks }): string[] => marks)),
  )
  const marks = new Map(job.marks.map((mark) => [mark.id, mark]))
  return [...shapes].flatMap(([id, shape]): Item[] => {
    const chosen = ofSelection.has(id)
    const here = station === 'pick' || (station === 'scale' && ofReferences.has(id))
    if (!chosen && !here) return []
    const mark = marks.get(id)
    const edge = mark?.stroke === undefined ? '' : edgeInWords(mark.stroke)
    const item: Item = {
      kind: 'mark',
      about: { kind: 'mark', id },
      chosen,
      shape,
      ...(edge === '' ? {} : { edge }),
    }
    const open = selection?.kind === 'mark' && chosen ? mark : undefined
    return [open === undefined ? item : { ...item, ...whatItIsFrom(open) }]
  })
}

/** The edge of its stroke that a mark lies on; empty where it lies along the middle. */
const edgeInWords = ({ as, reading }: FoundOn): string =>
  reading === 'centre' ? '' : as === 'circle' || as === 'arc' ? roundWords(reading) : 'edge'

/** What a mark whose card is open was found from, and where it was picked again. */
function whatItIsFrom(mark: Mark): Pick<Item & { kind: 'mark' }, 'profiles' | 'again'> {
  const { stroke } = mark
  const kept = mark.kind === 'point' || stroke === undefined ? [] : firstPlaces(mark)
  return {
    ...(stroke === undefined ? {} : { profiles: { kept, leftOut: stroke.leftOut ?? [] } }),
    ...(picksOf(mark).length === 1 ? {} : { again: again(mark) }),
  }
}

/** Every pick of a point, or every point of the later picks of anything else. */
const again = (mark: Mark): Pixel[] =>
  picksOf(mark)
    .slice(mark.kind === 'point' ? 0 : 1)
    .flatMap((pick) => [...placesOf(pick)])

function chosenMarks(job: Job, selection: Selection | null): readonly string[] {
  switch (selection?.kind) {
    case 'mark':
      return [selection.id]
    case 'dimension':
      return (
        job.dimensions
          .find(({ name }) => name === selection.name)
          ?.evidence.flatMap((piece) => (piece.basis === 'scaled' ? piece.marks : [])) ?? []
      )
    case 'reference':
      return (
        job.views.find(({ id }) => id === selection.view)?.references.find(({ id }) => id === selection.id)
          ?.marks ?? []
      )
    default:
      return []
  }
}
