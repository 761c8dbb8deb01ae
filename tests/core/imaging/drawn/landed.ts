/** Where searches came out that were to find one stroke beside another. */
export interface Landed {
  cases: number
  none: number
  /** On the stroke that was meant; on its neighbour; on neither, which is on paper. */
  right: number
  neighbour: number
  paper: number
}

export const noneLanded = (): Landed => ({ cases: 0, none: 0, right: 0, neighbour: 0, paper: 0 })

/** So near is on it, pixels: a rough hand is farther off, and paper much farther. */
const NEAR = 1

/**
 * Counts one.
 * @param away how far what was found is from the stroke that was meant and from its neighbours, pixels; null when nothing was
 */
export function count(landed: Landed, away: readonly [number, ...number[]] | null): void {
  landed.cases++
  if (away === null) landed.none++
  else if (away[0] <= NEAR) landed.right++
  else if (Math.min(...away) <= NEAR) landed.neighbour++
  else landed.paper++
}

export function together(all: readonly Landed[]): Landed {
  const sum = noneLanded()
  for (const one of all) {
    sum.cases += one.cases
    sum.none += one.none
    sum.right += one.right
    sum.neighbour += one.neighbour
    sum.paper += one.paper
  }
  return sum
}
