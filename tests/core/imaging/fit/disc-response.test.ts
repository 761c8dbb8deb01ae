import { expect, it } from 'vitest'
import { discResponse } from '../../../../src/core/imaging/fit/disc-response.ts'
import { edgeReading, readEdge } from '../../../../src/core/imaging/fit/edge-response.ts'

/** How much of a disc of radius 1 lies to one side of a straight line, so far from its middle. */
const ofDisc = (u: number): number =>
  u <= -1 ? 0 : u >= 1 ? 1 : 0.5 + (u * Math.sqrt(1 - u * u) + Math.asin(u)) / Math.PI

it('a disc out of focus lays as much on a pixel as its area does', () => {
  const radius = 2.4
  const edge = discResponse([0, 1], radius / 2)
  const at = edgeReading()
  for (let u = -4; u <= 4; u += 0.25) {
    readEdge(edge, u, at)
    let area = 0
    for (let k = 0; k < 200; k++) area += ofDisc((u + (k + 0.5) / 200 - 0.5) / radius) / 200
    // A lens has a little blur of its own besides.
    expect(Math.abs(at.step - area)).toBeLessThan(0.01)
  }
})
