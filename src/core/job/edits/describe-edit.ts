import { fieldWord } from '../../words/field-words.ts'
import { plainText } from '../../words/plain-text.ts'
import { basisWord } from '../ids/basis-word.ts'
import { mintedFor } from '../ids/id-form.ts'
import { called, labelOf, withNoun } from '../ids/label.ts'
import type { Edit } from '../model/edit-schema.ts'
import { ITEM_KINDS, nameOf } from '../model/item-kinds.ts'
import { SIGNATURE } from '../model/signature-fields.ts'
import type { ThingKind } from '../model/thing-kind.ts'
import type { DismissedFigure, Job, MarkPick } from '../model/types.ts'
import { mirrorsOf } from '../picks/with-picks.ts'
import { itemEditOf } from './apply/item-edit.ts'
import { type Called, calledAround } from './called-around.ts'

type Fields = Readonly<Record<string, unknown>>

/**
 * What an edit does, in a few words, as undo and the history name it: "add mark M12", "adopt printed for drum_length".
 * @param job that it is or was made in, by which things are called by their labels and names: "move circle 12"
 * @param back the edit that takes it back, for what is not in that job any more
 */
export function describeEdit(edit: Edit, job?: Job, back?: Edit): string {
  return nameEdit(edit, calledAround(job, edit, back), back)
}

/** The same by what things are called. */
export function nameEdit(edit: Edit, the: Called, back?: Edit): string {
  switch (edit.do) {
    case 'describe':
      return `change the job: ${fields('job', edit, back)}`
    case 'several':
      return edit.name === '' ? edit.edits.map((one) => nameEdit(one, the)).join('; ') : edit.name
    case 'add-evidence': {
      const { id, basis } = edit.item
      return `add ${withNoun(`${basisWord(basis)} evidence`, id, labelOf(edit.item))} to ${edit.dimension}`
    }
    case 'change-evidence':
      return `change ${the('evidence', edit.id)} of ${edit.dimension}: ${fields('evidence', edit, back)}`
    case 'withdraw-evidence':
      return `withdraw ${the('evidence', edit.id)} of ${edit.dimension}`
    case 'reinstate-evidence':
      return `reinstate ${the('evidence', edit.id)} of ${edit.dimension}`
    case 'remove-evidence':
      return `take back ${the('evidence', edit.id)} of ${edit.dimension}`
    case 'add-reference':
      return `add ${called('figured size', edit.item)} to ${the('view', edit.view)}`
    case 'change-reference': {
      const what = `${the('reference', edit.id)} of ${the('view', edit.view)}`
      return `change ${what}: ${fields('reference', edit, back)}`
    }
    case 'remove-reference':
      return `remove ${the('reference', edit.id)} of ${the('view', edit.view)}`
    case 'adopt': {
      const { adopt, dimension } = edit
      if (adopt === undefined) return `adopt by the rules for ${dimension}`
      return `adopt ${mintedFor(adopt) === undefined ? basisWord(adopt) : the('evidence', adopt)} for ${dimension}`
    }
    case 'rename-dimension':
      return `rename ${edit.name} to ${edit.to}`
    case 'move-dimension':
      return `move dimension ${edit.name}`
    case 'move-sheet':
      return `move ${the('sheet', edit.id)}`
    case 'dismiss-figure':
      return `dismiss ${figureRead(edit.item)} on ${the('sheet', edit.sheet)}`
    case 'recall-figure': {
      const item = back?.do === 'dismiss-figure' ? back.item : {}
      return `show ${figureRead(item)} on ${the('sheet', edit.sheet)} again`
    }
    case 'repeat-pick':
      return `pick ${the('mark', edit.mark)} again`
    case 'change-mark':
      return changeOfMark(edit, the('mark', edit.id), back)
    default:
      return itemEdit(edit, the, back)
  }
}

/** What was read there, in quotes, where something was. */
const figureRead = ({ read }: Partial<DismissedFigure>): string =>
  read === undefined || read.text === '' ? 'a figure' : `“${plainText(read.text)}”`

