import { describe } from 'vitest'
import { trials } from '../judge/trials.ts'

describe('in white noise', () =>
  trials('noise', {
    points: 200,
    edges: 60,
    lines: 100,
    circles: 30,
    arcs: 40,
    crossings: ['X', 'T', 'L'],
  }))
