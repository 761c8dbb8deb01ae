import { expect } from 'vitest'
import type { Score } from './score.ts'

/**
 * What picking finer than a pixel must show: the rms error against the Cramér–Rao bound (or the floor where that is
 * more), the stated uncertainty by chi-square, and that strokes that are there are found.
 */
export function mustBeAccurate(s: Score): void {
  expect(s.overAllowed, `rms of error over allowed: ${told(s)}`).toBeLessThanOrEqual(1)
}

/** The stated uncertainty is right within 30 %: errors in units of it have an rms of 0.7 to 1.3. */
export function mustBeHonest(s: Score): void {
  const ratio = Math.sqrt(s.chiSquare)
  expect(ratio, `rms error over stated uncertainty: ${told(s)}`).toBeGreaterThanOrEqual(0.7)
  expect(ratio, `rms error over stated uncertainty: ${told(s)}`).toBeLessThanOrEqual(1.3)
}

export function mustBeFound(s: Score): void {
  expect(s.missed / s.cases, `strokes missed: ${told(s)}`).toBeLessThanOrEqual(0.02)
}

const told = (s: Score): string =>
  JSON.stringify(s, (_, v: unknown) => (typeof v === 'number' ? Number(v.toPrecision(3)) : v))
