import { describe, expect, it } from 'vitest'
import type { Note } from '../../../../src/core/job/model/types.ts'
import { notesFound } from '../../../../src/renderer/desk/notes/note-search.ts'
import { aboutOf, noteNumber } from '../../../../src/renderer/desk/notes/note-words.ts'
import { sampleJob } from '../../sample-job.ts'

const found = (sought: string): string[] => notesFound(sampleJob, sought).map(({ id }) => id)

describe('Notes are found as one types', () => {
  it('by words of their text, in any order and case', () => {
    expect(found('')).toEqual(sampleJob.notes.map(({ id }) => id))
    expect(found('stain FIGURE')).toEqual(['N1'])
    expect(found('figure stain nowhere')).toEqual([])
  })

  it('by who wrote them and when, by name and not by id alone', () => {
    const by = (name: string) =>
      sampleJob.notes
        .filter((note) => sampleJob.people.find(({ id }) => id === note.by)?.name.startsWith(name))
        .map(({ id }) => id)
    expect(by('Joss').length).toBeGreaterThan(0)
    expect(found('joss')).toEqual(by('Joss'))
    expect(found('mar 2026')).toEqual(sampleJob.notes.map(({ id }) => id))
  })

  it('by the dimension that they are about, by its name and by its label', () => {
    expect(found('hood_od')).toContain('N1')
    expect(found('hood, outside')).toContain('N1')
  })

  it('sheet by sheet', () => {
    const [sheet] = sampleJob.sheets
    if (sheet === undefined) throw new Error('The sample has a sheet.')
    const job = { ...sampleJob, sheets: [{ ...sheet, id: 'first' }, sheet] }
    const note = { ...(job.notes[0] as Note), id: 'N9', sheet: 'first' }
    expect(notesFound({ ...job, notes: [...job.notes, note] }, '')[0]?.id).toBe('N9')
  })
})

describe('What a note is called and is about', () => {
  it('by the number in its id', () => {
    expect(noteNumber({ id: 'N12' })).toBe('12')
    expect(noteNumber({ id: 'stain' })).toBe('stain')
  })

  it('a dimension, a view, a mark, a sheet, or what somebody wrote', () => {
    const [view] = sampleJob.views
    const [mark] = sampleJob.marks
    expect(aboutOf(sampleJob, 'hood_od')).toEqual({
      words: 'Hood, outside diameter',
      selection: { kind: 'dimension', name: 'hood_od' },
    })
    expect(aboutOf(sampleJob, view?.id)?.selection).toEqual({ kind: 'view', id: view?.id })
    expect(aboutOf(sampleJob, mark?.id)?.selection).toEqual({ kind: 'mark', id: mark?.id })
    expect(aboutOf(sampleJob, 'sheet-1')?.words).toBe('Sheet “Deck ventilator, chain ferry No. 2”')
    expect(aboutOf(sampleJob, 'love')).toEqual({ words: 'love', selection: null })
    expect(aboutOf(sampleJob, undefined)).toBeNull()
  })
})
