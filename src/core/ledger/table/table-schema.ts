/** The table as `table --format json` writes it: what each field is stands here, once. */
import { z } from 'zod'
import { dimensionSchema, evidenceSchema, jobSchema, viewSchema } from '../../job/model/schema.ts'
import type { AnyReason } from '../../words/reason.ts'
import { FIGURES_AS } from '../units/look.ts'

const basis = z.enum(evidenceSchema.options.map(({ shape }) => shape.basis.value))
const kind = z.enum(dimensionSchema.shape.kind.options)
const mapping = z.enum(viewSchema.shape.mapping.options)
const unit = z.enum(jobSchema.shape.unit.options)

const reason: z.ZodType<AnyReason> = z
  .object({
    code: z.string().describe('What it is, for a program; a code keeps its meaning.'),
    parts: z.record(z.string(), z.json()).describe('What the words are made from.'),
    names: z
      .record(z.string(), z.string())
      .optional()
      .describe('What people call the things that stand in the parts by these ids.'),
  })
  .describe('The same as data: a code and its parts. Words may change, codes do not.')

const label = z
  .string()
  .optional()
  .describe('What people call it, where that is not its id: figured size 2, scaled 1.')

const interval = z
  .object({ low: z.number(), high: z.number(), written: z.string().describe('As a person reads it.') })
  .optional()

export const tableEvidenceSchema = z.object({
  id: z.string(),
  label,
  basis,
  value: z.number().nullable(),
  u: z
    .number()
    .describe(
      'Standard uncertainty with which it is compared: a printed figure counts as ± half its last graduation.',
    ),
  U: z.number().describe('The same, expanded at 95 %.'),
  interval: interval.describe(
    'What it is between at 95 %, where first order does not hold and ± U alone would mislead.',
  ),
  written: z.string().describe('In shop notation.'),
  exact: z
    .boolean()
    .optional()
    .describe('Whether it says one value without ±, as figures do: u and U are only what it is compared by.'),
  governs: z.boolean().describe('Whether the adopted value rests on it.'),
  en: z.number().optional().describe('Largest E_n against any other usable evidence of the row.'),
  odd: z.boolean().optional().describe('Whether it does not agree with the rest, where the row is disputed.'),
  countsWith: z
    .string()
    .optional()
    .describe('Id of the evidence that rests on the same picks or formula: the two count as one.'),
  problem: z.string().optional().describe('Why it is not used, or what is wrong with it.'),
  problemReason: reason.optional(),
  remarks: z
    .array(z.string())
    .optional()
    .describe(
      'What was made of a printed figure that a person should know, or is asked about. None of it keeps the figure from being used.',
    ),
  remarkReasons: z
    .array(reason)
    .optional()
    .describe('One for each of "remarks"; a question has a code of question.'),
})

export const tableRowSchema = z.object({
  name: z.string(),
  label: z.string(),
  kind,
  count: z.number(),
  value: z.number().nullable().describe('null: no usable evidence, and "why" says so.'),
  written: z
    .string()
    .describe(
      'What is shown, without its ±: a figure in shop notation, e.g. 14 3/8", anything else as a decimal to the place where U ends, e.g. 11.493".',
    ),
  near: z
    .string()
    .optional()
    .describe(
      'The nearest figure as the job writes them, where it lies within U of a value that is no figure: 11 1/2". Only where "nearRange" is absent is it the one figure that does.',
    ),
  nearRange: z
    .tuple([z.string(), z.string()])
    .optional()
    .describe(
      'The first and the last of the figures that lie within U, where there is more than one: nothing tells which it is.',
    ),
  figured: z
    .boolean()
    .optional()
    .describe('Worked out from exact figures alone: U is 0, and the value is as sure as they are.'),
  u: z.number().describe('Standard uncertainty of the adopted value; 0 for a clear printed figure.'),
  U: z.number().describe('Expanded uncertainty at 95 %, k · u.'),
  interval: interval.describe(
    'What the value is between at 95 %, by Monte Carlo, where first order does not hold: the value is seldom in the middle of it. U is then the farther of the two ends, or what first order gives where that is more.',
  ),
  k: z.number().describe('Coverage factor.'),
  dof: z.number().nullable().describe('Effective degrees of freedom; null is infinite.'),
  by: z
    .record(z.string(), z.number())
    .describe(
      'What each of "sources" contributes to the adopted value, by its id, signed and in the unit of the row: u² is the sum of the squares, the covariance of two rows the sum of the products over the sources they share. Empty when u is 0 or there is no value.',
    ),
  basis: z.union([basis, z.literal('mean')]).nullable(),
  status: z
    .enum(['agreed', 'single', 'disputed', 'open'])
    .describe('Two or more agree; only one; two or more do not; none usable.'),
  why: z.string().describe('A few sentences that a person can read.'),
  whyReasons: z.array(reason).describe('One for each sentence of "why".'),
  tolerance: z.string().optional().describe('As stated for an adopted printed figure, shown beside it.'),
  sumsOut: z
    .array(z.string())
    .optional()
    .describe(
      'Ids of the relations that it is part of and that do not hold, whatever its own evidence says.',
    ),
  restsOn: z
    .array(z.string())
    .optional()
    .describe('Dimensions that a worked-out value rests on and that are disputed.'),
  unchecked: z
    .array(z.string())
    .optional()
    .describe(
      'Views that the value rests on and whose scale nothing checks, so that a misread figure in them would not show, or is in doubt.',
    ),
  evidence: z.array(tableEvidenceSchema),
  budget: z
    .array(z.object({ source: z.string(), share: z.number() }))
    .describe('Shares of variance, largest first, summing to 1; empty when u is 0.'),
})

