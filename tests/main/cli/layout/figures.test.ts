import { describe, expect, test } from 'vitest'
import type { FigureReading } from '../../../../src/core/reading/figure-reading.ts'
import { figuresJson } from '../../../../src/main/cli/layout/figures-json.ts'
import { figuresText } from '../../../../src/main/cli/layout/figures-text.ts'

const nothing: FigureReading = {
  box: [10, 20, 30, 40],
  angle: 0,
  text: null,
  asRead: '',
  value: null,
  kind: null,
  clear: false,
  probability: 0,
  alternatives: [],
  lattice: { slots: [] },
}

const READINGS: FigureReading[] = [
  {
    ...nothing,
    box: [100.4, 60, 140, 50],
    text: '14 3/8"',
    asRead: '14 3/8',
    value: 365.125,
    kind: 'length',
    clear: true,
    probability: 0.9996,
    alternatives: [{ text: '14 5/8"', probability: 0.0002 }],
  },
  {
    ...nothing,
    angle: -90,
    text: '7 1/2"',
    asRead: '7 1/2',
    value: 190.5,
    kind: 'length',
    probability: 0.71,
    alternatives: [
      { text: '1 1/2"', probability: 0.24 },
      { text: '7 1/4"', probability: 0.04 },
    ],
  },
  { ...nothing, text: '30°', asRead: '30°', value: 30, kind: 'angle', clear: true, probability: 0.98 },
  { ...nothing, asRead: 'SEE B', probability: 0.9 },
  nothing,
]

describe('figures for a terminal', () => {
  test('stand one a row, with how sure each is and what else it could be', () => {
    expect(figuresText(READINGS, 100)).toBe(
      [
        'figure   how sure        x,y,width,height  could also be',
        '──────────────────────────────────────────────────────────────────',
        '14 3/8"  clear, 99.9 %   100,60,140,50',
        '7 1/2"   doubtful, 71 %  10,20,30,40       1 1/2" 24 %; 7 1/4" 4 %',
        '30°      clear, 98 %     10,20,30,40',
        '—        no figure       10,20,30,40       the strokes say SEE B',
        '—        nothing seen    10,20,30,40',
        '',
      ].join('\n'),
    )
  })

  test('have what else they could be below them where there is little room', () => {
    const lines = figuresText(READINGS, 50).split('\n')
    expect(lines[3]).toBe('7 1/2"   doubtful, 71 %  10,20,30,40')
    expect(lines[4]).toBe('    1 1/2" 24 %; 7 1/4" 4 %')
    expect(Math.max(...lines.map((line) => line.length))).toBeLessThanOrEqual(50)
  })

  test('that are none are said to be none', () => {
    expect(figuresText([], 80)).toBe('No figure was found on the page.\n')
  })
})

describe('figures as JSON', () => {
  const valuesIn = (unit: 'in' | 'mm') =>
    (JSON.parse(figuresJson(READINGS, unit)) as { figures: { value: unknown; unit: unknown }[] }).figures.map(
      ({ value, unit }) => [value, unit],
    )

  test('have their values in the unit that is asked for, angles in degrees, and what is no figure none', () => {
    expect(valuesIn('in')).toEqual([
      [14.375, 'in'],
      [7.5, 'in'],
      [30, 'degrees'],
      [null, null],
      [null, null],
    ])
    expect(valuesIn('mm').slice(0, 3)).toEqual([
      [365.125, 'mm'],
      [190.5, 'mm'],
      [30, 'degrees'],
    ])
  })
})
