import * as elements from '../../linear-algebra/elements-unchecked.ts'
import { type EdgeResponse, edgeReading, edgeResponse, readEdge } from './edge-response.ts'

const { f64 } = elements

/** Blur that is left of a lens besides its focus, pixels. */
const SHARP = 0.2
/** Places across a disc at which a sharper edge is read. */
const PLACES = 9

/**
 * What a scan out of focus makes of a sharp edge: as `edgeResponse`, with each point of the drawing a disc rather than a
 * Gaussian. Across an edge a disc weighs as a half circle does: the sharper edge is read by Gauss's rule for that weight
 * (Chebyshev polynomials of the second kind; Abramowitz & Stegun 25.4.40).
 * @param blur standard deviation of the disc, pixels: half of its radius
 */
export function discResponse(across: readonly [number, number], blur: number): EdgeResponse {
  const sharp = edgeResponse(across, SHARP)
  const radius = 2 * blur
  const { fine } = sharp
  const nodes = Math.ceil((sharp.reach + radius) * fine)
  const out: EdgeResponse = {
    reach: nodes / fine,
    fine,
    step: new Float64Array(2 * nodes + 2),
    spread: new Float64Array(2 * nodes + 2),
    slope: new Float64Array(2 * nodes + 2),
  }
  const at = edgeReading()
  for (let k = 1; k <= PLACES; k++) {
    const angle = (k * Math.PI) / (PLACES + 1)
    const weight = (2 / (PLACES + 1)) * Math.sin(angle) ** 2
    for (let i = 0; i < 2 * nodes + 2; i++) {
      readEdge(sharp, (i - nodes) / fine - radius * Math.cos(angle), at)
      out.step[i] = f64(out.step, i) + weight * at.step
      out.spread[i] = f64(out.spread, i) + weight * at.spread
      out.slope[i] = f64(out.slope, i) + weight * at.slope
    }
  }
  return out
}
