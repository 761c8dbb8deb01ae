import { z } from 'zod'
import { article } from '../../words/article.ts'
import { ITEM_KINDS } from './item-kinds.ts'
import {
  dimensionSchema,
  dismissedSchema,
  evidenceSchema,
  jobSchema,
  pixelSchema,
  referenceSchema,
  repeatedBySchema,
} from './schema.ts'
import { fieldsOf } from './schema-shape.ts'
import type { Known } from './types.ts'

const id = z.string().min(1)
const named = (what: string) => id.describe(`The id of ${what}.`)
const dimensionName = id.describe('The name of the dimension.')
const by = (what: string) => named(`the person who ${what}`).optional()
const at = z.string().optional().describe('When, as an ISO 8601 date and time.')
const index = z.int().min(0).optional().describe('Where in the list, from 0; at its end unless given.')
const undo = z
  .literal(true)
  .describe(
    'Says that this takes back the edit that added it, for evidence is otherwise withdrawn and never removed. Written by undo itself, and where a sheet is removed with all that came from it; else refused from a person: take back an edit with {"do":"undo"} instead.',
  )

/** Fields with their new values, but for those that have edits of their own. */
type Changes<T, Locked extends PropertyKey> = T extends unknown
  ? { [K in Exclude<keyof T, Locked>]?: T[K] }
  : never

type ChangesOf<S extends z.ZodType, Locked extends PropertyKey> = Changes<Known<z.output<S>>, Locked>

/**
 * The fields that a change can set and those that it can clear. What it sets is checked when it is applied, together
 * with what stays: which fields go with which depends on both.
 */
function change<S extends z.ZodType, const Locked extends string>(schema: S, locked: readonly Locked[]) {
  const fields = [...fieldsOf(schema).keys()].filter((name) => !(locked as readonly string[]).includes(name))
  const set = z
    .record(z.string(), z.unknown())
    .optional()
    .describe(
      `Fields with their new values; others stay. Any of: ${fields.join(', ')}. Their forms are in the schema of the job.`,
    )
  return {
    set: set as unknown as z.ZodOptional<z.ZodType<ChangesOf<S, Locked>>>,
    clear: z.array(id).optional().describe('Names of optional fields to take away.'),
  }
}

/** The three edits of the items of one kind. */
function itemEdits<const K extends string, S extends z.ZodType, const Locked extends string>(
  kind: K,
  { schema, locked }: { schema: S; locked: readonly Locked[] },
  notes = '',
) {
  const one = { id: named(`the ${kind}`) }
  return [
    z
      .strictObject({ do: z.literal(`add-${kind}`), item: schema, index })
      .describe(`Adds ${article(kind)} to the job, under an id of its own.`),
    z
      .strictObject({
        do: z.literal(`change-${kind}`),
        ...one,
        ...change<S, 'id' | Locked>(schema, ['id', ...locked]),
      })
      .describe(`Changes fields of ${article(kind)}.${notes}`),
    z
      .strictObject({ do: z.literal(`remove-${kind}`), ...one })
      .describe(`Removes ${article(kind)} that nothing else refers to.`),
  ] as const
}

/** Dimensions go by their name. */
const dimensionEdits = [
  z
    .strictObject({ do: z.literal('add-dimension'), item: dimensionSchema, index })
    .describe('Adds a dimension to the job, under a name of its own.'),
  z
    .strictObject({
      do: z.literal('change-dimension'),
      name: dimensionName,
      ...change(dimensionSchema, ['name', ...ITEM_KINDS.dimension.locked]),
    })
    .describe('Changes fields of a dimension. Its name, evidence and adoption have edits of their own.'),
  z
    .strictObject({ do: z.literal('remove-dimension'), name: dimensionName, undo: undo.optional() })
    .describe('Removes a dimension that holds no evidence and that no formula or relation uses.'),
  z
    .strictObject({
      do: z.literal('adopt'),
      dimension: dimensionName,
      adopt: id
        .optional()
        .describe(
          'The rule printed, scaled, found, derived or mean, or the id of one piece of evidence of the dimension. Left out: the usual order decides again (printed and clear, then derived, scaled, found).',
        ),
      by: by('adopts it'),
      at,
    })
    .describe('Says which value the table gives for a dimension.'),
  z
    .strictObject({
      do: z.literal('rename-dimension'),
      name: dimensionName,
      to: id.describe('Its new name: letters a to z, digits and underscores, not starting with a digit.'),
    })
    .describe('Renames a dimension, in formulas, relations and notes as well.'),
  z
    .strictObject({
      do: z.literal('move-dimension'),
      name: dimensionName,
      index: z.int().min(0).describe('Its new place, from 0.'),
    })
    .describe('Moves a dimension to another row of the table.'),
] as const

