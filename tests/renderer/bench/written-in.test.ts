import { expect, test } from 'vitest'
import { writtenIn } from '../../../src/renderer/bench/written-in.ts'

test('what a hand wrote for an edit is found word for word, and nothing else of it', () => {
  expect(
    writtenIn({
      do: 'add-evidence',
      dimension: 'collar',
      item: {
        id: 'e-23456789bcdfg',
        number: 1,
        basis: 'found',
        readings: ['217 mm', '8 1/2 in'],
        instrument: 'i-23456789bcdfg',
        by: 'AR',
      },
    }),
  ).toEqual(['217 mm', '8 1/2 in'])
  expect(
    writtenIn({
      do: 'several',
      name: 'add two',
      edits: [
        { do: 'add-note', item: { id: 'n-23456789bcdfg', text: 'Two lines,\nas written', sheet: 'S1' } },
        { do: 'change-sheet', id: 'S1', set: { title: 'Drum', record: { number: '12 A' } } },
      ],
    }),
  ).toEqual(['add two', 'Two lines,\nas written', 'Drum', '12 A'])
  expect(writtenIn({ do: 'withdraw-evidence', dimension: 'collar', id: 'P1', why: 'smudged' })).toEqual([
    'smudged',
  ])
  expect(writtenIn({ do: 'adopt', dimension: 'collar', adopt: 'mean' })).toEqual([])
})
