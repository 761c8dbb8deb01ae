import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { pixel } from '../../../../src/core/geometry/frames.ts'
import { applyEdit, type Edit, readEdit } from '../../../../src/core/job/edits/edit.ts'
import type { Change, Thing } from '../../../../src/core/job/history/change.ts'
import { changesOf } from '../../../../src/core/job/history/changes-of.ts'
import type { Job } from '../../../../src/core/job/model/types.ts'
import { readJob } from '../../../../src/core/job/read-job.ts'
import { JobError } from '../../../../src/core/job/text/job-error.ts'
import { anyJob } from '../arbitrary-job.ts'
import { ALL_EDITS, anyEdit } from '../edits/arbitrary-edit.ts'
import { winchJob } from '../winch-job.ts'

type Item = Record<string, unknown>

const LISTS = {
  person: 'people',
  instrument: 'instruments',
  sheet: 'sheets',
  view: 'views',
  mark: 'marks',
  dimension: 'dimensions',
  relation: 'relations',
  note: 'notes',
} as const

/** A thing as a job holds it, looked for without any help of what is tested. */
function held(job: Job, { kind, id, of }: Thing): Item | undefined {
  if (kind === 'job') return job as unknown as Item
  if (kind === 'evidence') {
    const dimension = job.dimensions.find(({ name }) => name === of)
    return dimension?.evidence.find((one) => one.id === id) as Item | undefined
  }
  if (kind === 'reference') {
    const view = job.views.find((one) => one.id === of)
    return view?.references.find((one) => one.id === id) as Item | undefined
  }
  const items = job[LISTS[kind]] as unknown as Item[]
  return items.find((item) => item[kind === 'dimension' ? 'name' : 'id'] === id)
}

const plain = (value: unknown): unknown =>
  value === undefined ? undefined : JSON.parse(JSON.stringify(value))

/** The fields of an item beside what it goes by and what is a thing of its own. */
const ownFields = (item: Item | undefined, kind: Thing['kind']): Item =>
  Object.fromEntries(
    Object.entries(item ?? {}).filter(
      ([field, value]) =>
        value !== undefined &&
        field !== (kind === 'dimension' ? 'name' : 'id') &&
        !(kind === 'dimension' && field === 'evidence') &&
        // They say again what the other fields of a mark say.
        !(kind === 'mark' && field === 'picks') &&
        !(kind === 'view' && field === 'references'),
    ),
  )

const own = (item: Item | undefined, field: string): unknown =>
  item !== undefined && Object.hasOwn(item, field) ? item[field] : undefined

const said = ({ fields }: Change, when: 'before' | 'after'): Item =>
  Object.fromEntries(fields.filter((one) => one[when] !== undefined).map((one) => [one.field, one[when]]))

/** Checks one change of a plain edit against the jobs before and after it. */
function checkChange(change: Change, before: Job, after: Job): void {
  const { thing, verb, fields } = change
  const [was, is] = [held(before, thing), held(after, thing)]
  switch (verb) {
    case 'added':
      expect(was).toBeUndefined()
      expect(said(change, 'before')).toEqual({})
      expect(plain(said(change, 'after'))).toEqual(plain(ownFields(is, thing.kind)))
      return
    case 'removed':
      expect(is).toBeUndefined()
      expect(said(change, 'after')).toEqual({})
      expect(plain(said(change, 'before'))).toEqual(plain(ownFields(was, thing.kind)))
      return
    case 'renamed': {
      for (const { field, before: from, after: to } of fields) {
        expect([field, to]).toEqual(['name', thing.id])
        expect(held(before, { ...thing, id: String(from) })).toBeDefined()
        expect(held(after, { ...thing, id: String(from) })).toBeUndefined()
      }
      expect(is).toBeDefined()
      return
    }
    case 'picked again': {
      const [pick] = fields
      const repeats = (is?.['repeats'] ?? []) as unknown[]
      expect(repeats).toHaveLength(((was?.['repeats'] ?? []) as unknown[]).length + 1)
      // As a job is written: there a zero has no sign.
      expect(JSON.stringify(repeats.at(-1))).toBe(JSON.stringify(pick?.after))
      return
    }
    case 'dismissed':
    case 'recalled': {
      const there = (sheet: Item | undefined, item: unknown): boolean =>
        ((sheet?.['dismissed'] ?? []) as unknown[]).some(
          (one) => JSON.stringify(one) === JSON.stringify(item),
        )
      const [{ before: from, after: to } = { before: undefined, after: undefined }] = fields
      const item = verb === 'dismissed' ? to : from
      expect([there(was, item), there(is, item)]).toEqual([verb === 'recalled', verb === 'dismissed'])
      return
    }
    case 'moved':
      if (thing.kind === 'sheet') {
        for (const { before: from, after: to } of fields) {
          expect(before.sheets[Number(from)]?.id).toBe(thing.id)
          expect(after.sheets[Number(to)]?.id).toBe(thing.id)
        }
        return
      }
      if (thing.kind === 'dimension') {
        for (const { before: from, after: to } of fields) {
          expect(before.dimensions[Number(from)]?.name).toBe(thing.id)
          expect(after.dimensions[Number(to)]?.name).toBe(thing.id)
        }
        return
      }
  }
  expect(was).toBeDefined()
  expect(is).toBeDefined()
  for (const { field, before: from, after: to } of fields) {
    expect(plain(from)).toEqual(plain(own(was, field)))
    expect(plain(to)).toEqual(plain(own(is, field)))
  }
}

