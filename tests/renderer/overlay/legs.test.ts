import { describe, expect, it } from 'vitest'
import { type Pixel, pixel } from '../../../src/core/geometry/frames.ts'
import { type Leg, legsOf } from '../../../src/renderer/overlay/legs.ts'

const leg = (a: [number, number], b: [number, number]): Leg<Pixel> => [pixel(...a), pixel(...b)]

/** Two legs from (0, 0): along, and at 35° below as the scan is seen. */
const along = leg([20, 0], [100, 0])
const slant = leg([16.4, 11.5], [81.9, 57.4])
const back = ([from, to]: Leg<Pixel>): Leg<Pixel> => [to, from]

describe('two lines that an angle is picked between', () => {
  it('enclose the angle that was picked when both were picked outwards, or both inwards', () => {
    expect(legsOf(along, slant)?.enclosed).toBe(true)
    expect(legsOf(back(along), back(slant))?.enclosed).toBe(true)
  })

  it('enclose the other one when one of them was picked towards where they meet', () => {
    expect(legsOf(back(along), slant)?.enclosed).toBe(false)
    expect(legsOf(along, back(slant))?.enclosed).toBe(false)
  })

  it('enclose all four where they cross, and meet nowhere where they are as good as parallel', () => {
    expect(legsOf(leg([-50, 0], [50, 0]), slant)?.enclosed).toBeNull()
    expect(legsOf(along, leg([0, 40], [100, 41]))).toBeNull()
  })
})