const oneEvidence = { dimension: dimensionName, id: named('the evidence') }

const evidenceEdits = [
  z
    .strictObject({ do: z.literal('add-evidence'), dimension: dimensionName, item: evidenceSchema, index })
    .describe('Adds a piece of evidence to a dimension, under an id of its own there.'),
  z
    .strictObject({
      do: z.literal('change-evidence'),
      ...oneEvidence,
      ...change(evidenceSchema, ['id', 'withdrawn']),
    })
    .describe('Changes fields of a piece of evidence. To withdraw it there is an edit of its own.'),
  z
    .strictObject({
      do: z.literal('withdraw-evidence'),
      ...oneEvidence,
      why: z.string().min(1).describe('Why it no longer counts; shown in the table.'),
      by: by('withdraws it'),
      at,
    })
    .describe('Says that a piece of evidence no longer counts. It is kept.'),
  z
    .strictObject({ do: z.literal('reinstate-evidence'), ...oneEvidence })
    .describe('Lets withdrawn evidence count again.'),
  z
    .strictObject({ do: z.literal('remove-evidence'), ...oneEvidence, undo })
    .describe('Takes back the edit that added evidence; only undo makes it. A person withdraws evidence.'),
] as const

const oneReference = { view: named('the view'), id: named('the reference') }

const referenceEdits = [
  z
    .strictObject({ do: z.literal('add-reference'), view: named('the view'), item: referenceSchema, index })
    .describe('Adds a figured size to a view, to calibrate it.'),
  z
    .strictObject({
      do: z.literal('change-reference'),
      ...oneReference,
      ...change(referenceSchema, ['id']),
    })
    .describe('Changes fields of a reference.'),
  z
    .strictObject({ do: z.literal('remove-reference'), ...oneReference })
    .describe('Removes a reference from a view.'),
] as const

const { title, unit, tolerance, gauge } = jobSchema.shape
const { sitting, how, sigma } = repeatedBySchema.shape

/** What a job says of itself. */
export const HEAD_SCHEMA = z.looseObject({ title, unit, tolerance, gauge })

const plainEdits = [
  z
    .strictObject({ do: z.literal('describe'), ...change(HEAD_SCHEMA, []) })
    .describe(
      'Changes what the job says of itself. Another unit is refused while a quantity is written without one.',
    ),
  ...evidenceEdits,
  ...referenceEdits,
  z
    .strictObject({
      do: z.literal('repeat-pick'),
      mark: named('a mark'),
      pixel: pixelSchema.optional().describe('Of a point: where it was picked again.'),
      pixels: z.array(pixelSchema).optional().describe('Of a line, circle or path: all of the new pick.'),
      by: by('picked again'),
      at,
      sitting,
      how,
      sigma,
    })
    .describe('Adds one more independent pick of a mark, from whose scatter its uncertainty is judged.'),
  ...itemEdits('person', ITEM_KINDS.person),
  ...itemEdits('instrument', ITEM_KINDS.instrument),
  ...itemEdits('sheet', ITEM_KINDS.sheet, ' To give it another scan, use "scantling accept-scan".'),
  z
    .strictObject({
      do: z.literal('move-sheet'),
      id: named('the sheet'),
      index: z.int().min(0).describe('Its new place, from 0.'),
    })
    .describe('Moves a sheet to another place in the set.'),
  z
    .strictObject({
      do: z.literal('dismiss-figure'),
      sheet: named('the sheet'),
      item: dismissedSchema,
      index,
    })
    .describe('Says of strokes on a sheet that they are no figure that is wanted.'),
  z
    .strictObject({
      do: z.literal('recall-figure'),
      sheet: named('the sheet'),
      box: dismissedSchema.shape.box.describe('Of the dismissed figure, as it stands in the job.'),
    })
    .describe('Lets a dismissed figure be looked at again.'),
  ...itemEdits('view', ITEM_KINDS.view, ' References have edits of their own.'),
  ...itemEdits('mark', ITEM_KINDS.mark),
  ...dimensionEdits,
  ...itemEdits('relation', ITEM_KINDS.relation),
  ...itemEdits('note', ITEM_KINDS.note),
] as const

