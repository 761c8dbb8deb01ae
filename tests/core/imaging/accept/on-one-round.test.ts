import { describe, expect, it } from 'vitest'
import { type Pixel, pixel } from '../../../../src/core/geometry/frames.ts'
import { isOnOneRound } from '../../../../src/core/imaging/accept/on-one-round.ts'

const STEPS = [-12, -9, -6, -3, 3, 6, 9, 12]
/** Along two lines that turn by so much where they meet. */
const bent = (turn: number): Pixel[] =>
  STEPS.map((s) => pixel(50 + s * Math.cos(turn / 2), 50 + Math.abs(s) * Math.sin(turn / 2)))
const crossing = (turn: number) => ({
  pixel: pixel(50, 50),
  directions: [turn / 2, -turn / 2] as const,
})

describe('what was taken for a crossing is one round stroke', () => {
  it('where the centres lie on a circle', () => {
    const onCircle = STEPS.map((s) => pixel(50 + 20 * Math.sin(s / 20), 70 - 20 * Math.cos(s / 20)))
    expect(isOnOneRound(onCircle, crossing(0.6))).toBe(true)
  })

  it('not where they lie on two lines', () => expect(isOnOneRound(bent(0.6), crossing(0.6))).toBe(false))

  it('not where they lie on one line, through which no circle goes', () =>
    expect(isOnOneRound(bent(0), crossing(0.6))).toBe(false))
})
