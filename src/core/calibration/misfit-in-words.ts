import type { ReferenceCheck } from './reference-checks.ts'

/**
 * What a person should know of references that do not fit, in sentences; null when there is nothing to say.
 * @param enlarged factor by which uncertainties were enlarged, 1 when they were not
 * @param p probability of the misfit of those used
 */
export function misfitInWords(
  references: readonly ReferenceCheck[],
  enlarged: number,
  p: number | null,
): string | null {
  const suspects = references.filter((r) => r.suspect)
  const names = [...new Set(suspects.map(nameOf))]
  const list = names.length > 1 ? `${names.slice(0, -1).join(', ')} and ${names.at(-1)}` : names[0]
  const setAside = references.find((r) => r.setAside)
  if (setAside !== undefined) {
    const rest =
      enlarged > 1
        ? `the uncertainty of the scale is enlarged ${enlarged.toFixed(1)} times, because the rest do not quite agree either (${pInWords(p)}).`
        : 'the rest agree without it.'
    return `Reference ${nameOf(setAside)} does not fit the others: misread figure, or not to scale? It is left out of the calibration, and ${rest}`
  }
  if (enlarged > 1) {
    const suspicion = list === undefined ? '' : ` Look first at ${list}: misread figure, or not to scale?`
    return `The references do not agree within their uncertainties (${pInWords(p)}), so the uncertainty of the scale is enlarged ${enlarged.toFixed(1)} times.${suspicion}`
  }
  if (list === undefined) return null
  return names.length === 1
    ? `Reference ${list} does not fit the others: misread figure, or not to scale?`
    : `References ${list} do not fit one another: misread figures, or not to scale?`
}

/** A probability to one figure; below a thousandth the figure says no more. */
const pInWords = (p: number | null): string =>
  p !== null && p < 0.001 ? 'p < 0.001' : `p = ${p?.toPrecision(1)}`

const nameOf = ({ id, part }: ReferenceCheck): string => (part === undefined ? id : `${id} (${part})`)
