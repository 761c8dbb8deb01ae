import { describe } from 'vitest'
import { trials } from '../judge/trials.ts'

describe('through JPEG at quality 70', () =>
  trials('JPEG', { points: 200, edges: 60, lines: 60, circles: 25, crossings: ['X'] }))
