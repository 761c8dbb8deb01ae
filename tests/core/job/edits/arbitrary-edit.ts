import fc from 'fast-check'
import { firstUse } from '../../../../src/core/job/checks/uses.ts'
import type { Edit } from '../../../../src/core/job/edits/edit.ts'
import type { Job } from '../../../../src/core/job/model/types.ts'
import { picksOf } from '../../../../src/core/job/picks/picks-of.ts'
import {
  anyPixel,
  type Draw,
  dimension,
  evidence,
  later,
  length,
  mark,
  maybeBy,
  oneOf,
  pickedAgain,
  reference,
  relationText,
  some,
  sometimes,
} from '../arbitrary-job.ts'

/** Sets and clears of fields, mostly sound: some known, some of a later version. */
function change(draw: Draw, set: Record<string, unknown>, clear: string[] = []): object {
  const cleared = clear.filter(() => sometimes(draw))
  const kept = Object.fromEntries(
    Object.entries({ ...set, ...later(draw) }).filter(([key]) => sometimes(draw) && !cleared.includes(key)),
  )
  return { set: kept, clear: [...cleared, ...(some(draw, 5) === 0 && !('zz' in kept) ? ['zz'] : [])] }
}

const MAKERS: Record<Edit['do'], (draw: Draw, job: Job, fresh: string) => object | undefined> = {
  describe: (draw) =>
    change(draw, { title: draw(fc.string), unit: 'mm', tolerance: '±1/64"' }, ['tolerance', 'gauge']),
  'add-person': (draw, job, id) => {
    const themselves = sometimes(draw) ? { by: id, at: '2026-03-09T10:05:00Z' } : maybeBy(draw, job)
    return { item: { id, name: 'Cass', ...themselves, ...later(draw) }, index: 0 }
  },
  'change-person': (draw, job) => ({
    id: oneOf(draw, job.people)?.id,
    ...change(draw, { name: 'Dot', role: 'restorer' }, ['role', 'by', 'at']),
  }),
  'remove-person': (draw, job) => ({ id: oneOf(draw, job.people)?.id }),
  'add-instrument': (draw, job, id) => ({
    item: { id, name: 'rule', resolution: length(draw), ...maybeBy(draw, job) },
  }),
  'change-instrument': (draw, job) => ({
    id: oneOf(draw, job.instruments)?.id,
    ...change(draw, { limit: length(draw), resolution: length(draw) }, ['limit', 'note']),
  }),
  'remove-instrument': (draw, job) => ({ id: oneOf(draw, job.instruments)?.id }),
  'add-sheet': (draw, _, id) => ({
    item: {
      id,
      title: 'Details',
      record: {},
      scan: { file: `${id}.png`, sha256: '', page: 1, width: 9, height: 9, ...later(draw) },
    },
  }),
  'change-sheet': (draw, job) => ({
    id: oneOf(draw, job.sheets)?.id,
    ...change(
      draw,
      { title: draw(fc.string), record: { date: '1911' }, draughting: '0.2 mm', paper: '1 %' },
      ['draughting', 'paper'],
    ),
  }),
  'remove-sheet': (draw, job) => {
    // Nearly each is in use: one that is not is looked for, or hardly any would be removed.
    const idle = job.sheets.filter(({ id }) => firstUse(job, 'sheet', id) === null)
    return { id: oneOf(draw, sometimes(draw) && idle.length > 0 ? idle : job.sheets)?.id }
  },
  'add-view': (draw, job, id) => {
    const sheet = oneOf(draw, job.sheets)?.id
    if (sheet === undefined) return undefined
    const first = reference(draw, job, { sheet }, 'R1')
    const references = first ? [first] : []
    return { item: { id, sheet, name: 'Plan', ...maybeBy(draw, job), mapping: 'uniform', references } }
  },
  'change-view': (draw, job) => ({
    id: oneOf(draw, job.views)?.id,
    ...change(draw, { mapping: 'two-axis', grain: 0.5, drawnScale: 0.25 }, [
      'grain',
      'drawnScale',
      'outline',
      'by',
    ]),
  }),
  'remove-view': (draw, job) => ({ id: oneOf(draw, job.views)?.id }),
  'add-mark': (draw, job, id) => {
    const item = mark(draw, job, id)
    return item && { item, index: some(draw, job.marks.length) }
  },
  'change-mark': (draw, job) => {
    const before = oneOf(draw, job.marks)
    const id = before?.id
    switch (some(draw, 5)) {
      case 0:
        return { id, set: { kind: 'point', pixel: anyPixel(draw) }, clear: ['pixels'] }
      case 1:
        return before && { id, set: { picks: picksOf(pickedAgain(draw, job, before)) } }
      case 2:
        return {
          id,
          ...change(draw, { pixel: anyPixel(draw), sitting: 'forenoon' }, ['picks', 'repeatedBy']),
        }
      default:
        return {
          id,
          ...change(draw, { sigma: 1.5, label: 'rivet', how: 'hand' }, ['label', 'by', 'repeats']),
        }
    }
  },
  'remove-mark': (draw, job) => ({ id: oneOf(draw, job.marks)?.id }),
  'repeat-pick': (draw, job) => ({
    mark: oneOf(draw, job.marks)?.id,
    pixel: anyPixel(draw),
    ...(sometimes(draw) ? { sitting: 'afternoon', how: 'hand', sigma: 0.5 } : {}),
    ...maybeBy(draw, job),
  }),
  'add-dimension': (draw, job, id) => ({
    item: dimension(draw, job, sometimes(draw) ? `d_${id}` : 'dim_new', job.dimensions.length),
    index: some(draw, job.dimensions.length),
  }),
  'change-dimension': (draw, job) => ({
    name: oneOf(draw, job.dimensions)?.name,
    ...change(draw, { label: draw(fc.string), count: 3, kind: 'length' }, [
      'count',
      'tolerance',
      'adoptedBy',
    ]),
  }),
  'remove-dimension': (draw, job) => ({
    name: oneOf(draw, job.dimensions)?.name,
    ...(sometimes(draw) ? { undo: true } : {}),
  }),
  'move-dimension': (draw, job) => ({
    name: oneOf(draw, job.dimensions)?.name,
    index: some(draw, job.dimensions.length),
  }),
  'move-sheet': (draw, job) => ({
    id: oneOf(draw, job.sheets)?.id,
    index: some(draw, job.sheets.length),
  }),
  'rename-dimension': (draw, job, id) => ({
    name: oneOf(draw, job.dimensions)?.name,
    to: oneOf(draw, ['dim_new', 'nobody_knows', `d_${id}`, job.dimensions[0]?.name]),
  }),
  adopt: (draw, job) => {
    const one = oneOf(draw, job.dimensions)
    const adopt = oneOf(draw, [undefined, 'printed', 'mean', oneOf(draw, one?.evidence ?? [])?.id])
    return { dimension: one?.name, ...(adopt === undefined ? {} : { adopt, ...maybeBy(draw, job) }) }
  },
  'add-evidence': (draw, job, id) => {
    const at = some(draw, Math.max(0, job.dimensions.length - 1))
    const one = job.dimensions[at]
    const item = one && evidence(draw, job, one, at, id)
    return item && { dimension: one.name, item, index: some(draw, one.evidence.length) }
  },
  'change-evidence': (draw, job) => {
    const one = oneOf(draw, job.dimensions)
    const id = oneOf(draw, one?.evidence ?? [])?.id
    return {
      dimension: one?.name,
      id,
      ...change(draw, { note: draw(fc.string), text: '3/8' }, ['note', 'by']),
    }
  },
  'withdraw-evidence': (draw, job) => {
    const one = oneOf(draw, job.dimensions)
    const id = oneOf(draw, one?.evidence ?? [])?.id
    return { dimension: one?.name, id, why: 'not to scale', ...maybeBy(draw, job) }
  },
  'reinstate-evidence': (draw, job) => {
    const one = oneOf(draw, job.dimensions)
    return { dimension: one?.name, id: oneOf(draw, one?.evidence ?? [])?.id }
  },
  'remove-evidence': (draw, job) => {
    const one = oneOf(draw, job.dimensions)
    return { dimension: one?.name, id: oneOf(draw, one?.evidence ?? [])?.id, undo: true }
  },
  'add-reference': (draw, job, id) => {
    const view = oneOf(draw, job.views)
    const item = view && reference(draw, job, view, id)
    return item && { view: view.id, item, index: some(draw, view.references.length) }
  },
  'change-reference': (draw, job) => {
    const view = oneOf(draw, job.views)
    const id = oneOf(draw, view?.references ?? [])?.id
    return { view: view?.id, id, ...change(draw, { u: length(draw), ...maybeBy(draw, job) }, ['u', 'by']) }
  },
  'remove-reference': (draw, job) => {
    const view = oneOf(draw, job.views)
    return { view: view?.id, id: oneOf(draw, view?.references ?? [])?.id }
  },
  'dismiss-figure': (draw, job) => {
    const sheet = oneOf(draw, job.sheets)
    return {
      sheet: sheet?.id,
      item: {
        box: [some(draw, 5), 2, 3, 4],
        ...(sometimes(draw) ? { read: { text: draw(fc.string), probability: 0.5 } } : {}),
        ...maybeBy(draw, job),
        ...later(draw),
      },
      index: some(draw, sheet?.dismissed?.length ?? 0),
    }
  },
  'recall-figure': (draw, job) => {
    const sheet = oneOf(draw, job.sheets)
    return { sheet: sheet?.id, box: oneOf(draw, sheet?.dismissed ?? [])?.box }
  },
  'add-relation': (draw, job, id) => ({ item: { id, text: relationText(draw, job), ...later(draw) } }),
  'change-relation': (draw, job) => ({
    id: oneOf(draw, job.relations)?.id,
    ...change(draw, { text: relationText(draw, job), u: length(draw) }, ['u']),
  }),
  'remove-relation': (draw, job) => ({ id: oneOf(draw, job.relations)?.id }),
  'add-note': (draw, job, id) => ({
    item: { id, sheet: oneOf(draw, job.sheets)?.id, outline: [anyPixel(draw)], text: draw(fc.string) },
    index: 0,
  }),
  'change-note': (draw, job) => ({
    id: oneOf(draw, job.notes)?.id,
    ...change(draw, { text: draw(fc.string), about: 'dim_new' }, ['about', 'by']),
  }),
  'remove-note': (draw, job) => ({ id: oneOf(draw, job.notes)?.id }),
  several: (draw, job, fresh) => {
    const edits = Array.from({ length: 1 + some(draw, 3) }, (_, i) =>
      anyEdit(draw, job, `${fresh}${i}`, SIMPLE),
    )
    return { name: 'a batch', edits: edits.filter((edit) => edit !== undefined) }
  },
}

export const ALL_EDITS = Object.keys(MAKERS) as Edit['do'][]
const SIMPLE = ALL_EDITS.filter((word) => word !== 'several')

/** An edit that suits the job more often than not; undefined when nothing of that kind could. */
export function anyEdit(draw: Draw, job: Job, fresh: string, among = ALL_EDITS): Edit | undefined {
  const word = oneOf(draw, among) ?? 'describe'
  const made = MAKERS[word](draw, job, fresh)
  return made && ({ do: word, ...made } as unknown as Edit)
}
