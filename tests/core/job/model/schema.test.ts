import { describe, expect, it } from 'vitest'
import { editJsonSchema } from '../../../../src/core/job/edits/edit.ts'
import { jobJsonSchema } from '../../../../src/core/job/model/schema.ts'
import type { Table } from '../../../../src/core/ledger/table/table.ts'
import { tableJsonSchema, tableSchema } from '../../../../src/core/ledger/table/table-schema.ts'

type Node = { [key: string]: unknown }

/** Every place in a JSON Schema that describes an object. */
function objectsIn(schema: unknown): Node[] {
  if (typeof schema !== 'object' || schema === null) return []
  const inner = Object.values(schema).flatMap(objectsIn)
  return 'properties' in schema ? [schema as Node, ...inner] : inner
}

describe('the JSON Schema of a job', () => {
  const schema = jobJsonSchema() as Node & { properties: Record<string, Node>; required: string[] }

  it('says what it is of', () => {
    expect(schema).toMatchObject({
      $schema: 'https://json-schema.org/draft/2020-12/schema',
      $id: 'scantling-job-2',
      title: 'Scantling job, format version 2',
      type: 'object',
    })
  })

  it('asks for the fields of the model and allows others everywhere', () => {
    expect(schema.required).toEqual([
      'format',
      'version',
      'title',
      'unit',
      'people',
      'instruments',
      'sheets',
      'views',
      'marks',
      'dimensions',
      'relations',
      'notes',
    ])
    const objects = objectsIn(schema)
    expect(objects.length).toBeGreaterThan(20)
    for (const object of objects) expect(object['additionalProperties']).not.toBe(false)
  })

  it('describes fields in words', () => {
    expect(schema.properties['unit']?.['description']).toMatch(/bare number/)
    expect(JSON.stringify(schema)).toContain(
      'Standard uncertainty of each picked coordinate, pixels; of a line',
    )
  })

  it('is plain JSON, as is that of an edit', () => {
    expect(JSON.parse(JSON.stringify(schema))).toEqual(schema)
    const edit = editJsonSchema()
    expect(JSON.parse(JSON.stringify(edit))).toEqual(edit)
    expect(JSON.stringify(edit)).toContain('"withdraw-evidence"')
  })
})

describe('the JSON Schema of an edit', () => {
  const { oneOf, description } = editJsonSchema() as { oneOf: Node[]; description: string }
  const kind = (word: string): Node & { properties: Record<string, Node> } => {
    const found = oneOf.find((one) => (one['properties'] as Record<string, Node>)['do']?.['const'] === word)
    if (found === undefined) throw new Error(`no edit ${word}`)
    return found as Node & { properties: Record<string, Node> }
  }

  it('says of every kind what it does', () => {
    expect(oneOf).toHaveLength(41)
    for (const one of oneOf) expect(one['description']).toMatch(/^[A-Z].{20,}\.$/s)
    expect(description).toContain('{"do":"undo"}')
  })

  it('lists the fields that a change can set, and not those that have edits of their own', () => {
    const fields = (word: string): string => String(kind(word).properties['set']?.['description'])
    expect(fields('describe')).toContain('Any of: title, unit, tolerance, gauge.')
    expect(fields('change-dimension')).toContain(
      'Any of: label, kind, by, at, count, tolerance, adoptedBy, adoptedAt, note.',
    )
    expect(fields('change-mark')).toMatch(
      /sigma, stroke, repeatedBy, .*pixel, repeats, covariance, picks, pixels, closed\./,
    )
    expect(fields('change-evidence')).toMatch(/legibility.*readings.*formula/)
    expect(fields('change-evidence')).not.toMatch(/\b(id|withdrawn)\b/)
  })

  it('names the rules of adoption, and says what undo is for', () => {
    expect(kind('adopt').properties['adopt']?.['description']).toContain(
      'printed, scaled, found, derived or mean',
    )
    expect(kind('remove-evidence').properties['undo']?.['description']).toContain('takes back the edit')
  })
})

describe('the JSON Schema of the table', () => {
  it('says what it is of', () => {
    expect(tableJsonSchema()).toMatchObject({ $id: 'scantling-table-1', type: 'object' })
  })

  it('takes a table and refuses one without uncertainty', () => {
    const table: Table = {
      job: 'Quay winch',
      unit: 'in',
      figuresAs: 'fractions',
      coverage: 0.95,
      rows: [
        {
          name: 'drum_length',
          label: 'Length of drum',
          kind: 'length',
          count: 1,
          value: 14.375,
          written: '14 3/8"',
          u: 0,
          U: 0,
          k: 2,
          dof: null,
          by: {},
          basis: 'printed',
          status: 'single',
          why: 'Printed and clear.',
          whyReasons: [],
          evidence: [
            {
              id: 'P1',
              basis: 'printed',
              value: 14.375,
              u: 0.018,
              U: 0.035,
              written: '14 3/8"',
              governs: true,
            },
          ],
          budget: [],
        },
      ],
      views: [],
      relations: [],
      sources: [],
      cautions: [],
      cautionReasons: [],
    }
    expect(tableSchema.safeParse(table).success).toBe(true)
    const { u, ...without } = table.rows[0] as Table['rows'][number]
    expect(u).toBe(0)
    expect(tableSchema.safeParse({ ...table, rows: [without] }).success).toBe(false)
  })
})
