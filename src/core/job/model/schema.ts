/**
 * The schema of the job document (format `scantling-job`, version 2): the shapes that other programs rely on.
 * Version 1 is the same without `picks`, `sitting` and how repeated picks were made, all of which may be left out.
 * Fields may be added; none may be renamed or re-meant. Unknown fields survive a round trip.
 * Types, references, units, the JSON Schema and the order of fields in a file all come from here.
 */
import { z } from 'zod'
import type { Degrees } from '../../geometry/angle-units.ts'
import type { Pixel } from '../../geometry/frames.ts'
import { GAUGE_STANDARDS } from '../../quantity/gauges.ts'
import { QUANTITY_KINDS } from '../../quantity/quantity-kind.ts'
import { type ItemKind, meaningOf, means, type QuantityMeaning } from './meaning.ts'
import { PER_CENT } from './per-cent.ts'
import { isScanName } from './scan-name.ts'

const text = (description: string) => z.string().describe(description)
const id = z.string().min(1).describe('Unique within its list.')
const number = z
  .int()
  .min(1)
  .optional()
  .describe(
    'With a minted id: the number by which people know it, as in circle 12. Copies of a job may give one twice.',
  )
const reference = (to: ItemKind, what: string) =>
  means({ is: 'reference', to }, z.string().min(1).describe(`The id of ${what}.`))
const written = (as: QuantityMeaning, description: string) =>
  means(
    { is: 'quantity', as },
    z
      .string()
      .min(1)
      .describe(`${description} As a person writes it, exact: 14 3/8", 1'-2 3/8", 365.1 mm, 47° 30'.`),
  )
const figure = (description: string) =>
  means({ is: 'quantity', as: 'figure' }, z.string().describe(description))
const degrees = (description: string) =>
  z.number().describe(`Degrees: ${description}`) as unknown as z.ZodType<Degrees, number>

// Bounded so that reading one can't exhaust the call stack.
const formula = (description: string) => means({ is: 'formula' }, z.string().max(4000).describe(description))

export const pixelSchema = z
  .tuple([z.number(), z.number()])
  .describe(
    '[x, y] in pixels of the page: x right, y down, origin at the outer top-left corner, so that the centre of the first pixel is (0.5, 0.5).',
  ) as unknown as z.ZodType<Pixel>

const by = reference('person', 'the person who did this').optional()
const at = means({ is: 'time' }, text('When, as an ISO 8601 date and time.')).optional()

const moment = (what: string) =>
  means({ is: 'time' }, text(`${what}, as an ISO 8601 date and time.`)).optional()

/** Who brought a thing into the job, and when. */
const entered = {
  by: reference('person', 'the person who entered this').optional(),
  at: moment('When it was entered'),
}

/** Who changed what a thing says last, after somebody entered it, and when. */
const changed = {
  changedBy: reference('person', 'the person who changed it last').optional(),
  changedAt: moment('When it was changed last'),
}

export const personSchema = z.looseObject({
  id,
  name: text('Name as the person writes it.'),
  role: text('What the person does in this job.').optional(),
  ...entered,
})

export const instrumentSchema = z.looseObject({
  id,
  name: text('What it is: 6 in dial caliper, 36 in rule.'),
  resolution: written('length or angle', 'Smallest step it shows.'),
  limit: written('length or angle', 'Maximum permissible error, ±.').optional(),
  note: z.string().optional(),
  ...entered,
})

const figureBox = z.tuple([z.number(), z.number(), z.number().gt(0), z.number().gt(0)])

/** What a program read where a figure is printed. */
export const readFigureSchema = z.looseObject({
  text: text('The figure, or the strokes as they read where they make none.'),
  probability: z.number().min(0).max(1).describe('That this is what stands there.'),
})

export const dismissedSchema = z
  .looseObject({
    box: figureBox.describe(
      'Where it stands: [x, y, width, height] in pixels. No two of a sheet are the same.',
    ),
    read: readFigureSchema.optional().describe('What was read there.'),
    ...entered,
  })
  .describe('Strokes on a sheet of which a person said that they are no figure that is wanted.')

