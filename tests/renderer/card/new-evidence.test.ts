import { describe, expect, it } from 'vitest'
import { applyEdit } from '../../../src/core/job/edits/edit.ts'
import { draftedEvidence, type EvidenceDraft } from '../../../src/renderer/card/new-evidence.ts'
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
