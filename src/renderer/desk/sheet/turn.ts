/** A thousandth of a degree is a quarter of a pixel at the end of a very large sheet. */
const tidy = (degrees: number): number => Number(degrees.toFixed(3))

/** A turn as whole quarters and the rest within ± 45°, degrees clockwise. */
export function quartersAndRest(turn: number): { quarters: number; rest: number } {
  const quarters = Math.round(turn / 90)
  return { quarters, rest: tidy(turn - 90 * quarters) }
}

/** The same direction within ± 180°. */
export function plainTurn(degrees: number): number {
  const turn = ((((degrees + 180) % 360) + 360) % 360) - 180
  return tidy(turn === -180 ? 180 : turn)
}

/** A turn in words. */
export function turnInWords(degrees: number): string {
  const turn = plainTurn(degrees)
  if (turn === 0) return 'not turned'
  return `${Math.abs(turn).toFixed(1)}° ${turn > 0 ? 'clockwise' : 'anticlockwise'}`
}
