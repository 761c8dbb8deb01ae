import { applyEdit } from '../../../job/edits/edit.ts'
import type { Edit } from '../../../job/edits/edit-types.ts'
import { addPerson, personOf } from '../../../job/edits/people.ts'
import type { Job, Note, Sheet } from '../../../job/model/types.ts'
import { DEEPEST_ITEM, nestedAtMost } from '../../../job/text/plain-json.ts'
import { quoted } from '../../../words/quoted.ts'
import { NOTE_FIELD, noteOfIri } from '../model/note-iri.ts'
import { isLoose, type Loose, listOf, textOf } from './json-ld.ts'
import { annotationsIn } from './parse-annotations.ts'
import { placeTarget } from './place-target.ts'
import { readBodies } from './read-bodies.ts'
import { readCreator } from './read-creator.ts'

/** Notes that were read from annotations, as edits that add them, and what was left out or is to be known. */
export interface FromWebAnnotations {
  edits: Edit[]
  /** Ids of the notes that the edits add. */
  notes: string[]
  /** One sentence each. */
  remarks: string[]
  /** Pictures that annotations are about and no sheet of the job is of, by what they are called there. */
  elsewhere: string[]
}

interface Options {
  /** Who is named for annotations without a creator: the id or name of a person. */
  by?: string
  /** The id of the sheet for annotations on pictures that no sheet is of; without it they are left out. */
  sheet?: string
}

const DATE = /^-?\d{4,}(?:-\d\d(?:-\d\d(?:T[\d:.,]+(?:Z|[+-]\d\d:?\d\d)?)?)?)?$/
const OWN_FIELDS = new Set(['id', 'sheet', 'outline', 'text', 'by', 'at', 'about', 'annotation', '__proto__'])

/**
 * Reads W3C Web Annotations (a collection, a page, a list or one) as notes of a job. Each target is matched to a sheet
 * by the SHA-256 of its scan and its page. Notes that are in the job already, word for word, are passed over; what
 * came from this workbench comes back as it was.
 * Source: Web Annotation Data Model (W3C Recommendation 23 February 2017).
 * @throws AnnotationError when the text holds no annotations
 */
export function fromWebAnnotations(text: string, job: Job, options: Options = {}): FromWebAnnotations {
  const { annotations, remarks } = annotationsIn(text)
  const reading = new Reading(job, options, remarks)
  for (const annotation of annotations) reading.read(annotation)
  return reading.result()
}

class Reading {
  private job: Job
  private readonly before: readonly Note[]
  private readonly other: Sheet | undefined
  private readonly by: string | undefined
  private readonly edits: Edit[] = []
  private readonly notes: string[] = []
  private readonly counted = new Map<string, number>()
  private readonly elsewhere = new Set<string>()
  private alreadyHere = 0

  constructor(job: Job, { by, sheet }: Options, remarks: readonly string[]) {
    this.job = job
    this.before = job.notes
    this.other = job.sheets.find(({ id }) => id === sheet)
    this.by = by === undefined ? undefined : personOf(job, by)?.id
    for (const remark of remarks) this.remark(remark)
  }

  result(): FromWebAnnotations {
    const remarks = [...this.counted].map(([remark, times]) =>
      times === 1 ? remark : `${remark} (${times} times.)`,
    )
    if (this.alreadyHere > 0) {
      const some = this.alreadyHere === 1 ? 'One note was' : `${this.alreadyHere} notes were`
      remarks.push(`${some} in this job already and stayed as before.`)
    }
    return { edits: this.edits, notes: this.notes, remarks, elsewhere: [...this.elsewhere] }
  }

  read(annotation: Loose): void {
    const iri = textOf(annotation['id'] ?? annotation['@id'])
    const name = iri === undefined ? 'An annotation' : `Annotation ${quoted(iri)}`
    const targets = listOf(annotation['target'])
    if (targets.length === 0) this.remark(`${name} was left out: it has no target.`)
    const said = readBodies(annotation)
    let first = true
    for (const target of targets) {
      const placed = placeTarget(this.job, target, this.other)
      if ('elsewhere' in placed) {
        this.elsewhere.add(placed.elsewhere)
        this.remark(`${name} was left out: it is about a picture that is no sheet of this job.`)
      } else if ('problem' in placed) this.remark(`${name} was left out: ${placed.problem}.`)
      else {
        for (const remark of [...(first ? said.remarks : []), ...placed.remarks]) this.remark(remark)
        this.add(annotation, first ? iri : undefined, {
          sheet: placed.sheet.id,
          outline: placed.outline,
          text: said.text,
          ...(said.about === undefined ? {} : { about: said.about }),
        })
        first = false
      }
    }
  }