export const tableReferenceSchema = z.object({
  id: z.string(),
  label,
  part: z.enum(['width', 'height', 'squareness']).optional().describe('Which size of a rectangle.'),
  stated: z.number(),
  fitted: z.number().describe('What the calibration makes of it.'),
  U: z.number().describe('What "fitted" is uncertain by, expanded at 95 %.'),
  residual: z.number(),
  w: z.number().describe('Normalised residual (Baarda); 0 when nothing checks this reference.'),
  suspect: z.boolean(),
  setAside: z.boolean().optional().describe('Left out of the calibration, since it alone explains a misfit.'),
})

export const tableClosingSchema = z
  .object({
    kind: z
      .enum(['same', 'sum', 'shape'])
      .describe('One length stated twice; lengths that add up; lengths that give another by their shape.'),
    by: z.array(z.string()).describe('References that give the others.'),
    given: z.array(z.string()).describe('References that are given.'),
    expected: z.number().describe('What the first come to.'),
    stated: z.number(),
    misclosure: z.number().describe('stated − expected'),
    u: z.number().describe('What the rounding of the figures lets it miss by, standard.'),
    closes: z.boolean(),
    says: z.string().describe('In a sentence.'),
    saysReason: reason,
  })
  .describe('Figured sizes between the same marks of which one follows from the others, whatever the picks.')

export const tableAlternativeSchema = z
  .object({
    leftOut: z.array(z.string()).describe('References that may be wrong, together.'),
    along: z
      .number()
      .describe("Scale along the sheet's horizontal edge that the rest come to, in the unit per pixel."),
    across: z.number().describe('The same at right angles to it.'),
    longerAlong: z
      .number()
      .describe('By which share lengths along come out longer than by the scale that is used.'),
    longerAcross: z.number(),
    p: z
      .number()
      .nullable()
      .describe('Probability of the misfit of the rest; null when nothing is redundant in it.'),
    says: z.string().describe('In a sentence.'),
    saysReason: reason,
  })
  .describe('Figured sizes of which it may be that they are wrong and the rest right.')

export const tableViewSchema = z.object({
  id: z.string(),
  label,
  name: z.string(),
  mapping,
  parameters: z.record(z.string(), z.object({ value: z.number(), u: z.number() })),
  chi2: z.number().nullable(),
  dof: z.number(),
  p: z.number().nullable(),
  references: z.array(tableReferenceSchema),
  scale: z
    .object({ stated: z.number().nullable(), found: z.number().nullable() })
    .optional()
    .describe("Drawn size over true size, as the title block states it and as found by the scan's dpi."),
  unchecked: z
    .boolean()
    .optional()
    .describe(
      'Whether nothing checks the scale, so that a misread figure would not show; "remarks" says why.',
    ),
  closings: z
    .array(tableClosingSchema)
    .optional()
    .describe('Figured sizes that close on themselves; they check the figures, not the scale.'),
  alternatives: z
    .array(tableAlternativeSchema)
    .optional()
    .describe(
      'Where figured sizes do not agree and nothing decides which are wrong: likeliest first, none of them used.',
    ),
  remarks: z
    .array(z.string())
    .optional()
    .describe('What else is to be said of this view, one sentence each.'),
  remarkReasons: z.array(reason).optional().describe('One for each of "remarks", in their order.'),
  problem: z.string().optional().describe('What a person should know before trusting this view.'),
  problemReason: reason.optional(),
  suggestion: z.string().optional().describe('A simpler or richer mapping that AICc prefers, in a sentence.'),
  suggestionReason: reason.optional(),
  suggests: mapping.optional().describe('The mapping that "suggestion" is about.'),
})

