import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { z } from 'zod'
import { editSchema } from '../../../../src/core/job/model/edit-schema.ts'
import { fitsSchema } from '../../../../src/core/job/model/fits-schema.ts'
import { jobSchema } from '../../../../src/core/job/model/schema.ts'
import { anyJob, type Draw, oneOf, some } from '../arbitrary-job.ts'
import { nodes, withNode } from '../edits/edited-json.ts'
import { roughEdit } from '../edits/rough-edit.ts'
import { expectSame } from '../expect-same.ts'
import { winchJob } from '../winch-job.ts'

const fitsJob = fitsSchema(jobSchema)
const fitsEdit = fitsSchema(editSchema)

const plain = (value: unknown): unknown => JSON.parse(JSON.stringify(value))

const ODD = [null, true, '', 'x', 0, -1, 1.5, 2 ** 60, [], {}, [[]], [1, 2], 'point', 'printed', 'a/../b']

/** A document with some of its nodes taken away, replaced, or exchanged for one another. */
function damaged(draw: Draw, json: unknown): unknown {
  let value = json
  for (let i = 1 + some(draw, 2); i > 0; i--) {
    const path = oneOf(draw, nodes(value)) ?? []
    if (path.length > 0) value = withNode(value, path, oneOf(draw, [undefined, ...ODD]))
  }
  return plain(value)
}

describe('a document that is seen to fit its schema', () => {
  it('is what parsing it gives, whatever is in it', () => {
    const seen = { fits: 0, not: 0 }
    fc.assert(
      fc.property(fc.gen(), (draw) => {
        const job = plain(draw(fc.boolean) ? winchJob() : anyJob(draw))
        const edit = plain(roughEdit(draw, winchJob(), 'x'))
        for (const [json, fits, schema] of [
          [damaged(draw, job), fitsJob, jobSchema],
          [damaged(draw, edit), fitsEdit, editSchema],
        ] as const) {
          const parsed = schema.safeParse(json)
          const seenToFit = fits(json)
          expect(seenToFit).toBe(parsed.success)
          if (parsed.success) expectSame(parsed.data, json)
          seen[seenToFit ? 'fits' : 'not']++
        }
      }),
      { numRuns: 600 },
    )
    expect(seen.fits).toBeGreaterThan(100)
    expect(seen.not).toBeGreaterThan(300)
  })

  it.each([
    [z.string().min(2).max(3), ['', 'ab', 'abc', 'abcd', 7]],
    [z.number().gt(0).max(2), [0, 1, 2, 3, '1', null]],
    [z.int().min(1), [0, 1, 1.5, 2 ** 60]],
    [z.array(z.boolean()).min(1), [[], [true], [1], {}]],
    [z.tuple([z.number(), z.enum(['a', 'b'])]), [[1, 'a'], [1], [1, 'c'], [1, 'a', 2]]],
    [z.strictObject({ a: z.literal(1).optional() }), [{}, { a: 1 }, { a: 2 }, { b: 1 }, []]],
    [
      z.looseObject({ a: z.record(z.string(), z.unknown()) }),
      [{ a: {} }, { a: { b: [] }, c: 1 }, { a: [] }, {}],
    ],
    [z.string().refine((text) => text !== 'no'), ['yes', 'no']],
  ] as const)('is told from others: %#', (schema, values) => {
    const fits = fitsSchema(schema)
    for (const value of values) expect(fits(value)).toBe(schema.safeParse(value).success)
  })

  it('is never one that parsing would make another, or that has to be understood first', () => {
    expect(fitsSchema(z.string().trim())(' x')).toBe(false)
    expect(fitsSchema(z.string().default('x'))('y')).toBe(false)
    expect(fitsSchema(z.object({ a: z.number() }))({ a: 1, b: 2 })).toBe(false)
    expect(fitsSchema(z.union([z.string(), z.number()]))('x')).toBe(false)
    expect(fitsSchema(z.email())('x')).toBe(false)
  })
})
