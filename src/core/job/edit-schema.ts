import { z } from 'zod'
import { ITEM_KINDS, ITEM_WORDS } from './item-kinds.ts'
import { evidenceSchema, pixelSchema, referenceSchema } from './schema.ts'

const id = z.string().min(1)
const index = z.int().min(0).optional()
const change = {
  set: z.record(z.string(), z.unknown()).optional(),
  clear: z.array(id).optional(),
}
const undo = z.literal(true)

const itemEdits = ITEM_WORDS.flatMap((word) => {
  const { schema, key } = ITEM_KINDS[word]
  const named = key === 'id' ? { id } : { name: id }
  const removal = word === 'dimension' ? { ...named, undo: undo.optional() } : named
  return [
    z.strictObject({ do: z.literal(`add-${word}`), item: schema, index }),
    z.strictObject({ do: z.literal(`change-${word}`), ...named, ...change }),
    z.strictObject({ do: z.literal(`remove-${word}`), ...removal }),
  ]
})

/** The form of an edit. What a change sets is checked when it is applied, together with what stays. */
export const editSchema: z.ZodType<unknown> = z.discriminatedUnion('do', [
  z.strictObject({ do: z.literal('describe'), ...change }),
  ...itemEdits,
  z.strictObject({ do: z.literal('add-evidence'), dimension: id, item: evidenceSchema, index }),
  z.strictObject({ do: z.literal('change-evidence'), dimension: id, id, ...change }),
  z.strictObject({ do: z.literal('withdraw-evidence'), dimension: id, id, why: z.string().min(1) }),
  z.strictObject({ do: z.literal('reinstate-evidence'), dimension: id, id }),
  z.strictObject({ do: z.literal('remove-evidence'), dimension: id, id, undo }),
  z.strictObject({ do: z.literal('add-reference'), view: id, item: referenceSchema, index }),
  z.strictObject({ do: z.literal('change-reference'), view: id, id, ...change }),
  z.strictObject({ do: z.literal('remove-reference'), view: id, id }),
  z.strictObject({ do: z.literal('adopt'), dimension: id, adopt: id.optional() }),
  z.strictObject({ do: z.literal('rename-dimension'), name: id, to: id }),
  z.strictObject({ do: z.literal('move-dimension'), name: id, index: z.int().min(0) }),
  z.strictObject({ do: z.literal('repeat-pick'), mark: id, pixel: pixelSchema }),
  z.strictObject({
    do: z.literal('several'),
    name: z.string(),
    edits: z.array(z.lazy(() => editSchema)).min(1),
  }),
])

/** JSON Schema (draft 2020-12) of one edit. What a change sets is described by the schema of the job. */
export function editJsonSchema(): object {
  const { $schema, ...rest } = z.toJSONSchema(editSchema, { target: 'draft-2020-12' })
  return {
    $schema,
    $id: 'scantling-edit-1',
    title: 'Scantling edit, format version 1',
    description: 'One change to a job: the field "do" says which.',
    ...rest,
  }
}
