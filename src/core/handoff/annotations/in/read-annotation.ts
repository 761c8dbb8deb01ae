import type { Note, Sheet } from '../../../job/model/types.ts'
import { DEEPEST_ITEM, nestedAtMost } from '../../../job/text/plain-json.ts'
import type { AnnotationReason } from '../../../words/annotations.ts'
import { reason } from '../../../words/core-words.ts'
import { NOTE_FIELD, noteOfIri } from '../model/note-iri.ts'
import { iriOf, isLoose, type Loose, listOf, textOf } from './json-ld.ts'
import { placeTarget } from './place-target.ts'
import { readBodies } from './read-bodies.ts'

/** Who made an annotation: a name, and the short one where there is one. */
export interface Creator {
  name: string
  short?: string
}

/** A note that an annotation comes to, before it is known what it is called in the job and by whom it is. */
export interface FoundNote {
  note: Omit<Note, 'id' | 'by'>
  creator: Creator | null
  /** The id that it had where it was written, and the number that it had with that. */
  wanted: string | undefined
  number?: number | undefined
}

/** What one target of an annotation comes to: a note, or the picture that it is about elsewhere, or neither. */
export interface Finding {
  found?: FoundNote
  elsewhere?: string
  remarks: AnnotationReason[]
}

const DATE = /^-?\d{4,}(?:-\d\d(?:-\d\d(?:T[\d:.,]+(?:Z|[+-]\d\d:?\d\d)?)?)?)?$/
const OWN_FIELDS = new Set([
  'id',
  'number',
  'sheet',
  'outline',
  'text',
  'by',
  'at',
  'about',
  'annotation',
  '__proto__',
])
const SHOWN = 60

/** As much of a text as a person reads in a remark, so that what differs further on is said once, not a thousand times. */
const shown = (text: string): string => (text.length > SHOWN ? `${text.slice(0, SHOWN)}…` : text)

/**
 * What an annotation comes to on the sheets of a job, target by target.
 * @param other the sheet for targets on pictures that no sheet is of; without it they are left out
 */
export function readAnnotation(
  annotation: Loose,
  sheets: readonly Sheet[],
  other: Sheet | undefined,
): Finding[] {
  const iri = textOf(annotation['id'] ?? annotation['@id'])
  const leftOut = (why: AnnotationReason): AnnotationReason =>
    reason('annotation.left-out', { annotation: iri === undefined ? null : shown(iri), why })
  const targets = listOf(annotation['target'])
  if (targets.length === 0) return [{ remarks: [leftOut(reason('annotation.no-target'))] }]

  const bodies = readBodies(annotation)
  const rest = readRest(annotation)
  const own = iri === undefined ? null : noteOfIri(iri)
  let first = true
  return targets.map((target): Finding => {
    const placed = placeTarget(sheets, target, other)
    if ('elsewhere' in placed) {
      return {
        elsewhere: placed.elsewhere,
        remarks: [leftOut(reason('annotation.unknown-picture'))],
      }
    }
    if ('problem' in placed) return { remarks: [leftOut(placed.problem)] }
    const note = {
      ...rest.fields,
      sheet: placed.sheet.id,
      outline: placed.outline,
      text: bodies.text,
      ...(bodies.about === undefined ? {} : { about: bodies.about }),
      ...(rest.at === undefined ? {} : { at: rest.at }),
      ...(first && iri !== undefined && own === null ? { annotation: iri } : {}),
    }
    const wanted = rest.id ?? (first ? (own ?? undefined) : undefined)
    const remarks = [...(first ? bodies.remarks : []), ...placed.remarks, ...rest.remarks]
    first = false
    return { found: { note, creator: rest.creator, wanted, number: rest.number }, remarks }
  })
}

/** What an annotation says besides its bodies and targets. */
function readRest(annotation: Loose) {
  const remarks: AnnotationReason[] = []
  const kept = keptFields(annotation, remarks)
  const fields = Object.fromEntries(Object.entries(kept).filter(([field]) => !OWN_FIELDS.has(field)))
  const at = textOf(kept['at']) ?? readMoment(annotation, remarks)
  if (listOf(annotation['creator']).length > 1) remarks.push(reason('annotation.first-creator'))
  const number = kept['number']
  return {
    fields,
    id: textOf(kept['id']),
    number: typeof number === 'number' && Number.isSafeInteger(number) && number > 0 ? number : undefined,
    at,
    creator: readCreator(annotation['creator']),
    remarks,
  }
}

/** Fields of a note of ours that the model has no word for. */
function keptFields(annotation: Loose, remarks: AnnotationReason[]): Loose {
  const fields = annotation[NOTE_FIELD]
  if (!isLoose(fields)) return {}
  if (nestedAtMost(fields, DEEPEST_ITEM - 1) && !JSON.stringify(fields).includes('"__proto__":'))
    return fields
  remarks.push(reason('annotation.unknown-fields'))
  return {}
}

function readMoment(annotation: Loose, remarks: AnnotationReason[]): string | undefined {
  const created = textOf(annotation['created'])
  if (created === undefined || DATE.test(created)) return created
  remarks.push(reason('annotation.no-date', { created: shown(created) }))
  return undefined
}

/** What the first creator is called. Source: Web Annotation Data Model, section 3.3.2. */
function readCreator(creator: unknown): Creator | null {
  const [first] = listOf(creator)
  if (typeof first === 'string') return first.trim() === '' ? null : { name: first.trim() }
  if (!isLoose(first)) return null
  const short = textOf(first['nickname'])?.trim()
  const name =
    textOf(first['name'])?.trim() || short || textOf(first['email'])?.replace(/^mailto:/, '') || iriOf(first)
  if (name === undefined || name === '') return null
  return { name, ...(short ? { short } : {}) }
}
