import { describe } from 'vitest'
import { trials } from '../judge/trials.ts'

describe('blurred', () => trials('blur', { points: 200, edges: 100, lines: 60, circles: 30 }))
