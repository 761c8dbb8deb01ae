import { describe, expect, it } from 'vitest'
import { applyEdit } from '../../../src/core/job/edits/edit.ts'
import type { Dimension, Job } from '../../../src/core/job/model/types.ts'
import { readReading } from '../../../src/core/ledger/evidence/found-reading.ts'
import { instrumentAtHand, lastUsedInstrument } from '../../../src/renderer/instruments/at-hand.ts'
import {
  draftedInstrument,
  removalOf,
  usesOfInstrument,
} from '../../../src/renderer/instruments/instrument-edits.ts'
import { usualInstruments } from '../../../src/renderer/instruments/usual-instruments.ts'
import { sentenceOf } from '../../../src/renderer/words/window-words.ts'
import { seededMint } from '../../core/job/ids/seeded-mint.ts'
import { sampleJob } from '../sample-job.ts'

const mint = seededMint(5)
const rule = { name: '12 in rule', resolution: '1/64 in', limit: '', note: '' }

const read = (name: string, at: string | undefined, instrument: string): Dimension => ({
  name,
  label: name,
  kind: 'length',
  evidence: [{ id: 'f1', basis: 'found', readings: ['5"'], instrument, ...(at === undefined ? {} : { at }) }],
})
const job = (...dimensions: Dimension[]): Job => ({
  ...sampleJob,
  instruments: [
    { id: 'caliper', name: 'Vernier caliper', resolution: '0.001 in' },
    { id: 'rule', name: 'Steel rule', resolution: '1/64 in' },
  ],
  relations: [],
  dimensions,
})

describe('an instrument', () => {
  it('is kept in the job with what it shows, and without what was left empty', () => {
    const drafted = draftedInstrument(sampleJob, rule, undefined, mint)
    if ('refused' in drafted) throw new Error(sentenceOf(drafted.refused))
    const { job: after } = applyEdit(sampleJob, drafted.edit)
    expect(after.instruments.at(-1)).toEqual({ id: drafted.id, name: '12 in rule', resolution: '1/64 in' })
  })

  it('is changed in place, and loses what was emptied', () => {
    const before = { id: 'i', name: 'Rule', resolution: '1/32 in', limit: '1/64 in', note: 'worn' }
    const having: Job = { ...sampleJob, instruments: [before] }
    const drafted = draftedInstrument(having, rule, before, mint)
    if ('refused' in drafted) throw new Error(sentenceOf(drafted.refused))
    expect(applyEdit(having, drafted.edit).job.instruments).toEqual([
      { id: 'i', name: '12 in rule', resolution: '1/64 in' },
    ])
  })

  it.each([
    [{ ...rule, name: ' ' }, /needs a name/],
    [{ ...rule, name: sampleJob.instruments[0]?.name ?? '' }, /already/],
    [{ ...rule, resolution: '' }, /smallest step/],
    [{ ...rule, resolution: 'fine' }, /fine/],
    [{ ...rule, limit: '± little' }, /little/],
  ])('is refused as %j', (draft, why) => {
    const drafted = draftedInstrument(sampleJob, draft, undefined, mint)
    expect('refused' in drafted && sentenceOf(drafted.refused)).toMatch(why)
  })

  it.each(['in', 'mm'] as const)('of a usual kind shows a step that can be read, in %s', (unit) => {
    for (const { id, resolution } of usualInstruments(unit)) {
      const kind = id === 'protractor' ? 'angle' : 'length'
      expect(readReading(resolution, kind, { unit }).value).toBeGreaterThan(0)
    }
  })

  it('is removed with its name in the readings, which stay', () => {
    const having = job(read('drum', '2026-03-01', 'rule'), read('hood', '2026-03-02', 'caliper'))
    const [, steel] = having.instruments
    if (steel === undefined) throw new Error('there is no rule')
    const { job: after, inverse } = applyEdit(having, removalOf(having, steel))
    expect(after.instruments.map(({ id }) => id)).toEqual(['caliper'])
    expect(after.dimensions[0]?.evidence[0]).toEqual({
      id: 'f1',
      basis: 'found',
      readings: ['5"'],
      at: '2026-03-01',
    })
    expect(usesOfInstrument(after, 'rule')).toEqual([])
    expect(applyEdit(after, inverse).job).toEqual(having)
  })
})

describe('the instrument at hand', () => {
  it('is that of the newest readings', () => {
    expect(lastUsedInstrument(job(read('a', '2026-03-02', 'rule'), read('b', '2026-03-01', 'caliper')))).toBe(
      'rule',
    )
    expect(lastUsedInstrument(job(read('a', undefined, 'rule'), read('b', undefined, 'caliper')))).toBe(
      'caliper',
    )
    expect(lastUsedInstrument(job())).toBe('rule')
    expect(lastUsedInstrument({ ...job(), instruments: [] })).toBeNull()
  })

  it('is the one that was taken up, in the job that it was taken up in', () => {
    const having = job(read('a', '2026-03-02', 'rule'))
    const at = (now: { job: string; instrument: string | null } | null) =>
      instrumentAtHand(having, 'here', now)?.id
    expect(at(null)).toBe('rule')
    expect(at({ job: 'here', instrument: 'caliper' })).toBe('caliper')
    expect(at({ job: 'here', instrument: null })).toBeUndefined()
    expect(at({ job: 'here', instrument: 'removed since' })).toBe('rule')
    expect(at({ job: 'elsewhere', instrument: 'caliper' })).toBe('rule')
  })
})
