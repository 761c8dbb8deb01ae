import type { TableReference, TableRelation, TableView } from '../ledger/table.ts'
import { plainText } from './plain-text.ts'
import { twoFigures } from './two-figures.ts'

const number = (value: number): string => String(Number(value.toPrecision(6)))

const referenceName = ({ id, part }: TableReference): string => (part === undefined ? id : `${id} (${part})`)

/** A view as a person knows it: `V1 Elevation`. */
export const viewName = (view: TableView): string => plainText(`${view.id} ${view.name}`)

/** How a view is calibrated: its mapping, its parameters with their standard uncertainties, and the fit. */
export function calibrationSentence(view: TableView): string {
  const parameters = Object.entries(view.parameters)
    .map(([name, { value, u }]) => `${name} ${number(value)} (u ${twoFigures(u)})`)
    .join(', ')
  if (parameters === '') return `${view.mapping}, not calibrated`
  const fit =
    view.p === null || view.chi2 === null
      ? 'nothing checks its references'
      : `chi-square ${number(view.chi2)} with ${view.dof} ${view.dof === 1 ? 'degree' : 'degrees'} of freedom, p ${twoFigures(view.p)}`
  return `${view.mapping}, ${parameters}; ${fit}`
}

/** What is wrong with a view, one sentence each: its problem, references that do not fit. */
export function viewProblems(view: TableView): string[] {
  const remarks: string[] = []
  if (view.problem !== undefined) remarks.push(plainText(view.problem))
  const suspects = view.references.filter((reference) => reference.suspect)
  for (const reference of suspects) {
    const aside = reference.setAside === true ? ' and is left out of the calibration' : ''
    remarks.push(
      `Reference ${referenceName(reference)} does not fit the others (w ${number(reference.w)})${aside}: ` +
        'misread figure, or not to scale?',
    )
  }
  return remarks
}

/** What a person should know of a view: its problems, and a mapping that would suit it better. */
export const viewRemarks = (view: TableView): string[] =>
  view.suggestion === undefined ? viewProblems(view) : [...viewProblems(view), plainText(view.suggestion)]

/** Whether a relation closes, by how much it misses, in one line: `Q1 (overall = neck + rim) holds: misses by …`. */
export function relationLine(relation: TableRelation): string {
  const name = `${relation.id} (${plainText(relation.text)})`
  if (relation.problem !== undefined) return `${name}: ${plainText(relation.problem)}`
  const by = `misses by ${number(relation.misclosure)} (u ${twoFigures(relation.u)}, w ${number(relation.w)})`
  return `${name} ${relation.holds ? 'holds' : 'does not hold'}: ${by}`
}
