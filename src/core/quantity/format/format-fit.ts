import type { Fit } from '../figure.ts'
import { MINUS } from './decimals.ts'

/** A class of fit with its limits where they are known: `H7, +0.021/0 mm`. */
export function formatFit({ code, limits }: Fit): string {
  return limits === undefined ? code : `${code}, ${signed(limits.upper)}/${signed(limits.lower)} mm`
}

const signed = (mm: number): string => (mm === 0 ? '0' : `${mm < 0 ? MINUS : '+'}${Math.abs(mm)}`)