/** Characters of a note that are said of it: enough to know which one it is. */
const OF_A_NOTE = 40

/** What a note says, in quotes; of a long one its first words. */
function noteSays(item: Fields): string {
  const line = plainText(String(item['text'] ?? ''))
  if (line === '') return ''
  if (line.length <= OF_A_NOTE) return `, “${line}”`
  const end = line.lastIndexOf(' ', OF_A_NOTE)
  return `, “${line.slice(0, end > OF_A_NOTE / 2 ? end : OF_A_NOTE)}…”`
}

function itemEdit(edit: Edit, the: Called, back: Edit | undefined): string {
  const found = itemEditOf(edit)
  if (found === null) return edit.do
  const { kind, does } = found
  const what = the(kind, does.verb === 'add' ? nameOf(does.item, ITEM_KINDS[kind].key) : does.name)
  if (does.verb === 'change') return `change ${what}: ${fields(kind, does, back)}`
  const item = does.verb === 'add' ? does.item : back !== undefined && 'item' in back ? back.item : {}
  return `${does.verb} ${what}${kind === 'note' ? noteSays(item as Fields) : ''}`
}

interface FieldChange {
  set?: object
  clear?: string[]
}

/** The fields in which two states of a thing, plain JSON, differ. */
const differing = (before: Fields, after: Fields): string[] =>
  [...new Set([...Object.keys(before), ...Object.keys(after)])].filter(
    (field) => JSON.stringify(before[field]) !== JSON.stringify(after[field]),
  )

/** The fields that a change is about, those within others by themselves where it is known which differ. */
function fieldsOf({ set = {}, clear = [] }: FieldChange, back: Edit | undefined): string[] {
  const before: Fields = { ...(back as FieldChange | undefined)?.set }
  const named = [
    ...Object.entries(set).flatMap(([field, after]) => {
      const was = before[field]
      if (typeof was !== 'object' || typeof after !== 'object' || Array.isArray(after)) return [field]
      const within = differing((was ?? {}) as Fields, (after ?? {}) as Fields)
      return within.length === 0 ? [field] : within
    }),
    ...clear,
  ]
  const others = named.filter((field) => !SIGNATURE.has(field))
  return others.length === 0 ? named : others
}

const inWords = (kind: ThingKind, named: readonly string[]): string =>
  [...new Set(named.map((field) => fieldWord(kind, field)))].join(', ')

const fields = (kind: ThingKind, change: FieldChange, back: Edit | undefined): string =>
  inWords(kind, fieldsOf(change, back)) || 'nothing'

/** Of a mark the fields that its picks change stand for these. */
function withoutPicks(change: FieldChange, back: Edit | undefined): FieldChange {
  const { picks, ...set }: Fields = { ...change.set }
  const { set: before = {}, clear = [] } = { ...(back as FieldChange | undefined) }
  if (!Array.isArray(picks)) return change
  const changed = new Set([...Object.keys(before), ...clear])
  const said = Object.entries(mirrorsOf(picks as MarkPick[])).filter(([field]) => changed.has(field))
  return { ...change, set: { ...Object.fromEntries(said), ...set } }
}

const PLACES = ['pixel', 'pixels']
/** What is so of where a mark lies and of how it was picked: it goes along when the mark is moved. */
const WITH_ITS_PLACE: ReadonlySet<string> = new Set([...PLACES, ...SIGNATURE, 'stroke', 'covariance', 'how'])

function changeOfMark(change: FieldChange, mark: string, back: Edit | undefined): string {
  const spelled = withoutPicks(change, back)
  const named = fieldsOf(spelled, back)
  if (!PLACES.some((place) => named.includes(place)))
    return `change ${mark}: ${inWords('mark', named) || 'nothing'}`
  const others = inWords(
    'mark',
    named.filter((field) => !WITH_ITS_PLACE.has(field)),
  )
  return others === '' ? `move ${mark}` : `move ${mark} and change its ${others}`
}
