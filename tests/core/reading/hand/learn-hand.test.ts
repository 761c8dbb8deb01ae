import { describe, expect, it } from 'vitest'
import { handOfFigures } from '../../../../src/core/reading/hand/hand-of-figures.ts'
import { largestStretch } from '../../../../src/core/reading/hand/largest-stretch.ts'
import { learnHand, type NamedGlyph } from '../../../../src/core/reading/hand/learn-hand.ts'
import { dice } from '../drawn/dice.ts'
import { scoreHand } from '../judge/hand-lesson.ts'

const TRAITS = 16
const NAMES = 12

/**
 * Figures of an invented hand: each name has traits of its own, by which the network goes wrong for some names.
 * @param odd how far what the network makes of a name is off, as a logarithm
 */
function figuresOf(seed: number, count: number, odd: number): NamedGlyph[][] {
  const hand = dice(seed)
  const shapes = Array.from({ length: NAMES }, () =>
    Float32Array.from({ length: TRAITS }, () => Math.max(0, hand.normal())),
  )
  const taken = Array.from({ length: NAMES }, () => hand.whole(0, NAMES - 1))
  const d = dice(seed, 1)
  return Array.from({ length: count }, () =>
    Array.from({ length: 5 }, () => {
      const glyph = d.whole(0, NAMES - 1)
      const traits = (shapes[glyph] ?? new Float32Array(TRAITS)).map((v) => Math.max(0, v + 0.3 * d.normal()))
      const logs = Float32Array.from({ length: NAMES }, () => d.normal() - 4)
      logs[glyph] = d.normal()
      const other = taken[glyph] ?? 0
      if (other !== glyph) logs[other] = odd + d.normal()
      return { glyph, logs, traits }
    }),
  )
}

/** Figures whose glyphs are what the network says as often as it says so, whatever their traits. */
function rightInTheLongRun(seed: number, count: number): NamedGlyph[][] {
  const d = dice(seed, 3)
  return Array.from({ length: count }, () =>
    Array.from({ length: 5 }, () => {
      const logs = Float32Array.from({ length: NAMES }, () => 2 * d.normal())
      let left = d.uniform() * logs.reduce((sum, log) => sum + Math.exp(log), 0)
      const glyph = logs.findIndex((log) => {
        left -= Math.exp(log)
        return left <= 0
      })
      const traits = Float32Array.from({ length: TRAITS }, () => Math.max(0, d.normal()))
      return { glyph: Math.max(0, glyph), logs, traits }
    }),
  )
}

describe('a hand that is learned', () => {
  it('names more glyphs rightly that it never saw, of each of six hands, and the more it saw the more', () => {
    const shares = [0, 3, 10, 50].map(() => 0)
    for (let seed = 1; seed <= 6; seed++) {
      const figures = figuresOf(seed, 90, 0)
      const asked = figures.slice(50)
      const wrong = [0, 3, 10, 50].map((known) => {
        const { glyphsWrong, glyphs } = scoreHand(handOfFigures(figures.slice(0, known)), asked)
        return glyphsWrong / glyphs
      })
      expect(wrong[3]).toBeLessThan((wrong[0] ?? 0) / 2)
      for (const [i, share] of wrong.entries()) shares[i] = (shares[i] ?? 0) + share / 6
    }
    expect(shares[0]).toBeGreaterThan(0.2)
    expect(shares).toEqual([...shares].sort((a, b) => b - a))
  })

  it('is none where the network knew it all, or nothing is known, or one figure alone', () => {
    const plain = figuresOf(3, 20, -12)
    const asked = figuresOf(3, 60, -12).slice(20)
    expect(scoreHand(handOfFigures(plain), asked).glyphsWrong).toBeLessThanOrEqual(
      scoreHand(undefined, asked).glyphsWrong,
    )
    expect(handOfFigures([])).toBeUndefined()
    expect(handOfFigures(figuresOf(1, 1, 0))).toBeUndefined()
    expect(learnHand([])).toBeUndefined()
  })

  it('is left aside, mostly, where the network is right in the long run and traits tell nothing', () => {
    let used = 0
    let [guarded, whatever] = [0, 0]
    for (let seed = 1; seed <= 10; seed++) {
      const figures = rightInTheLongRun(seed, 90)
      const [known, asked] = [figures.slice(0, 30), figures.slice(30)]
      const hand = handOfFigures(known)
      if (hand !== undefined) used += 1
      const without = scoreHand(undefined, asked).logs
      guarded += without - scoreHand(hand, asked).logs
      whatever += without - scoreHand(learnHand(known.flat()), asked).logs
    }
    expect(used).toBeLessThan(5)
    expect(whatever).toBeGreaterThan(0)
    expect(guarded).toBeLessThan(whatever / 2)
  })

  it('is hardly led astray by one name in ten that is wrong', () => {
    for (let seed = 1; seed <= 3; seed++) {
      const d = dice(seed, 2)
      const figures = figuresOf(seed, 110, 0)
      const slips = figures
        .slice(0, 50)
        .map((figure) =>
          figure.map((one) => (d.happens(0.1) ? { ...one, glyph: d.whole(0, NAMES - 1) } : one)),
        )
      const asked = figures.slice(50)
      const without = scoreHand(undefined, asked)
      expect(scoreHand(handOfFigures(slips), asked).glyphsWrong).toBeLessThan(without.glyphsWrong / 2)
    }
  })
})

describe('the largest stretch', () => {
  // By hand: [[2, 1], [1, 2]] has the eigenvalues 3 and 1.
  it('is the largest eigenvalue, and not much more', () => {
    const rows = [Float32Array.of(1, 0), Float32Array.of(0, 1), Float32Array.of(1, 1)]
    expect(largestStretch(rows)).toBeGreaterThanOrEqual(3)
    expect(largestStretch(rows)).toBeLessThan(3.2)
    expect(largestStretch([])).toBe(0)
  })
})
