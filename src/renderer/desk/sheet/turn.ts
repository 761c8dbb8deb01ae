/** A turn as whole quarters and the rest within ± 45°, degrees clockwise. */
export function quartersAndRest(turn: number): { quarters: number; rest: number } {
  const quarters = Math.round(turn / 90)
  return { quarters, rest: Number((turn - 90 * quarters).toFixed(1)) }
}

/** The same direction within ± 180°. */
export function plainTurn(degrees: number): number {
  const turn = ((((degrees + 180) % 360) + 360) % 360) - 180
  return Number((turn === -180 ? 180 : turn).toFixed(1))
}

/** A turn in words. */
export function turnInWords(degrees: number): string {
  const turn = plainTurn(degrees)
  if (turn === 0) return 'not turned'
  return `${Math.abs(turn).toFixed(1)}° ${turn > 0 ? 'clockwise' : 'anticlockwise'}`
}
