import { describe, expect, it } from 'vitest'
import { applyEdit } from '../../../src/core/job/edits/edit.ts'
import { evidenceId } from '../../../src/core/job/from-picks/evidence-id.ts'
import type { Evidence, Job } from '../../../src/core/job/model/types.ts'
import { dimensionTable } from '../../../src/core/ledger/table/dimension-table.ts'
import { momentInWords, personName } from '../../../src/renderer/bench/signature.ts'
import { adoptionOptions, BY_THE_RULES } from '../../../src/renderer/card/adoption-options.ts'
import { evidencePart } from '../../../src/renderer/card/evidence-box.ts'
import { historyLines } from '../../../src/renderer/card/history-lines.ts'
import { draftedEvidence, type EvidenceDraft } from '../../../src/renderer/card/new-evidence.ts'
import { sampleDimension, sampleJob, sampleRow } from '../sample-job.ts'

const drafted = (draft: EvidenceDraft, name = 'neck_od') =>
  draftedEvidence(draft, sampleDimension(name), sampleJob, 'in')

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
        item: { id: 'p2', basis: 'printed', text: `1'-2 3/8" DIA.`, legibility: 'clear' },
      },
    })
  })

  it('shows what was understood in the unit that is looked at', () => {
    expect(draftedEvidence(printed('6"'), sampleDimension('neck_od'), sampleJob, 'mm')).toMatchObject({
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
      understood: '2 readings, mean 6 1/64" + 0.004"',
      edit: { item: { id: 'f1', readings: ['6.01 in', '6.03 in'], instrument: 'caliper' } },
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

  it('gives each its own id', () => {
    expect(evidenceId(sampleDimension('bolt_circle').evidence, 'printed')).toBe('p3')
    expect(evidenceId(sampleDimension('neck_od').evidence, 'derived')).toBe('d1')
  })
})

describe('the value that a dimension takes', () => {
  const rowAfter = (adopt: string) => {
    const { job } = applyEdit(sampleJob, { do: 'adopt', dimension: 'neck_height', adopt })
    const row = dimensionTable(job).rows.find(({ name }) => name === 'neck_height')
    if (row === undefined) throw new Error('no row')
    return row
  }
  const governing = (row: ReturnType<typeof sampleRow>): string[] =>
    row.evidence.filter((piece) => piece.governs).map(({ id }) => id)

  it('rests on the printed figure by the rules, and on what was chosen by choice', () => {
    expect(governing(sampleRow('neck_height'))).toEqual(['p1'])
    expect(governing(rowAfter('s1'))).toEqual(['s1'])
    expect(governing(rowAfter('mean'))).toEqual(['p1', 's1'])
  })

  it('does not rest on what is hard to read or withdrawn', () => {
    expect(governing(sampleRow('hood_od'))).toEqual(['s1'])
    expect(governing(sampleRow('bolt_circle'))).toEqual(['p1'])
  })

  it('can be settled by the rules, by a basis there is, by the mean, or by one piece of evidence', () => {
    expect(adoptionOptions(sampleRow('neck_height'), undefined).map(({ id }) => id)).toEqual([
      BY_THE_RULES,
      'printed',
      'scaled',
      'mean',
      'p1',
      's1',
    ])
  })

  it('still shows a choice that there is no evidence for', () => {
    expect(adoptionOptions(sampleRow('neck_od'), 'found').map(({ id }) => id)).toContain('found')
  })
})

describe('the part of the sheet that evidence comes from', () => {
  const piece = (name: string, id: string): Evidence => {
    const evidence = sampleDimension(name).evidence.find((one) => one.id === id)
    if (evidence === undefined) throw new Error('no evidence')
    return evidence
  }

  it('is the box of a printed figure, with a margin all round', () => {
    // The box is 236 by 153 at (2589, 1401), and a tenth of 236 is less than the least margin of 24 pixels.
    expect(evidencePart(piece('bolt_circle', 'p1'), sampleJob)).toEqual({
      sheet: 'sheet-1',
      box: [2565, 1377, 284, 201],
    })
  })

  it('holds all marks of a measure', () => {
    const evidence = piece('flange_thickness', 's1')
    const part = evidencePart(evidence, sampleJob)
    const [x, y, width, height] = part?.box ?? [0, 0, 0, 0]
    const marks = sampleJob.marks.filter(({ id }) => ['M29', 'M30'].includes(id))
    expect(marks).toHaveLength(2)
    for (const mark of marks) {
      for (const [px, py] of mark.kind === 'point' ? [mark.pixel] : mark.pixels) {
        expect(px > x && px < x + width && py > y && py < y + height).toBe(true)
      }
    }
  })

  it('is nowhere for readings, formulas and figures whose place is not known', () => {
    expect(evidencePart(piece('flange_thickness', 'f1'), sampleJob)).toBeNull()
    expect(
      evidencePart(piece('drum_bore', sampleDimension('drum_bore').evidence[0]?.id ?? ''), sampleJob),
    ).toBeNull()
    expect(evidencePart({ id: 'p9', basis: 'printed', text: '6"' }, sampleJob)).toBeNull()
  })
})

describe('the history of a dimension', () => {
  it('tells who did what, oldest first, and in one line what was done in one moment', () => {
    const lines = historyLines(sampleDimension('bolt_circle'), sampleJob)
    expect(lines.map(({ at }) => at ?? '')).toEqual(lines.map(({ at }) => at ?? '').toSorted())
    const told = lines.map(({ what }) => what).join('\n')
    expect(told).toContain('gave printed evidence p1')
    expect(told).toContain('gave, since withdrawn, printed evidence p2')
    expect(told).toContain('picked mark M37')
    expect(new Set(lines.map(({ by, at }) => `${by} ${at}`)).size).toBe(lines.length)
  })

  it('names people as the job does, and others by what they are called', () => {
    expect(personName(sampleJob, 'om')).toBe('Ottilie Marchbeck')
    expect(personName(sampleJob, 'A. Visitor')).toBe('A. Visitor')
    expect(personName({ ...sampleJob, people: [] } as Job, undefined)).toBe('somebody')
  })

  it('leaves a moment that is none as it is written', () => {
    expect(momentInWords('last week')).toBe('last week')
    expect(momentInWords(undefined)).toBe('undated')
    expect(momentInWords('2026-03-09T12:00:00Z')).toMatch(/Mar 2026/)
  })
})
