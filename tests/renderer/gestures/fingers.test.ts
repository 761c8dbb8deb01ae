import { describe, expect, it } from 'vitest'
import { screen } from '../../../src/core/geometry/frames.ts'
import { Fingers } from '../../../src/renderer/gestures/fingers.ts'

describe('fingers on the sheet', () => {
  it('one alone does what a mouse does', () => {
    const fingers = new Fingers()
    expect(fingers.down(1, screen(10, 10))).toBe(1)
    expect(fingers.move(1, screen(30, 10))).toBeNull()
    expect(fingers.up(1)).toBe(false)
  })

  it('two move the sheet and enlarge it about the place between them, and lifting them is no pick', () => {
    const fingers = new Fingers()
    fingers.down(1, screen(100, 100))
    expect(fingers.down(2, screen(200, 100))).toBe(2)
    expect(fingers.move(2, screen(300, 100))).toEqual({ about: [150, 100], factor: 2, by: [50, 0] })
    expect(fingers.move(1, screen(100, 150))?.by).toEqual([0, 25])
    expect(fingers.up(2)).toBe(true)
    // What is left of the two still picks nothing.
    expect(fingers.move(1, screen(90, 150))).toEqual({ about: [90, 150], factor: 1, by: [0, 0] })
    expect(fingers.up(1)).toBe(true)
    expect(fingers.down(3, screen(0, 0))).toBe(1)
    expect(fingers.up(3)).toBe(false)
  })
})