type PlainEdit = Known<z.output<(typeof plainEdits)[number]>>

/** Several edits as one, under one name: all of them or none. A shape that holds itself can't be inferred. */
interface Several {
  do: 'several'
  name: string
  edits: Edit[]
}

/**
 * One edit to a job: plain JSON, so that it can be kept in a file.
 *
 * Evidence is withdrawn, not removed. `remove-evidence`, and `remove-dimension` of a dimension that holds evidence,
 * exist to take back the edit that added them, and say so by `undo: true`; evidence goes with the sheet that it came from
 * as well.
 */
export type Edit = PlainEdit | Several

const several = z
  .strictObject({
    do: z.literal('several'),
    name: z.string().describe('What they are together, as undo names it.'),
    edits: z.array(z.lazy((): z.ZodType<Edit> => editSchema)).min(1),
  })
  .describe('Makes several edits as one: all of them or none, and undone as one.')

const everyEdit = [...plainEdits, several] as const

/** The form of an edit. What a change sets is checked when it is applied, together with what stays. */
export const editSchema = z.discriminatedUnion('do', everyEdit) as unknown as z.ZodType<Edit>

/** What an edit can do. */
export const EDIT_WORDS: ReadonlySet<string> = new Set(everyEdit.map(({ shape }) => shape.do.value))

const withId: readonly z.ZodType[] = [
  ...Object.values(ITEM_KINDS).flatMap(({ key, schema }) => (key === 'id' ? [schema] : [])),
  evidenceSchema,
  referenceSchema,
]

/** What gets an id where an edit adds it without one. */
const ADDED_WITH_ID: ReadonlySet<z.core.$ZodType> = new Set(
  withId.flatMap((schema): readonly z.core.$ZodType[] =>
    schema instanceof z.ZodDiscriminatedUnion ? schema.options : [schema],
  ),
)

/** JSON Schema (draft 2020-12) of one edit. What a change sets is described by the schema of the job. */
export function editJsonSchema(): object {
  const { $schema, ...rest } = z.toJSONSchema(editSchema, {
    target: 'draft-2020-12',
    override: ({ zodSchema, jsonSchema }) => {
      if (!ADDED_WITH_ID.has(zodSchema)) return
      const { required = [] } = jsonSchema
      jsonSchema.required = required.filter((field) => field !== 'id')
    },
  })
  return {
    $schema,
    $id: 'scantling-edit-1',
    title: 'Scantling edit, format version 1',
    description:
      'One change to a job: the field "do" says which. Whatever is added, adopted or withdrawn without "by" and "at" gets who made the edit and when. What an edit adds without an "id" gets one that no other copy of the job gives, and the number by which people know it. An "id" that begins with new: ("new:a") stands for such an id, and wherever the same text stands in that edit it is replaced by it, so that what is added can be referred to. "scantling edit" also takes the lines {"do":"undo"} and {"do":"redo"}, which take back the newest edit and make it again; with "theirs": true also where somebody else made it.',
    ...rest,
  }
}
