import type { Dimension, Evidence } from '../../job/model/types.ts'
import type { Figure } from '../../quantity/figure.ts'
import { partsOfAnInch } from '../../quantity/length.ts'
import { NotationError } from '../../quantity/notation/notation-error.ts'
import { reason } from '../../words/core-words.ts'
import { nameItemsIn } from '../../words/name-in.ts'
import type { AnyReason } from '../../words/reason.ts'
import type { Figures } from './figures.ts'
import { roundOf } from './round-of.ts'

type Printed = Extract<Evidence, { basis: 'printed' }>

/** Whether something is to be asked, not only known. */
export const isQuestion = ({ code }: AnyReason): boolean => code.startsWith('question.')

/**
 * What a person should know of how a printed figure was understood, or is asked about it. None of it keeps the figure
 * from being used.
 */
export function figureRemarks(evidence: Printed, dimension: Dimension, figures: Figures): AnyReason[] {
  const figure = figures.of(evidence)
  if (figure === undefined || figure instanceof NotationError) return []
  return [
    ...roundRemarks(figure, evidence, dimension, figures),
    ...fractionRemarks(figure),
    ...metricRemarks(figure),
    ...countRemarks(figure, dimension),
    ...tableRemarks(figure),
    ...loosenessRemarks(figure),
  ]
}

/** `R 20` where a diameter is wanted, or the other way about. */
function roundRemarks(
  { of, text }: Figure,
  evidence: Printed,
  dimension: Dimension,
  figures: Figures,
): AnyReason[] {
  if (dimension.kind !== 'length' || (of !== 'diameter' && of !== 'radius')) return []
  const round = roundOf(dimension, figures, evidence)
  if (round === undefined || round.is === of) return []
  return of === 'radius'
    ? [reason('question.radius-for-diameter', { text, by: round.by })]
    : [reason('question.diameter-for-radius', { text, by: round.by })]
}

const isPowerOf = (n: number, base: number): boolean => {
  let rest = n
  while (rest > 1 && rest % base === 0) rest /= base
  return rest === 1
}

/** Rules and scales are divided by halving, or in tenths. */
function fractionRemarks({ text, length, gauge, slope }: Figure): AnyReason[] {
  if (length === undefined || gauge !== undefined || slope !== undefined) return []
  const parts = partsOfAnInch(length)
  if (parts === null || isPowerOf(parts, 2) || isPowerOf(parts, 10)) return []
  return [reason('question.fraction-of-no-rule', { text, parts })]
}

/** What is seldom meant on a metric sheet. */
function metricRemarks({ text, bareFraction, mayBeThousands, length }: Figure): AnyReason[] {
  const mm = Number(length?.mm ?? 0)
  return [
    ...(bareFraction ? [reason('question.fraction-of-a-millimetre', { text })] : []),
    ...(mayBeThousands ? [reason('question.thousands', { text, mm, thousand: Math.round(1000 * mm) })] : []),
  ]
}

function countRemarks({ text, count, mayBeSection, length }: Figure, dimension: Dimension): AnyReason[] {
  const remarks: AnyReason[] = []
  if (mayBeSection) remarks.push(reason('question.count-or-section', { text }))
  const counted = dimension.count ?? 1
  if (!mayBeSection && count !== undefined && length !== undefined && counted !== count) {
    remarks.push(reason('question.count-differs', { text, count, counted }))
  }
  return remarks
}

/** What tables the figure was read by, or could not be. */
function tableRemarks({ gauge, fit }: Figure): AnyReason[] {
  const remarks: AnyReason[] = []
  if (gauge?.assumed) {
    const { number, standard } = gauge
    remarks.push(reason('remark.gauge-by-usual-table', { number, standard }))
  }
  if (fit !== undefined && fit.limits === undefined) {
    remarks.push(
      fit.code.includes('/')
        ? reason('question.fit-of-two', { fit: fit.code })
        : reason('question.fit-not-in-table', { fit: fit.code }),
    )
  }
  return remarks
}

function loosenessRemarks({ text, looseness, reference, notToScale }: Figure): AnyReason[] {
  return [
    ...(looseness === undefined ? [] : [reason('remark.loose', { text, looseness })]),
    ...(reference ? [reason('remark.reference-dimension', { text })] : []),
    ...(notToScale ? [reason('question.not-to-scale', { text })] : []),
  ]
}

/** Every question about a dimension's figures, each with the figure that it is about. */
export function figureQuestions(dimension: Dimension, figures: Figures): AnyReason[] {
  return dimension.evidence.flatMap((one) => {
    if (one.basis !== 'printed' || one.withdrawn !== undefined) return []
    return figureRemarks(one, dimension, figures)
      .filter(isQuestion)
      .map((question) =>
        nameItemsIn(reason('caution.of-figure', { dimension: dimension.name, evidence: one.id, question }), [
          one,
        ]),
      )
  })
}
