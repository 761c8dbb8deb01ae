import { describe, expect, test } from 'vitest'
import type { SeenWord } from '../../../../src/core/reading/labels/seen-word.ts'
import { titleLabels } from '../../../../src/core/reading/labels/title-labels.ts'

/** Words of a row, each letter two thirds as wide as it is high. */
function row(x: number, y: number, text: string, height = 30, probability = 0.9): SeenWord[] {
  let left = x
  return text.split(' ').map((word) => {
    const width = Math.round((word.length * height * 2) / 3)
    const box = [left, y, width, height] as const
    left += width + Math.round(height / 2)
    return { text: word, probability, box }
  })
}

const saying = (words: readonly SeenWord[]): [string, string][] =>
  titleLabels(words).map(({ field, text }) => [field, text])

describe('what a title block says', () => {
  test('stands beside its labels', () => {
    expect(
      saying([
        ...row(0, 0, 'DATE: 3 MAY 1921', 30, 0.999),
        ...row(0, 60, 'Scale 1:24', 30, 0.98),
        ...row(0, 120, 'DRG. No. 417', 30, 0.97),
        ...row(0, 180, 'DRAWN BY A.R.', 30, 0.96),
        ...row(0, 240, 'MATERIAL MILD STEEL', 30, 0.95),
        ...row(0, 300, 'TITLE COWL', 30, 0.94),
      ]),
    ).toEqual([
      ['date', '3 MAY 1921'],
      ['scale', '1:24'],
      ['number', '417'],
      ['drawn-by', 'A.R.'],
      ['title', 'COWL'],
      ['material', 'MILD STEEL'],
    ])
  })

  test('stands below them where nothing is beside', () => {
    const words = [
      ...row(0, 0, 'DATE', 16),
      ...row(200, 0, 'SCALE', 16),
      ...row(0, 26, '3-5-21', 30),
      ...row(200, 26, 'FULL SIZE', 30),
    ]
    const found = titleLabels(words)
    expect(found.map(({ field, text }) => [field, text])).toEqual([
      ['date', '3-5-21'],
      ['scale', 'FULL SIZE'],
    ])
    expect(found[0]?.box).toEqual([0, 26, 120, 30])
    expect(found[0]?.probability).toBeCloseTo(0.9, 9)
    expect(found[1]?.probability).toBeCloseTo(0.81, 9)
  })

  test('ends where the next label begins', () => {
    expect(saying(row(0, 0, 'DATE 1921 SCALE 1:8'))).toEqual([
      ['date', '1921'],
      ['scale', '1:8'],
    ])
  })

  test('is its number also where the raised o of "No" is read as something else', () => {
    for (const no of ['No', 'NO.', 'N°', 'Ne', 'N'])
      expect(saying(row(0, 0, `DRAWING ${no} 1172`))).toEqual([['number', '1172']])
    expect(saying(row(0, 0, 'DRAWING OFFICE 1172'))).toEqual([])
  })

  test('has the highest lettering for its title, where none is labelled and it stands out', () => {
    const rest = [...row(0, 0, 'CAST IRON'), ...row(0, 50, 'SHEET STEEL'), ...row(0, 100, 'RIVETS')]
    expect(saying([...rest, ...row(0, 150, 'FERRY COWL', 60)])).toEqual([['title', 'FERRY COWL']])
    expect(saying([...rest, ...row(0, 150, 'FERRY COWL', 34)])).toEqual([])
    expect(saying([...rest, ...row(0, 150, '== ~~~', 60)])).toEqual([])
  })

  test('is told at most three times of each field, the surest first', () => {
    const words = [0.5, 0.9, 0.7, 0.8].flatMap((probability, i) =>
      row(0, 50 * i, `SCALE 1:${i}`, 30, probability),
    )
    expect(saying(words)).toEqual([
      ['scale', '1:1'],
      ['scale', '1:3'],
      ['scale', '1:2'],
    ])
  })

  test('is nothing where there are no words, or a label without any', () => {
    expect(titleLabels([])).toEqual([])
    expect(saying(row(0, 0, 'SCALE'))).toEqual([])
    expect(saying([...row(0, 0, 'SCALE'), ...row(400, 0, '1:8')])).toEqual([])
  })
})
