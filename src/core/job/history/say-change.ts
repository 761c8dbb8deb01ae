import { distanceBetween } from '../../geometry/distance-between.ts'
import type { Pixel } from '../../geometry/frames.ts'
import { type CoreReason, reason } from '../../words/core-words.ts'
import type { Change, ChangedField, Thing } from './change.ts'
import type { HistoryEntry } from './history-of.ts'
import type { ThingNames } from './known-names.ts'
import { type WrittenValue, writtenFields, writtenValue } from './written-field.ts'

function told({ kind, id, of = '' }: Thing, names: ThingNames): CoreReason {
  const name = names.nameOf({ kind, id })
  switch (kind) {
    case 'job':
      return reason('thing.job')
    case 'person':
      return reason('thing.person', { name, within: '' })
    case 'view':
      return reason('thing.view', { name, within: '' })
    case 'sheet':
      return reason('thing.sheet', { name, within: '' })
    case 'instrument':
      return reason('thing.instrument', { name, within: '' })
    case 'evidence':
      return reason('thing.evidence', { name, within: of })
    case 'reference':
      return reason('thing.reference', { name, within: names.nameOf({ kind: 'view', id: of }) })
    default:
      return reason('thing.by-name', { name, within: '' })
  }
}

/** The values of what came or went, by field. */
function valuesIn({ fields }: Change, names: ThingNames): (field: string) => WrittenValue | null {
  return (wanted) => {
    const found = fields.find(({ field }) => field === wanted)
    return found === undefined ? null : writtenValue(wanted, found.after ?? found.before, names)
  }
}

const text = (value: WrittenValue | null): string => (typeof value === 'string' ? value : '')

/** What a thing that came or went says: a figure as it is written, a size, a formula. */
function saysOf(change: Change, names: ThingNames): WrittenValue | null {
  const value = valuesIn(change, names)
  switch (change.thing.kind) {
    case 'dimension':
      return value('label')
    case 'instrument':
      return value('resolution')
    case 'relation':
    case 'note':
      return value('text')
    case 'reference':
      return value('kind') === 'rectangle'
        ? `${text(value('width'))} × ${text(value('height'))}`
        : value('size')
    case 'evidence':
      return value('basis') === 'scaled'
        ? reason('value.scaled', {
            measure: text(value('measure')),
            marks: text(value('marks')),
            view: text(value('view')),
          })
        : (value('text') ?? value('readings') ?? value('formula'))
    default:
      return null
  }
}

const fieldIn = (fields: readonly ChangedField[], name: string): Partial<ChangedField> =>
  fields.find(({ field }) => field === name) ?? {}

function sayAdoption({ fields, thing }: Change, names: ThingNames): CoreReason {
  const adopt = fieldIn(fields, 'adopt')
  const by = fieldIn(fields, 'adoptedBy').before
  const rule = text(writtenValue('adopt', adopt.before, names))
  const before =
    adopt.before === undefined
      ? null
      : typeof by === 'string'
        ? reason('value.adopted-by', { adopt: rule, by: names.nameOf({ kind: 'person', id: by }) })
        : rule
  const called = told(thing, names)
  return adopt.after === undefined
    ? reason('history.left-to-the-rules', { thing: called, before })
    : reason('history.adopted', {
        thing: called,
        adopt: text(writtenValue('adopt', adopt.after, names)),
        before,
      })
}

const points = (place: unknown): Pixel[] => {
  if (!Array.isArray(place)) return []
  return (typeof place[0] === 'number' ? [place] : place) as Pixel[]
}

/** How far a mark was moved, at most; null where it is made of other points. */
function distanceMoved({ before, after }: Partial<ChangedField>): number | null {
  const [from, to] = [points(before), points(after)]
  if (from.length !== to.length) return null
  return Math.max(0, ...from.map((point, i) => distanceBetween(point, to[i] ?? point)))
}

/** Who picked a mark, when and in which sitting. */
const SIGNATURE: ReadonlySet<string> = new Set(['by', 'at', 'sitting'])

function sayMove(change: Change, names: ThingNames): CoreReason {
  const { thing, fields } = change
  const called = told(thing, names)
  if (thing.kind === 'dimension') {
    const { before, after } = fieldIn(fields, 'index')
    const row = (index: unknown): number => Number(index) + 1
    return reason('history.moved-row', {
      thing: called,
      before: before === undefined ? null : row(before),
      after: row(after ?? before),
    })
  }
  const place = fields.find(({ field }) => field === 'pixel' || field === 'pixels')
  const distance = distanceMoved(place ?? {})
  if (distance === null)
    return reason('history.changed', { thing: called, fields: writtenFields(fields, names) })
  // Whoever moves a mark has picked it: that is told already.
  const others = fields.filter((one) => one !== place && !SIGNATURE.has(one.field))
  const rest = writtenFields(others, names)
  return reason('history.moved', { thing: called, distance, fields: rest })
}

/** What was done to a thing, in words that go on from the name of who did it. */
export function sayChange(change: Change, names: ThingNames): CoreReason {
  const { thing, verb, fields } = change
  const called = told(thing, names)
  const before = (field: string): string | null => {
    const value = writtenValue(field, fieldIn(fields, field).before, names)
    return value === null ? null : text(value)
  }
  switch (verb) {
    case 'added':
      return reason(thing.kind === 'mark' ? 'history.picked' : 'history.added', {
        thing: called,
        says: saysOf(change, names),
      })
    case 'removed':
      return reason('history.removed', { thing: called, says: saysOf(change, names) })
    case 'changed':
      return reason('history.changed', { thing: called, fields: writtenFields(fields, names) })
    case 'adopted':
      return sayAdoption(change, names)
    case 'withdrawn': {
      const why = text(writtenValue('withdrawn', fieldIn(fields, 'withdrawn').after, names))
      return reason('history.withdrew', { thing: called, why, before: before('withdrawn') })
    }
    case 'reinstated':
      return reason('history.reinstated', { thing: called, before: before('withdrawn') })
    case 'renamed':
      return reason('history.renamed', { before: before('name') ?? thing.id, after: thing.id })
    case 'moved':
      return sayMove(change, names)
    case 'picked again':
      return reason('history.picked-again', { thing: called })
  }
}

/** What was done at one time, one thing after the other; of what was taken back or made again that it was so. */
export function sayEntry(
  { changes, undoes, redoes }: Pick<HistoryEntry, 'changes' | 'undoes' | 'redoes'>,
  names: ThingNames,
): CoreReason[] {
  return changes.map((change) => {
    const what = sayChange(change, names)
    if (undoes !== undefined) return reason('history.took-back', { n: undoes.n, what })
    return redoes === undefined ? what : reason('history.made-again', { n: redoes.n, what })
  })
}