export const sheetSchema = z.looseObject({
  id,
  number,
  title: z.string(),
  ...entered,
  ...changed,
  record: z
    .looseObject({
      identifier: z.string().optional(),
      creator: z.string().optional(),
      date: z.string().optional(),
      source: z.string().optional(),
      rights: z.string().optional(),
      description: z.string().optional(),
    })
    .describe('Catalogue record, in Dublin Core terms.'),
  scan: z.looseObject({
    file: z
      .string()
      .min(1)
      .refine(isScanName, 'must be the plain name of a file below the folder "scans"')
      .describe('Name of the scan file below the folder "scans".'),
    sha256: text('SHA-256 of the scan file as received, hexadecimal.'),
    page: z.int().min(1).describe('Page of the scan file; the first is 1.'),
    width: z.int().min(1).describe('Pixels.'),
    height: z.int().min(1).describe('Pixels.'),
    dpi: z.number().gt(0).optional().describe('Pixels per inch that the scan file claims.'),
    orientation: z
      .int()
      .min(2)
      .max(8)
      .optional()
      .describe('Exif orientation: how the file asks to be shown. The pixels are those stored.'),
    drawnAt: z
      .number()
      .gt(0)
      .optional()
      .describe(
        'Of a page without a picture of its own to give it pixels: dots per inch that it was drawn at.',
      ),
  }),
  straight: degrees(
    "direction of the sheet's horizontal edge, or of a line that is meant to be horizontal, in pixels.",
  ).optional(),
  draughting: written(
    'length',
    'Standard uncertainty of where a drawn feature lies, on paper; default 0.13 mm.',
  ).optional(),
  paper: z
    .string()
    .regex(PER_CENT, 'must be a share in per cent, such as 0.5 %')
    .optional()
    .describe(
      'Standard uncertainty of how much more the paper shrank or swelled one way than the other, in per cent: 0.5 %; default 0.5 %. 0 % for film or metal, which keep their shape.',
    ),
  dismissed: z
    .array(dismissedSchema)
    .optional()
    .describe('What was read on the sheet and is no figure that is wanted.'),
})

const referenceBase = {
  id: z.string().min(1).describe('Unique within the view.'),
  number,
  ...entered,
  ...changed,
  u: written('length', 'Standard uncertainty of the stated size; default 0.').optional(),
}
const markId = reference('mark', 'a mark on the same sheet')

export const referenceSchema = z
  .discriminatedUnion('kind', [
    z.looseObject({
      ...referenceBase,
      kind: z.literal('distance'),
      marks: z.tuple([markId, markId]),
      size: written('size', 'True distance.'),
    }),
    z.looseObject({
      ...referenceBase,
      kind: z.literal('diameter'),
      marks: z.tuple([markId]),
      size: written('size', 'True diameter.'),
    }),
    z.looseObject({
      ...referenceBase,
      kind: z.literal('rectangle'),
      marks: z
        .tuple([markId, markId, markId, markId])
        .describe('Corners in order round the rectangle; the first side is the width.'),
      width: written('size', 'True width.'),
      height: written('size', 'True height.'),
    }),
  ])
  .describe('A size in the view that is known, used to calibrate it.')

export const viewSchema = z.looseObject({
  id,
  number,
  sheet: reference('sheet', 'the sheet it is on'),
  name: z.string(),
  ...entered,
  ...changed,
  outline: z.array(pixelSchema).optional(),
  drawnScale: z
    .number()
    .gt(0)
    .optional()
    .describe('Drawn size / true size as the title block states it, e.g. 0.25 for 3" = 1\'-0".'),
  mapping: z.enum(['uniform', 'two-axis', 'affine', 'projective']),
  grain: degrees("direction of the sheet's horizontal edge in pixels, for two-axis; default 0.").optional(),
  references: z.array(referenceSchema),
})

export const foundOnSchema = z
  .looseObject({
    as: z.enum(['point', 'crossing', 'line', 'circle', 'arc']),
    reading: z.enum(['centre', 'left', 'right']).describe('Which part of the stroke is meant.'),
    rough: z.array(pixelSchema).describe('Where it was looked for.'),
    width: z.number().gt(0).optional().describe('Of the stroke, pixels.'),
    leftOut: z.array(pixelSchema).optional().describe('Centres of profiles that do not lie on it.'),
  })
  .describe('What a mark was found from, so that it can be found again.')

const wholeRepeats = z
  .array(z.array(pixelSchema))
  .optional()
  .describe('Further independent picks of the same, each whole.')

const sitting = z
  .string()
  .min(1)
  .optional()
  .describe('In which sitting it was picked: one opening of the job by one person.')
const how = z.enum(['hand', 'stroke']).describe('Picked by hand, or found on the drawn stroke.')
const sigma = z
  .number()
  .gt(0)
  .describe(
    'Standard uncertainty of each picked coordinate, pixels; of a line or circle, of each of its pixels.',
  )

/** Who made a pick, when and how; of a repeated pick nobody need say how. */
const pickMade = { by, at, sitting, how: how.optional(), sigma: sigma.optional() }

export const repeatedBySchema = z.looseObject(pickMade)

