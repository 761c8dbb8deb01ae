import { describe } from 'vitest'
import { trials } from '../judge/trials.ts'

describe('in one bit', () =>
  trials('one bit', {
    points: 200,
    edges: 60,
    lines: 60,
    linesPartlyHidden: 60,
    circlesPartlyHidden: 30,
    arcs: 30,
    crossings: ['X'],
  }))
