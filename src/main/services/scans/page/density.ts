/** Pixels per inch across and down. */
export interface Density {
  x: number
  y: number
}

/** Further apart than rounding explains. */
const UNEQUAL = 0.005

/** More is what arithmetic left behind. */
const DIGITS = 9

/**
 * One resolution for a page whose two may differ: their geometric mean, so that its area is right. The scale of a
 * sheet is calibrated in any case; this number is for showing, and for a first guess.
 */
export const oneDpi = ({ x, y }: Density): number => Number(Math.sqrt(x * y).toPrecision(DIGITS))

export function unequalRemark(what: string, { x, y }: Density): string[] {
  if (Math.abs(x / y - 1) <= UNEQUAL) return []
  const [across, down] = [x, y].map((dpi) => String(Number(dpi.toPrecision(5))))
  return [
    `${what} has ${across} pixels to the inch across and ${down} down; the mean of both is noted: ` +
      'calibrate its views along both directions.',
  ]
}

/** A density that a file may well mean; undefined when it says nothing of use. */
export const soundDensity = (x: number, y: number): Density | undefined =>
  [x, y].every((one) => Number.isFinite(one) && one >= 1 && one <= 100_000) ? { x, y } : undefined
