import { type CoreReason, reason } from '../../words/core-words.ts'
import { plainText } from '../../words/plain-text.ts'
import { mintedFor } from '../ids/id-form.ts'
import { SIGNATURE } from '../model/signature-fields.ts'
import type { DismissedFigure } from '../model/types.ts'
import { calledOf } from '../names/called-of.ts'
import type { AdoptedFrom, Change, ChangedField, Thing } from './change.ts'
import type { Fields } from './changed-fields.ts'
import { isSame } from './changed-fields.ts'
import type { HistoryEntry } from './history-of.ts'
import type { ThingNames } from './known-names.ts'
import { farthestApart, pickDistance, pixelsIn } from './pick-distance.ts'
import { changeOfPicks } from './picks-changed.ts'
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
function valuesIn({ thing, fields }: Change, names: ThingNames): (field: string) => WrittenValue | null {
  return (wanted) => {
    const found = fields.find(({ field }) => field === wanted)
    return found === undefined ? null : writtenValue(thing.kind, wanted, found.after ?? found.before, names)
  }
}

/** What a piece of evidence says. */
const evidenceSays = (fields: Fields, names: ThingNames): WrittenValue | null =>
  saysOf('evidence', (field) => writtenValue('evidence', field, fields[field], names))

/** A piece of evidence that the rules come to first, a figure with what it says. */
function cameFirst(
  { id, fields }: NonNullable<AdoptedFrom['first']>[number],
  names: ThingNames,
): WrittenValue {
  const name = names.nameOf({ kind: 'evidence', id })
  const says = fields['basis'] === 'printed' ? evidenceSays(fields, names) : null
  return says === null ? name : reason('value.with-figure', { name, says })
}

/** What governed before somebody chose. */
const byTheRules = (from: AdoptedFrom, names: ThingNames): CoreReason =>
  reason('value.by-the-rules', { first: from.first?.map((one) => cameFirst(one, names)) ?? null })

const text = (value: WrittenValue | null): string => (typeof value === 'string' ? value : '')

