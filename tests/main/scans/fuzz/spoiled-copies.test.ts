import { afterAll, describe, expect, test } from 'vitest'
import { fuzzDesk } from './fuzz-desk.ts'
import { tryCopies } from './try-copies.ts'

/** Every so many of the 2,000 copies; all of them are tried by tests/bench/fuzz-scans.ts. */
const EACH = 7
const ALL = 2000

const desk = await fuzzDesk()
afterAll(() => desk.close())

describe('spoiled copies of scans of every kind', () => {
  test('are answered or refused in words, in time, and leave no trace', async () => {
    const numbers = Array.from({ length: Math.ceil(ALL / EACH) }, (_, i) => i * EACH)
    const outcomes = await tryCopies(desk, numbers)
    expect(outcomes.filter(({ faults }) => faults.length > 0)).toEqual([])
    // Both happen, or nothing was tried.
    expect(outcomes.filter(({ taken }) => taken).length).toBeGreaterThan(20)
    expect(outcomes.filter(({ taken }) => !taken).length).toBeGreaterThan(100)
  }, 480_000)
})
