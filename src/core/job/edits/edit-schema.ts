import { z } from 'zod'
import { ITEM_KINDS, ITEM_WORDS } from '../model/item-kinds.ts'
import { evidenceSchema, pixelSchema, referenceSchema } from '../model/schema.ts'
import { fieldsOf } from '../model/schema-shape.ts'
import { HEAD_SCHEMA } from './edit-head.ts'
import type { ItemKind } from './edit-types.ts'

const id = z.string().min(1)
const named = (what: string) => id.describe(`The id of ${what}.`)
const dimensionName = id.describe('The name of the dimension.')
const index = z.int().min(0).optional().describe('Where in the list, from 0; at its end unless given.')
const undo = z
  .literal(true)
  .describe(
    'Says that this takes back the edit that added it, for evidence is otherwise withdrawn and never removed. Written by undo itself and refused from a person: take back an edit with {"do":"undo"} instead.',
  )

/** The fields that a change can set, and those that it can clear, in words for the schema. */
function change(schema: unknown, locked: readonly string[]) {
  const fields = [...fieldsOf(schema).keys()].filter((name) => !locked.includes(name))
  return {
    set: z
      .record(z.string(), z.unknown())
      .optional()
      .describe(
        `Fields with their new values; others stay. Any of: ${fields.join(', ')}. Their forms are in the schema of the job.`,
      ),
    clear: z.array(id).optional().describe('Names of optional fields to take away.'),
  }
}

const ITEM_NOTES: Partial<Record<ItemKind, string>> = {
  view: ' References have edits of their own.',
  dimension: ' Its name, evidence and adoption have edits of their own.',
  sheet: ' To tie it to another scan, use "scantling relink".',
}

const REMOVALS: Partial<Record<ItemKind, string>> = {
  dimension: 'Removes a dimension that holds no evidence and that no formula or relation uses.',
}

const article = (word: string): string => (/^[aeiou]/.test(word) ? `an ${word}` : `a ${word}`)

const itemEdits = ITEM_WORDS.flatMap((word) => {
  const { schema, key, locked } = ITEM_KINDS[word]
  const one = key === 'id' ? { id: named(`the ${word}`) } : { name: dimensionName }
  const removal = word === 'dimension' ? { ...one, undo: undo.optional() } : one
  return [
    z
      .strictObject({ do: z.literal(`add-${word}`), item: schema, index })
      .describe(`Adds ${article(word)} to the job, under ${key === 'id' ? 'an id' : 'a name'} of its own.`),
    z
      .strictObject({ do: z.literal(`change-${word}`), ...one, ...change(schema, [key, ...locked]) })
      .describe(`Changes fields of ${article(word)}.${ITEM_NOTES[word] ?? ''}`),
    z
      .strictObject({ do: z.literal(`remove-${word}`), ...removal })
      .describe(REMOVALS[word] ?? `Removes ${article(word)} that nothing else refers to.`),
  ]
})

const otherEdits = [
  z
    .strictObject({ do: z.literal('describe'), ...change(HEAD_SCHEMA, []) })
    .describe(
      'Changes what the job says of itself. Another unit is refused while a quantity is written without one.',
    ),
  z
    .strictObject({ do: z.literal('add-evidence'), dimension: dimensionName, item: evidenceSchema, index })
    .describe('Adds a piece of evidence to a dimension, under an id of its own there.'),
  z
    .strictObject({
      do: z.literal('change-evidence'),
      dimension: dimensionName,
      id: named('the evidence'),
      ...change(evidenceSchema, ['id', 'withdrawn']),
    })
    .describe('Changes fields of a piece of evidence. To withdraw it there is an edit of its own.'),
  z
    .strictObject({
      do: z.literal('withdraw-evidence'),
      dimension: dimensionName,
      id: named('the evidence'),
      why: z.string().min(1).describe('Why it no longer counts; shown in the table.'),
    })
    .describe('Says that a piece of evidence no longer counts. It is kept.'),
  z
    .strictObject({
      do: z.literal('reinstate-evidence'),
      dimension: dimensionName,
      id: named('the evidence'),
    })
    .describe('Lets withdrawn evidence count again.'),
  z
    .strictObject({
      do: z.literal('remove-evidence'),
      dimension: dimensionName,
      id: named('the evidence'),
      undo,
    })
    .describe('Takes back the edit that added evidence; only undo makes it. A person withdraws evidence.'),
  z
    .strictObject({
      do: z.literal('add-reference'),
      view: named('the view'),
      item: referenceSchema,
      index,
    })
    .describe('Adds a known size to a view, to calibrate it.'),
  z
    .strictObject({
      do: z.literal('change-reference'),
      view: named('the view'),
      id: named('the reference'),
      ...change(referenceSchema, ['id']),
    })
    .describe('Changes fields of a reference.'),
  z
    .strictObject({
      do: z.literal('remove-reference'),
      view: named('the view'),
      id: named('the reference'),
    })
    .describe('Removes a reference from a view.'),
  z
    .strictObject({
      do: z.literal('adopt'),
      dimension: dimensionName,
      adopt: id
        .optional()
        .describe(
          'The rule printed, scaled, found, derived or mean, or the id of one piece of evidence of the dimension. Left out: the usual order decides again (printed and clear, then derived, scaled, found).',
        ),
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
  z
    .strictObject({
      do: z.literal('repeat-pick'),
      mark: named('a mark'),
      pixel: pixelSchema.optional().describe('Of a point: where it was picked again.'),
      pixels: z.array(pixelSchema).optional().describe('Of a line, circle or path: all of the new pick.'),
      by: named('the person who picked again').optional(),
      at: z.string().optional().describe('When, as an ISO 8601 date and time.'),
    })
    .describe('Adds one more independent pick of a mark, from whose scatter its uncertainty is judged.'),
  z
    .strictObject({
      do: z.literal('several'),
      name: z.string().describe('What they are together, as undo names it.'),
      edits: z.array(z.lazy(() => editSchema)).min(1),
    })
    .describe('Makes several edits as one: all of them or none, and undone as one.'),
] as const

/** The form of an edit. What a change sets is checked when it is applied, together with what stays. */
export const editSchema: z.ZodType<unknown> = z.discriminatedUnion('do', [...otherEdits, ...itemEdits])

/** What an edit can do. */
export const EDIT_WORDS: ReadonlySet<string> = new Set(
  [...otherEdits, ...itemEdits].map(({ shape }) => shape.do.value),
)

/** JSON Schema (draft 2020-12) of one edit. What a change sets is described by the schema of the job. */
export function editJsonSchema(): object {
  const { $schema, ...rest } = z.toJSONSchema(editSchema, { target: 'draft-2020-12' })
  return {
    $schema,
    $id: 'scantling-edit-1',
    title: 'Scantling edit, format version 1',
    description:
      'One change to a job: the field "do" says which. Marks, evidence and notes without "by" and "at" get who made the edit and when. "scantling edit" also takes the lines {"do":"undo"} and {"do":"redo"}, which take back the newest edit of that run and make it again.',
    ...rest,
  }
}
