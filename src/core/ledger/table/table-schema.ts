import { z } from 'zod'
import type { Table } from './table.ts'

const basis = z.enum(['printed', 'scaled', 'found', 'derived'])

const tableEvidence = z.object({
  id: z.string(),
  basis: z.string(),
  value: z.number().nullable(),
  u: z.number().describe('Standard uncertainty with which it is compared.'),
  U: z.number().describe('The same, expanded at 95 %.'),
  written: z.string().describe('In shop notation.'),
  governs: z.boolean().describe('Whether the adopted value rests on it.'),
  en: z.number().optional().describe('Largest E_n against any other usable evidence of the row.'),
  problem: z.string().optional().describe('Why it is not used, or what is wrong with it.'),
})

const tableRow = z.object({
  name: z.string(),
  label: z.string(),
  kind: z.string(),
  count: z.number(),
  value: z.number().nullable().describe('null: no usable evidence, and "why" says so.'),
  written: z.string().describe('In shop notation.'),
  u: z.number().describe('Standard uncertainty.'),
  U: z.number().describe('Expanded uncertainty at 95 %.'),
  k: z.number().describe('Coverage factor.'),
  dof: z.number().nullable().describe('Effective degrees of freedom; null is infinite.'),
  basis: z.union([basis, z.literal('mean')]).nullable(),
  status: z
    .enum(['agreed', 'single', 'disputed', 'open'])
    .describe('Two or more agree; only one; two or more do not; none usable.'),
  why: z.string().describe('One sentence a person can read.'),
  tolerance: z.string().optional().describe('As stated for an adopted printed figure.'),
  restsOn: z
    .array(z.string())
    .optional()
    .describe('Dimensions that a worked-out value rests on and that are disputed.'),
  evidence: z.array(tableEvidence),
  budget: z
    .array(z.object({ source: z.string(), share: z.number() }))
    .describe('Shares of variance, largest first, summing to 1; empty when u is 0.'),
})

const tableReference = z.object({
  id: z.string(),
  part: z.enum(['width', 'height', 'squareness']).optional().describe('Which size of a rectangle.'),
  stated: z.number(),
  fitted: z.number(),
  residual: z.number(),
  w: z.number().describe('Normalised residual; 0 when nothing checks this reference.'),
  suspect: z.boolean(),
  setAside: z.boolean().optional().describe('Left out of the calibration, since it alone explains a misfit.'),
})

const tableView = z.object({
  id: z.string(),
  name: z.string(),
  mapping: z.string(),
  parameters: z.record(z.string(), z.object({ value: z.number(), u: z.number() })),
  chi2: z.number().nullable(),
  dof: z.number(),
  p: z.number().nullable(),
  references: z.array(tableReference),
  scale: z
    .object({ stated: z.number().nullable(), found: z.number().nullable() })
    .optional()
    .describe('Drawn size over true size, as stated and as found.'),
  problem: z.string().optional(),
  suggestion: z.string().optional().describe('A simpler or richer mapping that AICc prefers, in a sentence.'),
  suggests: z
    .enum(['uniform', 'two-axis', 'affine', 'projective'])
    .optional()
    .describe('The mapping that "suggestion" is about.'),
})

const tableRelation = z.object({
  id: z.string(),
  text: z.string(),
  misclosure: z.number(),
  u: z.number(),
  w: z.number(),
  holds: z.boolean(),
  problem: z.string().optional(),
})

export const tableSchema = z.object({
  job: z.string().describe('Title of the job.'),
  unit: z.enum(['in', 'mm']),
  coverage: z.literal(0.95),
  rows: z.array(tableRow),
  views: z.array(tableView),
  relations: z.array(tableRelation),
  cautions: z.array(z.string()),
})

/** JSON Schema (draft 2020-12) of the table. Fields may be added to it later. */
export function tableJsonSchema(): object {
  const { $schema, ...rest } = z.toJSONSchema(tableSchema, { target: 'draft-2020-12', io: 'input' })
  return {
    $schema,
    $id: 'scantling-table-1',
    title: 'Scantling table',
    description:
      'All dimensions of a job with adopted value, uncertainty, basis and status. Lengths in "unit", areas in its square, angles in degrees.',
    ...rest,
  }
}

/** Identical, optional fields included, which mutual assignability would let pass. */
type Same<A, B> = (<T>() => T extends A ? 1 : 2) extends <T>() => T extends B ? 1 : 2 ? true : never

// Fails to compile when the schema and the hand-written type part ways, in either direction.
const agreement: Same<z.output<typeof tableSchema>, Table> = true
void agreement
