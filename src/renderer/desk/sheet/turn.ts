import { type Degrees, degrees } from '../../../core/geometry/angle-units.ts'

/** A thousandth of a degree is a quarter of a pixel at the end of a very large sheet. */
const tidy = (angle: number): Degrees => degrees(Number(angle.toFixed(3)))

/** A turn as whole quarters and the rest within ± 45°, clockwise. */
export function quartersAndRest(turn: Degrees): { quarters: number; rest: Degrees } {
  const quarters = Math.round(turn / 90)
  return { quarters, rest: tidy(turn - 90 * quarters) }
}

/** The same direction within ± 180°. */
export function plainTurn(angle: Degrees): Degrees {
  const turn = ((((angle + 180) % 360) + 360) % 360) - 180
  return tidy(turn === -180 ? 180 : turn)
}

/** A turn in words. */
export function turnInWords(angle: Degrees): string {
  const turn = plainTurn(angle)
  if (turn === 0) return 'not turned'
  return `${Math.abs(turn).toFixed(1)}° ${turn > 0 ? 'clockwise' : 'anticlockwise'}`
}