export const pointPickSchema = z.looseObject({ pixel: pixelSchema, ...pickMade })
export const wholePickSchema = z.looseObject({ pixels: z.array(pixelSchema), ...pickMade })

const picks = <S extends z.ZodType>(pick: S) =>
  z
    .array(pick)
    .min(1)
    .optional()
    .describe(
      'Every pick of it, the first one first: that says the same as the mark itself, the others the same as "repeats" and "repeatedBy". Left out, they are made of those.',
    )

const markBase = {
  id,
  number,
  sheet: reference('sheet', 'the sheet it is on'),
  by,
  at,
  sitting,
  label: z.string().optional(),
  how,
  sigma,
  stroke: foundOnSchema.optional(),
  repeatedBy: z
    .array(repeatedBySchema)
    .optional()
    .describe(
      'Who made each repeated pick, when and how, in the order of the repeats; empty where nobody says.',
    ),
}

export const markSchema = z
  .discriminatedUnion('kind', [
    z.looseObject({
      ...markBase,
      kind: z.literal('point'),
      pixel: pixelSchema,
      repeats: z.array(pixelSchema).optional().describe('Further independent picks of the same point.'),
      covariance: z
        .tuple([z.number().min(0), z.number(), z.number().min(0)])
        .optional()
        .describe('[xx, xy, yy], pixels², where the coordinates are not alike.'),
      picks: picks(pointPickSchema),
    }),
    z.looseObject({
      ...markBase,
      kind: z.literal('line'),
      pixels: z.array(pixelSchema).describe('Two or more, through which the line is fitted.'),
      repeats: wholeRepeats,
      picks: picks(wholePickSchema),
    }),
    z.looseObject({
      ...markBase,
      kind: z.literal('circle'),
      pixels: z.array(pixelSchema).describe('Three or more, through which the circle is fitted.'),
      repeats: wholeRepeats,
      picks: picks(wholePickSchema),
    }),
    z.looseObject({
      ...markBase,
      kind: z.literal('path'),
      pixels: z.array(pixelSchema).describe('Corners in order: two or more, three when closed.'),
      closed: z.boolean().optional(),
      repeats: wholeRepeats,
      picks: picks(wholePickSchema),
    }),
  ])
  .describe('Something picked on a sheet.')

export const candidateSchema = z.looseObject({
  text: figure('What it could be.'),
  probability: z
    .number()
    .min(0)
    .max(1)
    .describe(
      'By what is seen of it and by how the sheet writes its figures. The rest of the evidence is weighed with it when the table is made, and would count twice.',
    ),
})

const evidenceBase = {
  id: z.string().min(1).describe('Unique within the dimension, and not the name of a rule of adoption.'),
  number,
  by,
  at,
  ...changed,
  note: z.string().optional(),
  withdrawn: text('Why it no longer counts; evidence is never deleted.').optional(),
  withdrawnBy: reference('person', 'the person who withdrew it').optional(),
  withdrawnAt: moment('When it was withdrawn'),
}

const measureSchema = z
  .enum([
    'distance',
    'spacing',
    'diameter',
    'radius',
    'centres',
    'slot-width',
    'slot-length',
    'angle',
    'run',
    'area',
  ])
  .describe(
    'distance: two points. spacing: line and line, or line and point, at right angles. diameter, radius: a circle. centres: two circles. slot-width: the two round ends of a slot, the mean of their diameters. slot-length: of the same, over all. angle: two lines, 0° to 180°. run: length of a path. area: of a closed path.',
  )

export const evidenceSchema = z
  .discriminatedUnion('basis', [
    z.looseObject({
      ...evidenceBase,
      basis: z.literal('printed'),
      text: figure('The figure as it is written on the sheet.'),
      sheet: reference('sheet', 'the sheet it is printed on').optional(),
      box: figureBox.optional().describe('Where it stands: [x, y, width, height] in pixels.'),
      legibility: z.enum(['clear', 'doubtful']).optional(),
      candidates: z.array(candidateSchema).optional().describe('What it could be, with probabilities.'),
      read: readFigureSchema
        .optional()
        .describe('What a program read there, whatever the person wrote in its place.'),
    }),
    z.looseObject({
      ...evidenceBase,
      basis: z.literal('scaled'),
      view: reference('view', 'the view whose calibration is used'),
      measure: measureSchema,
      marks: z.array(markId),
    }),
    z.looseObject({
      ...evidenceBase,
      basis: z.literal('found'),
      readings: z.array(written('reading of the dimension', 'One reading on the surviving original.')).min(1),
      instrument: reference('instrument', 'the instrument it was read with').optional(),
      worn: z
        .looseObject({
          loss: written('loss of the dimension', 'Metal lost to wear.'),
          u: written('reading of the dimension', 'Standard uncertainty of that.'),
        })
        .optional(),
    }),
    z.looseObject({
      ...evidenceBase,
      basis: z.literal('derived'),
      formula: formula('Over names of dimensions, e.g. pi * (drum_od - sheet_thickness).'),
    }),
  ])
  .describe('One reason to believe a value for a dimension.')

