import { describe, expect, it } from 'vitest'
import { applyEdit } from '../../../src/core/job/edits/edit.ts'
import { inWords } from '../../../src/core/words/core-words.ts'
import { draftedEvidence, type EvidenceDraft } from '../../../src/renderer/entering/new-evidence.ts'
import { seededMint } from '../../core/job/ids/seeded-mint.ts'
import { sampleDimension, sampleJob } from '../sample-job.ts'

const mint = seededMint(1)

const drafted = (draft: EvidenceDraft, name = 'neck_od') =>
  draftedEvidence(draft, sampleDimension(name), sampleJob, { unit: 'in', mint })

const printed = (text: string): EvidenceDraft => ({
  basis: 'printed',
  text,
  legibility: 'clear',
  sheet: null,
})
const found = (readings: string): EvidenceDraft => ({ basis: 'found', readings, instrument: 'caliper' })

describe('writing evidence on a card', () => {
  it('reads a printed figure as it is written and says how it is understood', () => {
    expect(drafted(printed(`1'-2 3/8" DIA.`))).toMatchObject({
      understood: `Read as 1'-2 3/8"`,
      edit: {
        do: 'add-evidence',
        dimension: 'neck_od',
        item: { number: 2, basis: 'printed', text: `1'-2 3/8" DIA.`, legibility: 'clear' },
      },
    })
  })

  it('shows what was understood in the unit that is looked at', () => {
    expect(
      draftedEvidence(printed('6"'), sampleDimension('neck_od'), sampleJob, { unit: 'mm', mint }),
    ).toMatchObject({
      understood: 'Read as 152.4 mm',
    })
  })

  it('points at the place where reading stopped', () => {
    const text = '6 3/8q"'
    const said = drafted(printed(text))
    expect(said).toMatchObject({ refused: { code: 'notation.stopped' }, stopped: { text, at: 5 } })
  })

  it('refuses a figure of another kind', () => {
    expect(drafted(printed('45°'))).toHaveProperty('refused')
  })

  it('reads readings one a line, takes their mean, and names the line that can not be read', () => {
    expect(drafted(found('6.01 in\n\n 6.03 in \n'))).toMatchObject({
      understood: '2 readings, mean 6.02" ± 0.12"',
      edit: { item: { number: 1, readings: ['6.01 in', '6.03 in'], instrument: 'caliper' } },
    })
    expect(drafted(found('6.01 in\nsix'))).toMatchObject({ stopped: { text: 'six', at: 0 } })
  })

  it('takes a formula over names, and says what is wrong with one', () => {
    expect(drafted({ basis: 'derived', formula: 'drum_od - 2 * cone_height' })).toHaveProperty('edit')
    for (const formula of ['drum_odd / 2', 'drum_od * 2 +', 'drum_od * drum_od', 'neck_od / 2']) {
      expect(drafted({ basis: 'derived', formula }), formula).toHaveProperty('refused')
    }
  })

  it('points at the place where a formula stopped', () => {
    const at = (formula: string) => {
      const said = drafted({ basis: 'derived', formula })
      return said !== null && 'stopped' in said ? said.stopped : undefined
    }
    expect(at('drum_od + 3')).toEqual({ text: 'drum_od + 3', at: 10 })
    expect(at('drum_od * 2 +')).toEqual({ text: 'drum_od * 2 +', at: 13 })
    expect(drafted({ basis: 'derived', formula: `2'-3" - drum_od` })).toHaveProperty('edit')
  })

  it('says how many of what size, what is kept as a note, and what is asked', () => {
    const said = (text: string, name?: string) => {
      const made = drafted(printed(text), name)
      return made !== null && 'edit' in made
        ? { as: made.understood, also: made.also.map((one) => inWords(one)) }
        : made
    }
    expect(said('8 – 5/8 BOLTS EQ. SP.')).toEqual({
      as: 'Read as 8 of 5/8"',
      also: [
        'A diameter.',
        'It is the size of bolts.',
        'Kept as a note: EQ. SP.',
        '"8 – 5/8 BOLTS EQ. SP." says that there are 8, and the dimension says 1: which is right?',
      ],
    })
    expect(said('TAP 3/8')).toMatchObject({
      as: 'Read as 3/8"',
      also: ['A diameter.', 'Kept as a note: TAP.'],
    })
    const inMetric = { unit: 'mm', mint } as const
    expect(
      draftedEvidence(printed('12,5 mm ± 0,1'), sampleDimension('neck_od'), sampleJob, inMetric),
    ).toMatchObject({ understood: 'Read as 12,5 mm ±0,1 mm' })
    expect(said('3.250 MAX')).toMatchObject({ as: 'Read as at most 3 1/4"' })
    expect(said('7/8 FULL')).toMatchObject({ as: 'Read as a little over 7/8"' })
    expect(said('R 20')).toMatchObject({
      also: ['A radius.', expect.stringMatching(/is a radius, and this/)],
    })
    const { gauge: _, ...unsaid } = sampleJob
    const gauge = draftedEvidence(printed('No. 16 GA'), sampleDimension('neck_od'), unsaid, {
      unit: 'in',
      mint,
    })
    expect(gauge).toMatchObject({ also: [{ code: 'remark.gauge-by-usual-table' }] })
    expect(said('1 IN 8')).toMatchObject({ refused: { code: 'notation.stopped' } })
    expect(JSON.stringify(said('1 IN 8'))).toContain('slope-is-no-length')
  })

  it('says nothing while nothing is written', () => {
    expect(drafted(printed(' '))).toBeNull()
    expect(drafted(found('\n'))).toBeNull()
    expect(drafted({ basis: 'derived', formula: '' })).toBeNull()
  })

  it('makes edits that the job takes', () => {
    for (const draft of [
      printed('6 1/16"'),
      found('6.01'),
      { basis: 'derived', formula: 'drum_od' } as const,
    ]) {
      const made = drafted(draft)
      if (made === null || !('edit' in made)) throw new Error('no edit')
      const { job } = applyEdit(sampleJob, made.edit)
      expect(job.dimensions.find(({ name }) => name === 'neck_od')?.evidence).toHaveLength(2)
    }
  })
})
