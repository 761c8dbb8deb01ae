import { describe, expect, it } from 'vitest'
import { changeInPlace, isChangedInPlace, textInPlace } from '../../../src/renderer/table/change-in-place.ts'
import { sentenceOf } from '../../../src/renderer/words/window-words.ts'
import { sampleJob } from '../sample-job.ts'

const change = (column: 'name' | 'label' | 'count' | 'figure', text: string) =>
  changeInPlace(sampleJob, 'hole_dia', column, text)

/** Why a change is refused, in words. */
const said = (came: ReturnType<typeof changeInPlace>): string =>
  sentenceOf(came !== null && 'refused' in came ? came.refused : null)

describe('changing a dimension where it stands in the table', () => {
  it('begins from what the job has', () => {
    expect(textInPlace(sampleJob, 'hole_dia', 'name')).toBe('hole_dia')
    expect(textInPlace(sampleJob, 'hole_dia', 'label')).toBe('Hole in foot flange, diameter')
    expect(textInPlace(sampleJob, 'hole_dia', 'count')).toBe('8')
    expect(textInPlace(sampleJob, 'drum_od', 'count')).toBe('1')
  })

  it('renames, labels and counts', () => {
    expect(change('name', ' bolt_hole ')).toEqual({
      edit: { do: 'rename-dimension', name: 'hole_dia', to: 'bolt_hole' },
    })
    expect(change('label', 'Bolt hole')).toEqual({
      edit: { do: 'change-dimension', name: 'hole_dia', set: { label: 'Bolt hole' } },
    })
    expect(change('count', '12')).toEqual({
      edit: { do: 'change-dimension', name: 'hole_dia', set: { count: 12 } },
    })
  })

  it('makes no edit of what was left as it was', () => {
    expect(change('name', 'hole_dia')).toBeNull()
    expect(change('count', ' 8 ')).toBeNull()
  })

  it.each([
    ['name', '2 holes', /formulas/],
    ['name', 'drum_od', /twice|another/],
    ['name', 'pi', /means something/],
    ['name', '', /needs a name/],
    ['label', ' ', /few words/],
    ['count', '0', /whole number/],
    ['count', '2.5', /whole number/],
    ['count', 'eight', /whole number/],
    ['figure', '3/8"', /evidence/],
  ] as const)('says why the %s can not be “%s”', (column, text, why) => {
    expect(said(change(column, text))).toMatch(why)
  })

  it('takes a formula where one gives the figure, and no other figure', () => {
    expect(isChangedInPlace(sampleJob, 'drum_bore', 'figure')).toBe(true)
    expect(isChangedInPlace(sampleJob, 'hole_dia', 'figure')).toBe(false)
    expect(textInPlace(sampleJob, 'drum_bore', 'figure')).toBe('drum_od - 2 * sheet_thickness')
    const formula = (text: string) => changeInPlace(sampleJob, 'drum_bore', 'figure', text)
    expect(formula('drum_od - sheet_thickness')).toMatchObject({
      edit: { do: 'change-evidence', dimension: 'drum_bore', set: { formula: 'drum_od - sheet_thickness' } },
    })
    expect(formula(' drum_od - 2 * sheet_thickness ')).toBeNull()
    expect(said(formula(''))).toMatch(/empty/)
    expect(said(formula('drum_od -'))).toMatch(/breaks off/)
    expect(said(formula('drum_bore + 1"'))).toMatch(/drum_bore/)
    expect(said(formula('drum_od * drum_od'))).toMatch(/area/)
  })

  it('takes readings of the original, also where there are none yet', () => {
    expect(textInPlace(sampleJob, 'hole_dia', 'original')).toBe('0.564 in 0.561 in 0.563 in')
    expect(textInPlace(sampleJob, 'drum_od', 'original')).toBe('')
    expect(changeInPlace(sampleJob, 'hole_dia', 'original', '9/16 0.563')).toMatchObject({
      edit: { do: 'change-evidence', set: { readings: ['9/16', '0.563'] } },
    })
    expect(changeInPlace(sampleJob, 'drum_od', 'original', '8 3/4')).toMatchObject({
      edit: { do: 'add-evidence', item: { basis: 'found', readings: ['8 3/4'] } },
    })
    expect(said(changeInPlace(sampleJob, 'drum_od', 'original', '8 3/4 wide?'))).toMatch(/wide/)
  })

  it('says it as a sentence, with a capital at its start and a stop at its end', () => {
    expect(said(change('name', '2 holes'))).toMatch(/^[A-Z].*\.$/)
  })

  it('says so when the dimension is gone meanwhile', () => {
    expect(changeInPlace(sampleJob, 'no_such', 'name', 'other')).toHaveProperty('refused')
  })
})
