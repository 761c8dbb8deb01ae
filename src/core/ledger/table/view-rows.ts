import type { Calibration } from '../../calibration/calibrate.ts'
import { suggestMapping } from '../../calibration/mapping-selection.ts'
import type { StatedSize } from '../../calibration/reference.ts'
import { stretchReference } from '../../calibration/stretch.ts'
import { type Labelled, labelBesideId } from '../../job/ids/label.ts'
import type { Reference } from '../../job/model/types.ts'
import { parameterSize } from '../../mapping/parameter.ts'
import { standardUncertainty } from '../../uncertainty/covariance.ts'
import { propagate, type Uncertain } from '../../uncertainty/uncertain.ts'
import { inWords, reason } from '../../words/core-words.ts'
import { nameIn } from '../../words/name-in.ts'
import type { AnyReason } from '../../words/reason.ts'
import type { Assessment } from '../assessment/assessment.ts'
import { displayFactor } from '../units/display-units.ts'
import type { CalibratedView } from '../views/calibrate-view.ts'
import { nameKnownSizes } from '../views/name-known-sizes.ts'
import { paperOf } from '../views/paper.ts'
import { meanStretch, witnessesFor } from '../views/sheet-stretch.ts'
import { stretchReason, withOdd } from './stretch-reasons.ts'
import type { TableClosing, TableView } from './table.ts'
import { alternativeRows } from './view-alternatives.ts'
import { closingRow } from './view-closings.ts'

/** The views' part of the table; stretches in `unit` per pixel, tilts over the extent of the references. */
export function viewRow(
  calibrated: CalibratedView,
  { unit, labels, stretches }: Pick<Assessment, 'unit' | 'labels' | 'stretches'>,
): TableView {
  const { view, sheet, calibration, problem, unchecked, unlikely, stretched } = calibrated
  const base = { id: view.id, ...labelled(view), name: view.name, mapping: view.mapping }
  if (calibration === null) {
    const nothing = { parameters: {}, chi2: null, dof: 0, p: null, references: [] }
    return { ...base, ...nothing, ...withProblem(nameIn(reason('view.not-calibrated', { problem }), labels)) }
  }
  const factor = displayFactor('length', unit)
  const { mapping } = calibration.view
  const parameters = Object.fromEntries(
    mapping.parameters.map((parameter, k) => {
      const theta = calibration.theta[k] as (typeof calibration.theta)[number]
      const f = parameterSize(parameter, factor)
      return [parameter.name, { value: theta.value * f, u: standardUncertainty(theta) * f }]
    }),
  )
  const one = view.mapping === 'uniform' ? oneScale(calibration.theta, mapping.parameters.length) : null
  if (one !== null) parameters['scale'] = { value: one.value * factor, u: standardUncertainty(one) * factor }
  const suggestion = suggestionFor(calibrated, stretches)
  const named = (one: AnyReason): AnyReason => nameIn(nameKnownSizes(one, view.references), labels)
  const closings = calibration.closures.map((check) => closingRow(check, { view, unit }, named))
  const alternatives = alternativeRows(calibration, sheet, factor, named)
  const found = withOdd(view, stretched, problemOf(calibration, closings, named))
  const problemReason = found ?? unlikely ?? null
  const references = new Map(view.references.map((one): [string, Reference] => [one.id, one]))
  return {
    ...base,
    parameters,
    ...foundScale(calibration, view.drawnScale, sheet?.scan.dpi),
    chi2: calibration.dof > 0 ? calibration.chi2 : null,
    dof: calibration.dof,
    p: calibration.p,
    references: calibration.references.map(({ id, ...r }) => ({
      id,
      ...labelled(references.get(id)),
      ...r,
      stated: r.stated * factor,
      fitted: r.fitted * factor,
      U: r.U * factor,
      residual: r.residual * factor,
    })),
    ...(closings.length === 0 ? {} : { closings }),
    ...(unchecked === undefined ? {} : { unchecked: true }),
    ...(alternatives.length === 0 ? {} : { alternatives }),
    ...withRemarks([
      ...(unchecked === undefined ? [] : [reason('view.scale-unchecked', { because: unchecked })]),
      ...(stretched === undefined || stretched.by === 'itself'
        ? []
        : [stretchReason(stretched, calibration)]),
      ...(unlikely === undefined || problemReason === unlikely ? [] : [unlikely]),
      ...closings.filter(({ closes }) => closes).map(({ saysReason }) => saysReason),
    ]),
    ...(problemReason === null ? {} : withProblem(problemReason)),
    ...(suggestion === null
      ? {}
      : {
          suggests: suggestion.kind,
          ...withSuggestion(
            reason('view.other-mapping-suits', {
              mapping: view.mapping,
              suits: suggestion.kind,
              gain: suggestion.gain,
            }),
          ),
        }),
  }
}