export const tableRelationSchema = z.object({
  id: z.string(),
  label,
  text: z.string(),
  kind,
  misclosure: z.number().describe('Left less right, in the unit of its kind.'),
  missesBy: z
    .string()
    .describe('Its size as a person reads it, with its unit: 1/2". Empty where it could not be checked.'),
  u: z.number(),
  U: z
    .number()
    .describe('Expanded at 95 %, by Monte Carlo where first order does not hold: as much is allowed.'),
  w: z.number(),
  holds: z.boolean(),
  problem: z.string().optional().describe('Why it could not be checked.'),
  problemReason: reason.optional(),
})

const probability = z.number().min(0).max(1)

export const tableCandidateSchema = z
  .object({
    text: z.string().describe('As it was given.'),
    value: z.number().nullable().describe("null: no figure of the dimension's kind."),
    written: z.string().describe('As the row would be written.'),
    given: probability.describe('As it was given with the figure.'),
    probability: probability.describe('By the rest of the evidence of the dimension as well.'),
    relations: z
      .array(tableRelationSchema)
      .describe(
        'The relations that the dimension stands in, itself or by what is worked out from it, with this figure.',
      ),
    dimensions: z
      .array(tableRowSchema.pick({ name: true, value: true, written: true, u: true, U: true, status: true }))
      .describe('What is worked out from the dimension, with this figure; in their own units.'),
  })
  .describe('What a figure that is hard to read could be, and what would follow were it adopted as clear.')

export const tableDoubtfulSchema = z
  .object({
    dimension: z.string().describe('Name of its row.'),
    evidence: z.string().describe('Id of the figure among the evidence of the row.'),
    label,
    besides: z
      .number()
      .describe(
        'How many other pieces of evidence of the row it was weighed by; those that rest on the same count as one.',
      ),
    candidates: z.array(tableCandidateSchema).describe('Likeliest first.'),
    none: probability.describe('That it is none of them; with it, the probabilities sum to 1.'),
    mixture: z
      .object({ value: z.number(), u: z.number() })
      .nullable()
      .describe(
        'Mean and standard uncertainty over all candidates by their probabilities, in the unit of the row: what is known of the figure as long as nobody has decided which it is.',
      ),
  })
  .describe(
    'A printed figure that is hard to read, with all that it could be. None of it is adopted by itself.',
  )

export const tableSourceSchema = z.object({
  id: z.string().describe('What the rows call it in "by"; it holds within this table.'),
  name: z
    .string()
    .describe('For a person: what it comes from, as budgets say it. Two sources may have one name.'),
  dof: z
    .number()
    .optional()
    .describe(
      'Degrees of freedom of the estimate of variance that it rests on; absent where the variance is taken as known.',
    ),
  estimate: z
    .string()
    .optional()
    .describe(
      'Which estimate of variance that is: the id of the first source that rests on it. Squares of contributions that rest on one estimate are added up before Welch–Satterthwaite.',
    ),
})

export const tableSchema = z.object({
  job: z.string().describe('Title of the job.'),
  unit,
  figuresAs: z
    .enum(FIGURES_AS)
    .describe('How exact inches are set in "written": as the shop writes them, or in decimals.'),
  coverage: z.literal(0.95),
  rows: z.array(tableRowSchema),
  views: z.array(tableViewSchema),
  relations: z.array(tableRelationSchema),
  doubtful: z
    .array(tableDoubtfulSchema)
    .optional()
    .describe('Printed figures that are hard to read and have candidates; absent where there are none.'),
  sources: z
    .array(tableSourceSchema)
    .describe(
      'What makes the rows uncertain: independent of one another, each with standard uncertainty 1. Those that move the same rows in one proportion and rest on the same estimate of variance count as one, so that all that only one row has is one source of its own; no sum of rows can tell them apart.',
    ),
  cautions: z.array(z.string()),
  cautionReasons: z.array(reason).describe('One for each of "cautions", in their order.'),
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