  private add(annotation: Loose, iri: string | undefined, said: Omit<Note, 'id'>): void {
    const kept = this.restOf(annotation)
    const at = this.momentOf(annotation, kept)
    const creator = this.creatorOf(annotation)
    const own = iri === undefined ? null : noteOfIri(iri)
    const wanted = textOf(kept['id']) ?? own ?? undefined
    const others = Object.fromEntries(Object.entries(kept).filter(([field]) => !OWN_FIELDS.has(field)))
    const note: Omit<Note, 'id'> = {
      ...others,
      ...said,
      ...(at === undefined ? {} : { at }),
      ...(iri === undefined || own !== null ? {} : { annotation: iri }),
    }
    if (this.before.some((there) => sameNote(this.job, there, note, creator?.name))) {
      this.alreadyHere++
      return
    }
    const by = creator === null ? this.by : this.personFor(creator)
    const id = this.freeId(wanted)
    const item: Note = { id, ...note, ...(by === undefined ? {} : { by }) }
    this.edits.push({ do: 'add-note', item })
    this.notes.push(id)
    this.job = { ...this.job, notes: [...this.job.notes, item] }
  }

  /** Fields of a note of ours that the model has no word for. */
  private restOf(annotation: Loose): Loose {
    const rest = annotation[NOTE_FIELD]
    if (!isLoose(rest)) return {}
    if (nestedAtMost(rest, DEEPEST_ITEM - 1) && !JSON.stringify(rest).includes('"__proto__":')) return rest
    this.remark('Fields of a note that no job can hold were left out.')
    return {}
  }

  private momentOf(annotation: Loose, kept: Loose): string | undefined {
    const own = textOf(kept['at'])
    if (own !== undefined) return own
    const created = textOf(annotation['created'])
    if (created === undefined || DATE.test(created)) return created
    this.remark(`A moment that is no date was left out: ${quoted(created)}.`)
    return undefined
  }

  private creatorOf(annotation: Loose): { name: string; short?: string } | null {
    if (listOf(annotation['creator']).length > 1) this.remark('Of several creators, the first is named.')
    return readCreator(annotation['creator'])
  }

  /** The id of the person who goes by a name; somebody new is added to the people of the job. */
  private personFor({ name, short }: { name: string; short?: string }): string {
    const { people } = this.job
    if (people.length === 0 && name === short) return name
    const same = people.find((person) => person.id === short && person.name === name)
    const known = same ?? people.find((person) => person.name === name) ?? personOf(this.job, name)
    if (known !== undefined) return known.id
    const { id, edit } = addPerson(this.job, name)
    this.edits.push(edit)
    this.job = applyEdit(this.job, edit).job
    return id
  }

  private freeId(wanted: string | undefined): string {
    const taken = new Set(this.job.notes.map(({ id }) => id))
    if (wanted !== undefined && wanted !== '' && !taken.has(wanted)) return wanted
    for (let n = taken.size + 1; ; n++) {
      const id = `N${n}`
      if (taken.has(id)) continue
      if (wanted !== undefined && wanted !== '') {
        this.remark(
          `Note ${quoted(wanted)} is in this job already and says something else: the other is ${id}.`,
        )
      }
      return id
    }
  }

  private remark(remark: string): void {
    this.counted.set(remark, (this.counted.get(remark) ?? 0) + 1)
  }
}

/** Whether a note of a job is what was read, as far as that says. */
function sameNote(job: Job, there: Note, read: Omit<Note, 'id'>, by: string | undefined): boolean {
  const name = job.people.find(({ id }) => id === there.by)?.name ?? there.by
  return (
    there.sheet === read.sheet &&
    there.text === read.text &&
    there.about === read.about &&
    (read.at === undefined || there.at === read.at) &&
    (by === undefined || name === by) &&
    there.outline.length === read.outline.length &&
    there.outline.every(([x, y], k) => x === read.outline[k]?.[0] && y === read.outline[k]?.[1])
  )
}
