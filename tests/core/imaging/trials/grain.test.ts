import { describe } from 'vitest'
import { trials } from '../judge/trials.ts'

describe('on grained paper', () => trials('grain', { points: 200, edges: 100, lines: 60, circles: 30 }))