/** The fields of things that are in both jobs and differ, as `mark M1: sigma`. */
function differences(before: Job, after: Job): string[] {
  const found: string[] = []
  const compare = (kind: string, was: Item | undefined, is: Item, names: readonly string[]): void => {
    if (was === undefined) return
    for (const name of names) {
      if (JSON.stringify(own(was, name)) !== JSON.stringify(own(is, name))) found.push(`${kind}: ${name}`)
    }
  }
  const fieldsOf = (a: Item, b: Item, kind: Thing['kind']): string[] =>
    Object.keys({ ...ownFields(a, kind), ...ownFields(b, kind) })
  const each = (thing: Thing, is: Item): void => {
    const was = held(before, thing)
    if (was !== undefined)
      compare(`${thing.kind} ${thing.of ?? ''}/${thing.id}`, was, is, fieldsOf(was, is, thing.kind))
  }
  for (const [kind, list] of Object.entries(LISTS) as [keyof typeof LISTS, keyof Job][]) {
    for (const item of after[list] as unknown as Item[]) {
      each({ kind, id: String(item[kind === 'dimension' ? 'name' : 'id']) }, item)
    }
  }
  for (const dimension of after.dimensions) {
    for (const one of dimension.evidence) each({ kind: 'evidence', id: one.id, of: dimension.name }, one)
  }
  for (const view of after.views) {
    for (const one of view.references) each({ kind: 'reference', id: one.id, of: view.id }, one)
  }
  return found
}

/** Said where what several edits did was compared with what each of them did. */
const SEVERAL = 'several, one by one'

const flat = (edit: Edit): Edit[] => (edit.do === 'several' ? edit.edits.flatMap(flat) : [edit])

describe('what a line says was done', () => {
  const told = new Set<string>()

  /** Makes a run of edits, and checks what is told of each, and of taking it back. */
  const work = (runs: number, among: Edit['do'][]): void =>
    fc.assert(
      fc.property(fc.gen(), (draw) => {
        let job = readJob(anyJob(draw))
        for (let i = draw(fc.integer, { min: 1, max: 12 }); i > 0; i--) {
          const edit = anyEdit(draw, job, `x${i}`, among)
          if (edit === undefined) continue
          try {
            const { job: after, inverse } = applyEdit(job, readEdit(edit))
            checkLine(job, after, edit, inverse)
            const back = applyEdit(after, inverse)
            checkLine(after, back.job, inverse, back.inverse)
            told.add(edit.do)
            job = after
          } catch (error) {
            if (!(error instanceof JobError)) throw error
          }
        }
      }),
      { numRuns: runs },
    )

  it('is what the job had before and what it has after, for any run of edits and for taking each back', () => {
    work(300, ALL_EDITS)
  })

  it('is so for every kind of edit', () => {
    for (const word of ALL_EDITS.filter((one) => !told.has(one))) work(200, [word])
    expect([SEVERAL, ...ALL_EDITS].filter((one) => !told.has(one))).toEqual([])
  })

  function checkLine(before: Job, after: Job, edit: Edit, back: Edit): void {
    const changes = changesOf({ edit, back })
    const plainEdits = flat(edit)
    if (plainEdits.length === 1) {
      for (const change of changes) checkChange(change, before, after)
      if (plainEdits[0]?.do === 'rename-dimension' || plainEdits[0]?.do === 'repeat-pick') return
      const toldOf = changes.flatMap(({ thing, fields }) =>
        fields.map(({ field }) => `${thing.kind} ${thing.of ?? ''}/${thing.id}: ${field}`),
      )
      expect(toldOf).toEqual(expect.arrayContaining(differences(before, after)))
      return
    }
    // Of several, what they do one after the other, where each is sound by itself.
    let job = before
    const one: Change[] = []
    try {
      for (const plainEdit of plainEdits) {
        const applied = applyEdit(job, plainEdit)
        one.push(...changesOf({ edit: plainEdit, back: applied.inverse }))
        job = applied.job
      }
    } catch (error) {
      if (error instanceof JobError) return
      throw error
    }
    expect(plain(changes)).toEqual(plain(one))
    told.add(SEVERAL)
  }
})

