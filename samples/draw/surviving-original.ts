import type { Chance } from './chance.ts'

/**
 * Readings in decimal inches on what is left of the ventilator.
 * @param size true size, inches
 * @param options.loss metal gone, inches; options.spread of its true amount about what is allowed for it
 */
export function readingsOf(
  size: number,
  chance: Chance,
  options: { n: number; scatter: number; loss?: number; spread?: number },
): string[] {
  const { n, scatter, loss = 0, spread = 0 } = options
  const left = size - loss - spread * chance.normal()
  return Array.from({ length: n }, () => `${(left + scatter * chance.normal()).toFixed(3)} in`)
}