/** The scale of a uniform view that what paper does has parted into two: between them. Null where it has one. */
function oneScale([along, across]: readonly Uncertain[], parameters: number): Uncertain | null {
  if (parameters !== 2 || along === undefined || across === undefined) return null
  const mean = Math.sqrt(along.value * across.value)
  return propagate(mean, [along, across], [across.value / (2 * mean), along.value / (2 * mean)])
}

const labelled = (item: Labelled | undefined): { label?: string } => {
  const label = item && labelBesideId(item)
  return label === undefined ? {} : { label }
}

const withProblem = (problemReason: AnyReason): Pick<TableView, 'problem' | 'problemReason'> => ({
  problem: inWords(problemReason),
  problemReason,
})

const withRemarks = (remarkReasons: AnyReason[]): Pick<TableView, 'remarks' | 'remarkReasons'> =>
  remarkReasons.length === 0 ? {} : { remarks: remarkReasons.map((one) => inWords(one)), remarkReasons }

/** What does not close and what does not fit; those that do not fit because they do not close are said once. */
function problemOf(
  { problem, references }: Calibration,
  closings: readonly TableClosing[],
  named: (reason: AnyReason) => AnyReason,
): AnyReason | null {
  const open = closings.filter(({ closes }) => !closes)
  if (open.length === 0) return problem === undefined ? null : named(problem)
  const inThem = new Set(open.flatMap(({ by, given }) => [...by, ...given]))
  const alsoUnfit =
    problem !== undefined &&
    (problem.code !== 'misfit.suspects' || references.some(({ id, suspect }) => suspect && !inThem.has(id)))
  return named(
    reason('closing.does-not-close', {
      closings: open.map(({ saysReason }) => saysReason),
      setAside: references.some(({ id, setAside }) => setAside && inThem.has(id)),
      fit: alsoUnfit ? problem : null,
    }),
  )
}

/** A mapping that suits the figured sizes better, with what the other views tell of the sheet. */
function suggestionFor(
  { view, sheet, calibration, stretched }: CalibratedView,
  stretches: Assessment['stretches'],
): ReturnType<typeof suggestMapping> {
  if (calibration === null) return null
  const suggestion = suggestMapping(
    calibration,
    stretched === undefined ? toldTo(view, calibration, stretches) : undefined,
  )
  // Paper shrinks more one way than the other: that the figured sizes of a view do not show it does not make them surer.
  if (
    suggestion?.kind === 'uniform' &&
    (stretched?.by === 'views' || (sheet !== undefined && paperOf(sheet) > 0))
  ) {
    return null
  }
  // A view with one scale to which the stretch of its sheet was lent has two by that.
  return suggestion?.kind === view.mapping ? null : suggestion
}

/** The stretch that others tell, to a view that keeps to its own figured sizes. */
function toldTo(
  { id, sheet }: CalibratedView['view'],
  { view: { frame } }: Calibration,
  stretches: Assessment['stretches'],
): StatedSize | undefined {
  const sheetsOwn = stretches.get(sheet)
  const told = sheetsOwn === undefined ? null : meanStretch(witnessesFor(id, sheetsOwn), frame.grain)
  return told === null ? undefined : stretchReference(told)
}

const withSuggestion = (suggestionReason: AnyReason): Pick<TableView, 'suggestion' | 'suggestionReason'> => ({
  suggestion: inWords(suggestionReason),
  suggestionReason,
})

/** Scale of the drawing as found, by the scan's dpi, beside the one stated: paper may have shrunk between the two. */
function foundScale(
  { view, theta }: NonNullable<CalibratedView['calibration']>,
  stated: number | undefined,
  dpi: number | undefined,
): { scale?: { stated: number | null; found: number | null } } {
  if (dpi === undefined && stated === undefined) return {}
  const { byPixel } = view.mapping.apply(
    theta.map((t) => t.value),
    view.frame.origin,
    view.frame,
  )
  const [xx, xy, yx, yy] = byPixel
  const mmPerPixel = Math.sqrt(Math.abs(xx * yy - xy * yx))
  return { scale: { stated: stated ?? null, found: dpi === undefined ? null : 25.4 / dpi / mmPerPixel } }
}
