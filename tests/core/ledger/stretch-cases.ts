import type { RandomStream } from '../../../src/core/uncertainty/random.ts'
import { ACROSS, ALONG, ONE_KNOWN, type StretchedSheet, WELL_KNOWN } from './stretched-sheet.ts'

type Stretches = (i: number, random: RandomStream) => number

/** Paper that shrank 0.8 % more one way than the other, and as often the other way. */
const bothWays: Stretches = (i) => (i % 2 === 0 ? 0.008 : -0.008)

interface StretchCase {
  stretch: Stretches
  sheet: Pick<StretchedSheet, 'views' | 'paper'>
  /** Whether intervals are to hold the truth 19 times in 20, or at least so often. */
  bound: 'exactly' | 'at least'
}

const two = { ...ONE_KNOWN, mapping: 'two-axis' as const }

export const STRETCH_CASES: Record<string, StretchCase> = {
  'one size, one scale by choice, beside a view that tells': {
    stretch: bothWays,
    sheet: { views: [WELL_KNOWN, ONE_KNOWN] },
    bound: 'exactly',
  },
  'one size, two scales by choice, before a view that tells': {
    stretch: bothWays,
    sheet: { views: [two, WELL_KNOWN] },
    bound: 'exactly',
  },
  'one size across beside two views that tell': {
    stretch: bothWays,
    sheet: {
      views: [
        { ...ONE_KNOWN, known: [ACROSS] },
        { ...WELL_KNOWN, known: [ALONG, ACROSS] },
        { ...WELL_KNOWN, at: [6000, 1000], scale: 8 },
      ],
    },
    bound: 'exactly',
  },
  'one size alone, on paper that does what is allowed for': {
    stretch: (_, random) => 0.005 * random.normal(),
    sheet: { views: [ONE_KNOWN] },
    bound: 'exactly',
  },
  'one size alone, on paper that keeps its shape': {
    stretch: () => 0,
    sheet: { views: [ONE_KNOWN] },
    bound: 'at least',
  },
  'one size alone, on paper that does what the sheet states': {
    stretch: (_, random) => 0.012 * random.normal(),
    sheet: { views: [ONE_KNOWN], paper: '1.2 %' },
    bound: 'exactly',
  },
}