/** What a thing says by its fields: a figure as it is written, a size, a formula. */
function saysOf(kind: Thing['kind'], value: ReturnType<typeof valuesIn>): WrittenValue | null {
  switch (kind) {
    case 'dimension':
      return value('label')
    case 'instrument':
      return value('resolution')
    case 'relation':
      return value('text')
    case 'view': {
      const scale = value('drawnScale')
      return scale === null ? null : reason('value.stated-scale', { scale: text(scale) })
    }
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

/** What a note says, of what and where. */
function noteSays({ thing, fields }: Change, names: ThingNames): CoreReason {
  const held = (field: string): string => {
    const { before, after } = fieldIn(fields, field)
    return text(writtenValue(thing.kind, field, after ?? before, names))
  }
  const { before, after } = fieldIn(fields, 'about')
  const id = String(after ?? before ?? '')
  const kind = mintedFor(id)
  const about = kind === undefined ? held('about') : calledOf(kind, names.nameOf({ kind, id }))
  return reason('value.note', { text: held('text'), about, sheet: held('sheet') })
}

/** What came or went says. */
const says = (change: Change, names: ThingNames): WrittenValue | null =>
  change.thing.kind === 'note' ? noteSays(change, names) : saysOf(change.thing.kind, valuesIn(change, names))

const fieldIn = (fields: readonly ChangedField[], name: string): Partial<ChangedField> =>
  fields.find(({ field }) => field === name) ?? {}

function sayAdoption({ fields, thing, from }: Change, names: ThingNames): CoreReason {
  const adopt = fieldIn(fields, 'adopt')
  const by = fieldIn(fields, 'adoptedBy').before
  const written = (value: unknown): string => text(writtenValue('dimension', 'adopt', value, names))
  const rule = written(adopt.before)
  const before =
    adopt.before === undefined
      ? from && adopt.after !== undefined
        ? byTheRules(from, names)
        : null
      : typeof by === 'string'
        ? reason('value.adopted-by', { adopt: rule, by: names.nameOf({ kind: 'person', id: by }) })
        : rule
  const called = told(thing, names)
  return adopt.after === undefined
    ? reason('history.left-to-the-rules', { thing: called, before })
    : reason('history.adopted', {
        thing: called,
        adopt: written(adopt.after),
        says: from?.adopted === undefined ? null : evidenceSays(from.adopted, names),
        before,
      })
}

const placeIn = (fields: readonly ChangedField[]): ChangedField | undefined =>
  fields.find(({ field }) => field === 'pixel' || field === 'pixels')

/** That a mark was picked again: where, of a point, and how far from the pick before. */
function sayPickedAgain({ thing, fields }: Change, names: ThingNames): CoreReason {
  const { before, after } = placeIn(fields) ?? {}
  const [from, to] = [pixelsIn(before), pixelsIn(after)]
  const [at] = to
  return reason('history.picked-again', {
    thing: told(thing, names),
    at: at === undefined || to.length > 1 ? null : `${at[0].toFixed(1)}, ${at[1].toFixed(1)} px`,
    off: pickDistance(names.kindOfMark(thing.id), from, to),
  })
}

/** Fields but for the signature that goes along with a change; that is told where it is all that was changed. */
function besidesSignature(fields: readonly ChangedField[]): readonly ChangedField[] {
  const others = fields.filter(({ field }) => !SIGNATURE.has(field))
  return others.length === 0 ? fields : others
}

/** That fields were changed, written as they were before, or picks added or taken back. */
function sayChanged({ thing, fields }: Change, names: ThingNames): CoreReason {
  const said = besidesSignature(fields)
  const called = told(thing, names)
  const picks = thing.kind === 'mark' ? changeOfPicks(said) : null
  if (picks?.again !== undefined)
    return sayPickedAgain({ thing, verb: 'picked again', fields: [picks.again] }, names)
  if (picks !== null) return reason('history.took-back-picks', { thing: called, ...picks })
  const isAgain = said.every(({ before, after }) => isSame(before, after))
  if (!isAgain)
    return reason('history.changed', { thing: called, fields: writtenFields(thing.kind, said, names) })
  const again = said.map(({ field, after }) => {
    const [only] = writtenFields(thing.kind, [{ field, before: after, after }], names)
    return only ?? reason('history.field-only', { kind: thing.kind, field })
  })
  return reason('history.wrote-again', { thing: called, fields: again })
}

const inPixels = ([x, y]: readonly [number, number]): string => `${x.toFixed(1)}, ${y.toFixed(1)}`

function sayMove(change: Change, names: ThingNames): CoreReason {
  const { thing, fields } = change
  const called = told(thing, names)
  if (thing.kind === 'dimension' || thing.kind === 'sheet') {
    const { before, after } = fieldIn(fields, 'index')
    const row = (index: unknown): number => Number(index) + 1
    return reason(thing.kind === 'sheet' ? 'history.moved-sheet' : 'history.moved-row', {
      thing: called,
      before: before === undefined ? null : row(before),
      after: row(after ?? before),
    })
  }
  const place = placeIn(fields)
  const [from, to] = [pixelsIn(place?.before), pixelsIn(place?.after)]
  const distance = farthestApart(from, to)
  // Whoever moves a mark has picked it: that is told already.
  const said = besidesSignature(fields)
  if (distance === null)
    return reason('history.changed', { thing: called, fields: writtenFields(thing.kind, said, names) })
  const others = said.filter((one) => one !== place)
  const rest = writtenFields(thing.kind, others, names)
  const [start, end] = place?.field === 'pixel' ? [from[0], to[0]] : []
  const way = start && end ? { from: inPixels(start), to: inPixels(end) } : null
  return reason('history.moved', { thing: called, distance, way, fields: rest })
}

/** What was read in strokes that were dismissed; empty where nothing was. */
const readIn = (dismissed: unknown): string => {
  const read = (dismissed as Partial<DismissedFigure> | undefined)?.read
  return read === undefined ? '' : plainText(read.text)
}

/** What was done to a thing, in words that go on from the name of who did it. */
export function sayChange(change: Change, names: ThingNames): CoreReason {
  const { thing, verb, fields } = change
  const called = told(thing, names)
  const before = (field: string): string | null => {
    const value = writtenValue(thing.kind, field, fieldIn(fields, field).before, names)
    return value === null ? null : text(value)
  }
  switch (verb) {
    case 'added':
      return reason(thing.kind === 'mark' ? 'history.picked' : 'history.added', {
        thing: called,
        says: says(change, names),
      })
    case 'removed':
      return reason('history.removed', { thing: called, says: says(change, names) })
    case 'changed':
      return sayChanged(change, names)
    case 'adopted':
      return sayAdoption(change, names)
    case 'withdrawn': {
      const why = text(writtenValue('evidence', 'withdrawn', fieldIn(fields, 'withdrawn').after, names))
      return reason('history.withdrew', { thing: called, why, before: before('withdrawn') })
    }
    case 'dismissed':
    case 'recalled': {
      const { after, before } = fieldIn(fields, 'dismissed')
      const read = readIn(after ?? before)
      return reason(verb === 'dismissed' ? 'history.dismissed' : 'history.recalled', { thing: called, read })
    }
    case 'reinstated':
      return reason('history.reinstated', { thing: called, before: before('withdrawn') })
    case 'renamed':
      return reason('history.renamed', { before: before('name') ?? thing.id, after: thing.id })
    case 'moved':
      return sayMove(change, names)
    case 'picked again':
      return sayPickedAgain(change, names)
  }
}

/**
 * What was done at one time, one thing after the other; of what was taken back or made again that it was so. Things go by
 * the names that they had then.
 */
export function sayEntry(
  { n, changes, undoes, redoes }: Pick<HistoryEntry, 'n' | 'changes' | 'undoes' | 'redoes'>,
  known: ThingNames,
): CoreReason[] {
  const names = known.asOf(n)
  return changes.map((change) => {
    const what = sayChange(change, names)
    if (undoes !== undefined) {
      const taken = what.code === 'history.took-back-picks' ? reason('value.picks-of', what.parts) : what
      return reason('history.took-back', { n: undoes.n, what: taken })
    }
    return redoes === undefined ? what : reason('history.made-again', { n: redoes.n, what })
  })
}
