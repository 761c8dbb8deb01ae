import { useHowToPick } from '../picking/how-to-pick.ts'
import { mayPick } from './picking.ts'

const STRAIGHT = ['centre', 'upper', 'lower'] as const
const ROUND = ['centre', 'outer', 'inner'] as const

const after = <T>(of: readonly T[], now: T): T => of[(of.indexOf(now) + 1) % of.length] ?? now

/** Letters that change how the next pick is taken. True when it was one of them. */
export function turnHowToPick(key: string): boolean {
  if (!mayPick()) return false
  switch (key.toLowerCase()) {
    case 'h':
      useHowToPick.setState(({ byHand }) => ({ byHand: !byHand }))
      return true
    case 'x':
      useHowToPick.setState(({ crossings }) => ({ crossings: !crossings }))
      return true
    case 'i':
      useHowToPick.setState(({ otherInk }) => ({ otherInk: !otherInk }))
      return true
    case 'e':
      useHowToPick.setState(({ straight, round }) => ({
        straight: after(STRAIGHT, straight),
        round: after(ROUND, round),
      }))
      return true
    default:
      return false
  }
}
