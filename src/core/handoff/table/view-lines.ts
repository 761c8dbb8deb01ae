import type { Unit } from '../../job/model/types.ts'
import type { Table, TableRelation, TableView } from '../../ledger/table/table.ts'
import { unitSuffix } from '../../ledger/units/plus-minus.ts'
import { MAPPINGS } from '../../mapping/mappings.ts'
import { isPerPixel } from '../../mapping/parameter.ts'
import { formatDrawnScale } from '../../quantity/format/format-drawn-scale.ts'
import { formatMeasuredScale } from '../../quantity/format/format-measured-scale.ts'
import { toUncertainty, twoFigures } from '../../quantity/format/rounding.ts'
import { inWords } from '../../words/core-words.ts'
import { agreementInShort } from '../../words/known-sizes-agree.ts'
import { mappingInFull } from '../../words/mapping-words.ts'
import { plainText } from '../../words/plain-text.ts'
import { isReason } from '../../words/reason.ts'
import { axisShareInWords, axisShares } from './axis-scales.ts'

/** A view as a person knows it: `V1 Elevation`, or by its name first where it has a label, `Elevation (view 1)`. */
export const viewName = ({ id, label, name }: TableView): string =>
  plainText(label === undefined ? `${id} ${name}` : `${name} (${label})`)

/** How a view is calibrated, in words: its scales, how its figured sizes agree, and how it compares with the scale stated. */
export function calibrationSentence(view: TableView, unit: Unit): string {
  if (!isCalibrated(view)) return `${mappingInFull(view.mapping)}, not calibrated`
  const rest = hasSetAside(view) ? 'the rest of ' : ''
  const agree = `${rest}its figured sizes ${agreementInShort(view.p)}`
  return [mappingInFull(view.mapping), agree, ...scaleSentence(view, unit)].join('; ')
}

/** Whether its figured sizes give a view a scale. */
export const isCalibrated = ({ parameters }: TableView): boolean => Object.keys(parameters).length > 0

/** Whether one of the figured sizes of a view is set aside. */
export const hasSetAside = ({ references }: TableView): boolean =>
  references.some(({ setAside }) => setAside === true)

/**
 * The same for those who reckon with it: parameters with their standard uncertainties, and the fit.
 * @param unit of the table; stretches are in it per pixel
 */
export function calibrationNumbers(view: TableView, unit: Unit): string {
  const parameters = Object.entries(view.parameters)
    .map(
      ([name, { value, u }]) =>
        `${name} ${toUncertainty(value, u)}${unitOf(name, unit)} (u ${twoFigures(u)})`,
    )
    .join(', ')
  if (view.p === null || view.chi2 === null) return parameters
  const fit = `chi-square ${view.chi2.toFixed(1)} with ${view.dof} ${view.dof === 1 ? 'degree' : 'degrees'} of freedom, p ${view.p < 0.001 ? 'below 0.001' : twoFigures(view.p)}`
  return `${parameters}; ${fit}`
}

const WITHOUT_UNIT: ReadonlySet<string> = new Set(
  Object.values(MAPPINGS).flatMap(({ parameters }) =>
    parameters.filter((p) => !isPerPixel(p)).map(({ name }) => name),
  ),
)

const unitOf = (parameter: string, unit: Unit): string => (WITHOUT_UNIT.has(parameter) ? '' : ` ${unit}/px`)

/**
 * The scale of a drawing as stated, and how far it is from that on the scan; nothing when neither is known.
 * @param unit `in`: to the foot, as an inch drawing states it; `mm`: as a ratio
 */
export function scaleSentence(view: TableView, unit: Unit): string[] {
  const { scale } = view
  if (scale === undefined) return []
  const { stated, found } = scale
  if (stated === null)
    return found === null ? [] : [`scale ${formatMeasuredScale(found, unit)} by the scan's dpi`]
  if (found === null) return [`scale ${formatDrawnScale(stated, unit)} stated`]
  const ways = axisShares(view)?.flatMap((share) => axisShareInWords(share) ?? []) ?? []
  if (ways.length > 0) {
    return [`scale ${formatDrawnScale(stated, unit)} stated, on the scan ${ways.join(' and ')}`]
  }
  const off = 100 * (found / stated - 1)
  if (Math.abs(off) < 0.05)
    return [`scale ${formatDrawnScale(stated, unit)} stated, and so it is on the scan`]
  return [
    `scale ${formatDrawnScale(stated, unit)} stated, ${Math.abs(off).toFixed(1)} % ${off < 0 ? 'smaller' : 'larger'} on the scan`,
  ]
}

/** Each view with its numbers; none of those that are not calibrated. */
export const numberedViews = ({ views, unit }: Table): { name: string; numbers: string }[] =>
  views
    .filter(isCalibrated)
    .map((view) => ({ name: viewName(view), numbers: calibrationNumbers(view, unit) }))

/** What is wrong with a view; references that do not fit are named in it. */
export const viewProblems = (view: TableView): string[] =>
  view.problem === undefined ? [] : [plainText(view.problem)]

/** What a person should know of a view: its problems, what else is to be said, and a mapping that would suit it better. */
export const viewRemarks = (view: TableView): string[] => [
  ...viewProblems(view),
  ...(view.alternatives ?? []).map(({ says }) => plainText(says)),
  ...(view.remarks ?? []).map(plainText),
  ...(view.suggestion === undefined ? [] : [plainText(view.suggestion)]),
]

/**
 * The cautions that the list of views does not already give: those of the table without a view's own problem.
 * For what shows the views as well.
 */
export function cautionsBesideViews({ cautions, cautionReasons }: Table): string[] {
  return cautions.filter((_, i) => cautionReasons[i]?.code !== 'caution.of-view')
}

/** `not checked`: something in the relation has no value. */
export const relationState = (relation: TableRelation): 'holds' | 'does not hold' | 'not checked' =>
  relation.problemReason !== undefined ? 'not checked' : relation.holds ? 'holds' : 'does not hold'

/** By how much a relation misses and what would be allowed: `out by 1/2"; 0.19" would be allowed`; or why it is not known. */
export function misclosureText(relation: TableRelation, unit: Unit): string {
  const { holds, misclosure, missesBy, U, kind, problemReason } = relation
  if (problemReason !== undefined) {
    const { problem } = problemReason.parts
    return plainText(inWords(isReason(problem) ? problem : problemReason))
  }
  const allowed = U > 0 ? `; ${twoFigures(U)}${unitSuffix(kind, unit)} would be allowed` : ''
  if (misclosure === 0) return `holds exactly${allowed}`
  return `${holds ? 'holds to within' : 'out by'} ${plainText(missesBy)}${allowed}`
}

/** Whether a relation holds, by how much it misses, in one line: `Q1 (overall = neck + rim): holds to within …`. */
export const relationLine = (relation: TableRelation, unit: Unit): string =>
  `${relation.label ?? relation.id} (${plainText(relation.text)}): ${misclosureText(relation, unit)}`
