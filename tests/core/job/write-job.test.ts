import { describe, expect, it } from 'vitest'
import { pixel } from '../../../src/core/geometry/frames.ts'
import { newJob } from '../../../src/core/job/model/new-job.ts'
import { parseJobText } from '../../../src/core/job/parse-job-text.ts'
import { readJob } from '../../../src/core/job/read-job.ts'
import { writeJob } from '../../../src/core/job/write-job.ts'
import { nodes, withNode } from './edits/edited-json.ts'
import { winchJob } from './winch-job.ts'

/** The same JSON with the fields of every object in reverse order. */
function reversed(json: unknown): unknown {
  if (Array.isArray(json)) return json.map(reversed)
  if (typeof json !== 'object' || json === null) return json
  return Object.fromEntries(
    Object.entries(json)
      .reverse()
      .map(([key, value]) => [key, reversed(value)]),
  )
}

describe('a written job', () => {
  it('reads back as the same job', () => {
    expect(parseJobText(writeJob(winchJob()))).toEqual(winchJob())
  })

  it('is the same text whatever order its fields were set in', () => {
    expect(writeJob(readJob(reversed(winchJob())))).toBe(writeJob(winchJob()))
    expect(writeJob(reversed(winchJob()) as ReturnType<typeof winchJob>)).toBe(writeJob(winchJob()))
  })

  it('is laid out for people', () => {
    const job = newJob('Bilge pump', 'mm')
    job.sheets.push({
      id: 's1',
      title: 'Pump',
      record: {},
      scan: { file: 'a.png', sha256: 'ab', page: 1, width: 10, height: 10 },
    })
    job.marks.push({ id: 'M1', sheet: 's1', how: 'hand', sigma: 1, kind: 'point', pixel: pixel(0.5, 1.25) })
    job.notes.push({
      id: 'N1',
      sheet: 's1',
      text: 'a long outline',
      outline: Array.from({ length: 11 }, (_, i) => pixel(1000 + i, 2000.25)),
    })
    expect(writeJob(job)).toBe(`{
  "format": "scantling-job",
  "version": 2,
  "title": "Bilge pump",
  "unit": "mm",
  "people": [],
  "instruments": [],
  "sheets": [
    {
      "id": "s1",
      "title": "Pump",
      "record": {},
      "scan": {
        "file": "a.png",
        "sha256": "ab",
        "page": 1,
        "width": 10,
        "height": 10
      }
    }
  ],
  "views": [],
  "marks": [
    {
      "id": "M1",
      "sheet": "s1",
      "how": "hand",
      "sigma": 1,
      "kind": "point",
      "pixel": [0.5, 1.25]
    }
  ],
  "dimensions": [],
  "relations": [],
  "notes": [
    {
      "id": "N1",
      "sheet": "s1",
      "outline": [
${Array.from({ length: 11 }, (_, i) => `        [${1000 + i}, 2000.25]`).join(',\n')}
      ],
      "text": "a long outline"
    }
  ]
}
`)
  })
})

describe('fields that this version does not know', () => {
  const objects = nodes(winchJob()).filter((path) => {
    let value: unknown = winchJob()
    for (const key of path) value = (value as Record<string | number, unknown>)[key]
    return typeof value === 'object' && !Array.isArray(value)
  })

  it('may stand at every level', () => {
    // One of each: job, person, instrument, sheet, record, scan, view, reference, mark, dimension, evidence,
    // candidate, worn, relation, note.
    expect(objects.length).toBeGreaterThan(40)
  })

  it.each(objects.map((path) => [path.join('.') || 'the job', path] as const))(
    'survive reading and writing in %s',
    (_, path) => {
      const extra = { zeta: [1, null, { deep: 'x' }], alpha: null }
      let json: unknown = winchJob()
      json = withNode(json, [...path, 'zz_later'], extra)
      json = withNode(json, [...path, 'constructor'], 'a field like any other')
      const job = readJob(json)
      expect(job).toEqual(json)
      expect(parseJobText(writeJob(job))).toEqual(json)
    },
  )
})
