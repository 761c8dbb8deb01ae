/**
 * What the place of an edge owes to how a scan was made, which the scan itself does not tell (Type B, GUM 4.3).
 */

/** Variance of a pixel's own square. */
const PIXEL = 1 / 12
/**
 * Standard uncertainty of the width of a stroke 1 px wide seen through a lens of 1 px: blurs from a box to one with long
 * tails have fourth cumulants up to their variance squared either way, a width is told from its own by −w⁴/120, and least
 * squares follow that by a third on the average.
 */
const OF_LENS = 9
/** So narrow a stroke, pixels, takes a blur with a flat top for its own width: the blur that was fitted is then too small. */
const NARROW = 1.6
/** No more than this share of the width: a stroke is there. */
const MOST_OF_WIDTH = 0.35

/**
 * Variance of an edge of a grey scan, pixels²: the blur is fitted as a Gaussian's, which no lens, sensor or sharpening is. Of a
 * wide stroke that moves no edge; of one that is hardly wider than the blur the width is a matter of its shape.
 * @param width and blur of the stroke, pixels
 */
export function lensVariance({ width, blur }: { width: number; blur: number }): number {
  const spread = (blur ** 2 + PIXEL) ** 2
  const taken = 1 + (NARROW / width) ** 4
  const ofWidth = Math.min((OF_LENS * spread * taken) / width ** 3, MOST_OF_WIDTH * width)
  return (ofWidth / 2) ** 2
}

/** Usual spread of an edge before it was made black or white: blur of 0.7 px and the pixel's square. */
const EDGE_SPREAD = Math.sqrt(0.7 ** 2 + PIXEL)
/** A threshold lies between 0.3 and 0.7 of the contrast, as likely anywhere: standard deviations of the spread from its middle. */
const OF_THRESHOLD = 0.524 / Math.sqrt(3)

/**
 * Variance of an edge of a scan of one bit, pixels²: at which grey it was made black or white nobody knows, and that moves
 * both edges outwards or inwards alike; the centre stays. A narrow stroke rises less steeply, and moves more.
 */
export function thresholdVariance(width: number): number {
  const slope = 1 - Math.exp(-(width ** 2) / (2 * EDGE_SPREAD ** 2))
  return (OF_THRESHOLD * EDGE_SPREAD) ** 2 / slope ** 2
}