/** The rules by which a value can be adopted for a dimension; anything else in `adopt` is the id of evidence. */
export const ADOPTION_RULES: ReadonlySet<string> = new Set([
  ...evidenceSchema.options.map(({ shape }) => shape.basis.value),
  'mean',
])

export const dimensionSchema = z.looseObject({
  name: z
    .string()
    .min(1)
    .describe('Unique; letters a to z, digits and underscores, not starting with a digit.'),
  label: z.string(),
  kind: z.enum(QUANTITY_KINDS),
  ...entered,
  count: z.int().min(1).optional().describe('How many alike per assembly.'),
  tolerance: written('tolerance of the dimension', 'Tolerance stated for this dimension, ±.').optional(),
  adopt: z
    .string()
    .min(1)
    .optional()
    .describe('A rule (printed, scaled, found, derived, mean) or the id of one piece of evidence.'),
  adoptedBy: reference('person', 'the person who adopted it').optional(),
  adoptedAt: moment('When it was adopted'),
  evidence: z.array(evidenceSchema),
  note: z.string().optional(),
})

export const relationSchema = z.looseObject({
  id,
  number,
  text: formula('An equation between dimensions: overall = neck + drum + hood.'),
  u: written('slack', 'What it may miss by, standard uncertainty.').optional(),
  ...entered,
})

export const noteSchema = z.looseObject({
  id,
  number,
  sheet: reference('sheet', 'the sheet it is on'),
  outline: z.array(pixelSchema),
  text: z.string(),
  by,
  at,
  ...changed,
  about: means(
    { is: 'subject' },
    text('Name of the dimension, or id of the thing, that it is about.'),
  ).optional(),
  annotation: text('IRI of the Web Annotation that it was brought in from.').optional(),
})

export const jobSchema = z.looseObject({
  format: z.literal('scantling-job'),
  version: z.literal([1, 2]).describe('2 as it is written; of version 1 a mark has no "picks".'),
  id: z.string().min(1).optional().describe('Of the job, the same in every copy of it.'),
  edition: z.int().min(0).optional().describe('Number of the last edit contained in this document.'),
  title: z.string(),
  unit: z.enum(['in', 'mm']).describe('What a bare number in a figure means, and how the table is shown.'),
  tolerance: written('tolerance', 'General tolerance of the sheet, when it states one, ±.').optional(),
  gauge: z
    .enum(GAUGE_STANDARDS)
    .optional()
    .describe(
      'The standard that a sheet-gauge number refers to; left out, the US Standard of 1893 is taken and which it is is asked.',
    ),
  people: z.array(personSchema),
  instruments: z.array(instrumentSchema),
  sheets: z.array(sheetSchema),
  views: z.array(viewSchema),
  marks: z.array(markSchema),
  dimensions: z.array(dimensionSchema),
  relations: z.array(relationSchema),
  notes: z.array(noteSchema),
  history: z
    .looseObject({
      line: z.int().min(0).describe('Number of the line that this document was written at.'),
      hash: text('Hash of that line.'),
      at: z.int().min(0).describe('The byte of history.ndjson that it begins at.'),
      sum: text('SHA-256 of this document up to here, hexadecimal.'),
    })
    .optional()
    .describe('Which line of history.ndjson this document stands at.'),
})

/** What a text stands for, in keywords of our own that a validator passes over. */
function keywordsOf(schema: z.core.$ZodType): Record<string, string> {
  const meaning = meaningOf(schema)
  switch (meaning?.is) {
    case 'reference':
      return { 'x-refersTo': meaning.to }
    case 'quantity':
      return { 'x-quantity': meaning.as }
    case 'formula':
      return { 'x-formula': 'names of dimensions' }
    default:
      return {}
  }
}

/** JSON Schema (draft 2020-12) of the job document. Unknown fields are allowed everywhere and are kept. */
export function jobJsonSchema(): object {
  const { $schema, ...rest } = z.toJSONSchema(jobSchema, {
    target: 'draft-2020-12',
    override: ({ zodSchema, jsonSchema }) => Object.assign(jsonSchema, keywordsOf(zodSchema)),
  })
  return {
    $schema,
    $id: 'scantling-job-2',
    title: 'Scantling job, format version 2',
    description: 'One piece of work: its scans and everything known about them (the file job.json).',
    ...rest,
  }
}