describe('what is told', () => {
  const job = readJob(winchJob())
  const line = (edit: Edit): Change[] => changesOf({ edit, back: applyEdit(job, edit).inverse })

  it('of an adoption is what was adopted before, also where the same is adopted again', () => {
    const thing = { kind: 'dimension', id: 'drum_length' }
    expect(line({ do: 'adopt', dimension: 'drum_length', adopt: 'mean', by: 'ben' })).toEqual([
      {
        thing,
        verb: 'adopted',
        fields: [
          { field: 'adopt', before: 'P1', after: 'mean' },
          { field: 'adoptedBy', after: 'ben' },
        ],
      },
    ])
    expect(line({ do: 'adopt', dimension: 'drum_length', adopt: 'P1' })).toEqual([
      { thing, verb: 'adopted', fields: [{ field: 'adopt', before: 'P1', after: 'P1' }] },
    ])
    expect(line({ do: 'adopt', dimension: 'drum_length' })).toEqual([
      { thing, verb: 'adopted', fields: [{ field: 'adopt', before: 'P1' }] },
    ])
  })

  it('of a change that sets what was there already is that it was written again', () => {
    const [change] = line({ do: 'change-mark', id: 'A', set: { how: 'hand', sigma: 1 }, clear: ['label'] })
    expect(change).toEqual({
      thing: { kind: 'mark', id: 'A' },
      verb: 'changed',
      fields: [
        { field: 'how', before: 'hand', after: 'hand' },
        { field: 'sigma', before: 1, after: 1 },
      ],
    })
    const [mixed] = line({ do: 'change-mark', id: 'A', set: { how: 'hand', sigma: 2 } })
    expect(mixed?.fields).toEqual([{ field: 'sigma', before: 1, after: 2 }])
  })

  it('of a mark whose place is changed is that it was moved, of one that is made another kind that it was changed', () => {
    expect(line({ do: 'change-mark', id: 'C', set: { pixel: pixel(501, 400) } })).toMatchObject([
      { verb: 'moved', fields: [{ field: 'pixel', before: [500, 400], after: [501, 400] }] },
    ])
    const set = { kind: 'line', pixels: [pixel(1, 1), pixel(9, 9)] } as const
    const other = {
      do: 'change-mark',
      id: 'elsewhere',
      set: { ...set, pixels: [...set.pixels] },
      clear: ['pixel'],
    }
    expect(line(other as Edit)).toMatchObject([{ verb: 'changed' }])
  })

  it('of a dimension that comes with evidence is each piece too', () => {
    const evidence = { id: 'P1', basis: 'printed', text: '3 in' } as const
    const item = { name: 'rim', label: 'Rim', kind: 'length', evidence: [evidence] } as const
    const added = line({ do: 'add-dimension', item: { ...item, evidence: [evidence] } })
    expect(added.map(({ thing, verb }) => [verb, thing])).toEqual([
      ['added', { kind: 'dimension', id: 'rim' }],
      ['added', { kind: 'evidence', id: 'P1', of: 'rim' }],
    ])
  })
})
