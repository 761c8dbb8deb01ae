import { describe, expect, it } from 'vitest'
import { edgeReading, edgeResponse, readEdge } from '../../../src/core/imaging/fit/edge-response.ts'
import { normalCumulative } from '../../../src/core/imaging/fit/normal.ts'
import { bilevelEdgeVariance } from '../../../src/core/imaging/noise/bilevel-edge.ts'
import { caseStream } from './simulate/case-stream.ts'
import { cumulative, pixelShare } from './simulate/pixel-share.ts'

describe('the response of a scan to an edge', () => {
  it.each([
    [0, 0.5],
    [0.3, 0.7],
    [Math.PI / 4, 0.4],
    [1.5, 1.2],
  ])('at %f rad and %f px of blur is the mean of the blurred edge over the pixel', (angle, blur) => {
    const across = [Math.cos(angle), Math.sin(angle)] as const
    const response = edgeResponse(across, blur)
    const out = edgeReading()
    for (let depth = -3; depth <= 3; depth += 0.21) {
      readEdge(response, depth, out)
      expect(Math.abs(out.step - pixelShare(depth, across, blur))).toBeLessThan(2e-4)
    }
  })

  it('spreads a line to the area of 1', () => {
    const response = edgeResponse([0.6, 0.8], 0.8)
    const out = edgeReading()
    let area = 0
    for (let u = -6; u < 6; u += 0.01) {
      readEdge(response, u, out)
      area += 0.01 * out.spread
    }
    expect(area).toBeCloseTo(1, 4)
  })
})

describe('the cumulative normal distribution', () => {
  it.each([-6, -3.29, -1.96, -0.1, 0, 0.674, 1.645, 5])('at %f agrees with jstat', (z) => {
    expect(Math.abs(normalCumulative(z) - cumulative(z))).toBeLessThan(1e-6)
  })
})

describe('the edge of a one-bit scan', () => {
  it.each([
    [30, 0.003],
    [30, 0.02],
    [30, 0.11],
    [24, 0.43],
  ])('averaged over %f px at a slope of %f is out by the saw-tooth that is stated', (length, slope) => {
    // Whole pixels: the edge y = a + slope·x is seen at the nearest whole number in each column.
    const random = caseStream(Math.round(1e6 * slope))
    const trials = 4000
    let squares = 0
    for (let i = 0; i < trials; i++) {
      const start = random.uniform()
      let sum = 0
      for (let x = 0; x < length; x++) {
        const y = start + slope * (x + 0.5)
        sum += Math.round(y) - y
      }
      squares += (sum / length) ** 2
    }
    const angle = Math.atan(slope)
    const simulated = (squares / trials) * Math.cos(angle) ** 2
    const stated = bilevelEdgeVariance(length / Math.cos(angle), [-Math.sin(angle), Math.cos(angle)])
    expect(stated).toBeGreaterThan(0.5 * simulated)
    expect(stated).toBeLessThan(2 * simulated + 1e-4)
  })
})
